#include "sheet/write.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "measure/money.h"

namespace kerfbook::sheet {
namespace {

constexpr int kHeadWidth = 7;  // the word or size that heads a line, then a blank
constexpr int kRemarkColumn = 48;

/// A decimal without idle zeros: 1, 2.5, 0.26.
std::string short_decimal(const Rational& value, int places) {
  return shortest(shown(value, places));
}

std::string write_list(const std::vector<Length>& lengths, const char* between, bool metric_book) {
  std::vector<std::string> words;
  words.reserve(lengths.size());
  for (const Length& length : lengths) words.push_back(scaling::write_diameter(length, metric_book));
  return join(words, between);
}

std::string with(std::string_view word) {
  return word.empty() ? std::string() : " " + std::string(word);
}

std::string mils(std::int64_t value, bool metric_book) {
  return short_decimal({value, metric_book ? 100 : 1000}, 3);
}

bool ascii_letters(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); });
}

/// 9, 8:30
std::string hours(int minutes) {
  return minutes % 60 == 0 ? std::to_string(minutes / 60) : write_duration(minutes);
}

/// 2.015, 2.02, 2.00
std::string caliper(Decimal reading) {
  std::string text = plain(reading);
  if (reading.places > 2 && text.ends_with('0')) text.pop_back();
  return text;
}

/// Prints the fact of a line as its head (the word or size) and what follows.
class Writer {
 public:
  explicit Writer(const ReadOptions& options) : options_(options), metric_(options.metric) {}

  std::string operator()(const Remark&) const { return {}; }
  std::string operator()(const Site& site) const { return headed("site", site.name); }
  std::string operator()(const Job& job) const { return headed("job", job.code); }
  std::string operator()(const Species& species) const { return headed("species", species.code); }
  std::string operator()(const Grade& grade) const { return headed("grade", or_none(grade.code)); }
  std::string operator()(const Bundle& bundle) const { return headed("bundle", or_none(bundle.tag)); }
  std::string operator()(const Note& note) const { return headed("note", note.text); }
  std::string operator()(const Meter& meter) const {
    return headed("meter", plain(Decimal{meter.tenths, 1}));
  }

  std::string operator()(const Crew& crew) const {
    std::vector<std::string> hands;
    for (const Hand& hand : crew.hands) {
      const std::string time = hand.spans.empty() ? hours(hand.minutes) : spans(hand.spans);
      hands.push_back(hand.name + " " + time + with(hand.activity));
    }
    return headed("crew", join(hands, ", "));
  }

  std::string operator()(const Sawing& sawing) const {
    return headed("sawing", spans(sawing.spans) + of_job(sawing.job));
  }

  std::string operator()(const Stop& stop) const {
    const std::string time = stop.span ? write_span(*stop.span) : write_duration(stop.minutes);
    const std::string charge = stop.charge ? ", charge" : "";
    return headed("stop", time + with(stop.cause) + with(stop.text) + charge + of_job(stop.job));
  }

  std::string operator()(const Setup& setup) const {
    std::string text = setup.name;
    if (setup.kerf_mils) text += " kerf " + mils(*setup.kerf_mils, metric_);
    if (setup.over_mils) text += " over " + mils(*setup.over_mils, metric_);
    if (setup.edger_mils) text += " edger " + mils(*setup.edger_mils, metric_);
    if (setup.third_mils) text += " third " + mils(*setup.third_mils, metric_);
    if (setup.lead_mils) text += " lead " + mils(*setup.lead_mils, metric_);
    if (setup.feed) text += " feed " + short_decimal(*setup.feed, 6);
    if (setup.zero_mils) text += " zero " + mils(*setup.zero_mils, metric_);
    if (!setup.tooth.empty()) text += " tooth " + setup.tooth;
    return headed("setup", text + with(setup.text));
  }

  std::string operator()(const LogLine& log) const {
    std::string text = join(log.tags, " ");
    // 12: 7/8x12 is log 12 with two readings; without the colon it could be one of 12-7/8 in
    if (log.measure && log.measure->small.size() == 2 && all_digits(text)) text += ':';
    if (log.measure) text += (text.empty() ? "" : " ") + measured(*log.measure);
    for (const auto& defect : log.defects) {
      text += " defect " + scaling::write_defect(defect, metric_) + with(defect.reason);
    }
    if (!log.origin.empty()) text += " from " + log.origin;
    if (log.left_on_mill) text += " left on the mill";
    return headed(log.received ? "in" : "log", text);
  }

  std::string operator()(const Tally& tally) const {
    return sensed(tally.sense, measure::write_size(tally.size, metric_) + with(tally.grade),
                  items(tally.items, tally.size) + with(tally.reason));
  }

  std::string operator()(const LinealTally& tally) const {
    return sensed(tally.sense, measure::write_size(tally.size, metric_) + with(tally.grade),
                  lineal(tally.total) + with(tally.reason));
  }

  std::string operator()(const RandomTally& tally) const {
    std::string thickness = side(tally.thickness);
    if (tally.quarters) thickness = std::to_string(tally.thickness.count / (measure::kPerInch / 4)) + "/4";
    std::vector<std::string> boards;
    const bool metric_wood = tally.thickness.system == measure::System::metric;
    for (const auto& board : tally.boards) {
      boards.push_back(side(board.width) + "x" + measure::write_length(board.length, metric_wood) +
                       (board.pieces == 1 ? "" : "*" + std::to_string(board.pieces)));
    }
    return sensed(tally.sense, thickness + " rw" + with(tally.grade), join(boards, " ") + with(tally.reason));
  }

  std::string operator()(const Sold& sold) const {
    std::string price = sold.price ? " at " + short_decimal(*sold.price, 6) : "";
    if (!sold.bundle.empty()) return headed("sold", sold.buyer + " bundle " + sold.bundle + price);
    if (sold.price) price += with(unit_of(sold.by));
    return headed("sold", sold.buyer + " " + measure::write_size(sold.size, metric_) + with(sold.grade) +
                              " " + (sold.lineal ? lineal(*sold.lineal) : items(sold.items, sold.size)) +
                              price);
  }

  std::string operator()(const Teeth& teeth) const {
    std::string text = teeth.saw + with(word_of(teeth.action));
    if (teeth.count) text += " " + std::to_string(*teeth.count);
    const std::string first = teeth.text.substr(0, teeth.text.find(' '));
    const bool text_as_tag = teeth.log.empty() && !teeth.text.empty() && !ascii_letters(first);
    const bool more = !teeth.log.empty() || !teeth.text.empty();
    if (!teeth.cause.empty() || more) text += " " + or_none(teeth.cause);
    if (!teeth.log.empty() || text_as_tag) text += " " + or_none(teeth.log);
    return headed(is_blade_work(teeth.action) ? "blade" : "teeth",
                  text + with(teeth.text) + of_job(teeth.job));
  }

  std::string operator()(const Thick& thick) const {
    const bool metric_wood = thick.size.thickness.system == measure::System::metric;
    std::string text = measure::write_size(thick.size, metric_);
    for (const std::int64_t reading : thick.readings) text += " " + caliper({reading, metric_wood ? 2 : 3});
    return headed("thick", text);
  }

  std::string operator()(const Charge& charge) const {
    return headed("charge", charge.job + " " + charge.name + " " + short_decimal(charge.quantity, 6) +
                                with(charge.text));
  }

  std::string operator()(const Fuel& fuel) const {
    std::string text = short_decimal(fuel.quantity, 6) + (fuel.unit == FuelUnit::gallon ? " gal" : " l");
    if (fuel.price_minor) text += " " + measure::plain_money({*fuel.price_minor}, options_.money_places);
    return headed("fuel", text);
  }

  std::string operator()(const Move& move) const {
    const std::string unit = move.unit == DistanceUnit::mile ? " mi" : " km";
    return headed("move", move.from + " to " + move.to + " " + short_decimal(move.distance, 6) + unit +
                              (move.minutes > 0 ? " " + write_duration(move.minutes) : "") +
                              of_job(move.job));
  }

  std::string operator()(const Residue& residue) const {
    return headed("residue", residue.kind + " " + short_decimal(residue.quantity, 6) +
                                 with(measure::word_of(residue.unit)) + with(residue.text));
  }

 private:
  static std::string headed(std::string_view head, const std::string& rest) {
    return pad_right(head, kHeadWidth) + " " + rest;
  }
  static std::string sensed(Sense sense, const std::string& head, const std::string& rest) {
    return sense == Sense::sawn ? headed(head, rest) : headed(word_of(sense), head + " " + rest);
  }
  /// 212lf, 64.5lm
  static std::string lineal(const Length& total) {
    std::string text = measure::write_feet(total);
    const bool metres = total.system == measure::System::metric;
    if (metres) text.pop_back();  // 64.5m is written 64.5lm
    return text + (metres ? "lm" : "lf");
  }
  static std::string_view unit_of(SoldBy by) {
    constexpr std::array<std::string_view, 4> kUnits{"", "each", "lf", "lm"};
    return kUnits[static_cast<std::size_t>(by)];
  }
  /// The job a line names itself.
  static std::string of_job(const std::string& code) { return code.empty() ? "" : ", job " + code; }
  static std::string or_none(const std::string& word) { return word.empty() ? "-" : word; }

  static std::string spans(const std::vector<Span>& list) {
    std::vector<std::string> words;
    words.reserve(list.size());
    for (const Span& span : list) words.push_back(write_span(span));
    return join(words, " ");
  }

  static std::string items(const std::vector<Tally::Item>& list, const Size& size) {
    std::vector<std::string> words;
    words.reserve(list.size());
    const bool metric_wood = size.thickness.system == measure::System::metric;
    for (const auto& item : list) {
      words.push_back(std::to_string(item.pieces) + "/" + measure::write_length(item.length, metric_wood));
    }
    return join(words, " ");
  }

  /// A thickness or width by itself.
  [[nodiscard]] std::string side(Length length) const {
    const std::string text = measure::write_inches(length);
    return metric_ && length.system == measure::System::inch ? text + "\"" : text;
  }

  [[nodiscard]] std::string measured(const scaling::LogMeasure& log) const {
    std::string text = scaling::write_log_spec(log, metric_);
    if (!log.mid.empty()) text += " mid " + write_list(log.mid, "/", metric_);
    if (log.girth) text += " girth " + scaling::write_diameter(*log.girth, metric_);
    if (!log.segments.empty()) text += " segments " + write_list(log.segments, ",", metric_);
    return text;
  }

  const ReadOptions& options_;
  bool metric_;
};

std::string with_remark(const std::string& text, const std::string& remark) {
  if (remark.empty()) return text;
  return text.empty() ? "; " + remark : pad_right(text, kRemarkColumn) + "  ; " + remark;
}

}  // namespace

std::string_view word_of(ToothAction action) {
  switch (action) {
    case ToothAction::touched_up:
      return "touched-up";
    case ToothAction::replaced:
      return "replaced";
    case ToothAction::full_set:
      return "full-set";
    case ToothAction::shanks:
      return "shanks";
    case ToothAction::swaged:
      return "swaged";
    case ToothAction::tensioned:
      return "tensioned";
    case ToothAction::changed:
      return "changed";
  }
  return {};
}

bool is_blade_work(ToothAction action) {
  return action == ToothAction::tensioned || action == ToothAction::changed;
}

std::span<const std::string_view> residue_kinds() {
  static constexpr std::array<std::string_view, 7> kKinds{"slabs", "edgings",  "trim",   "chips",
                                                          "bark",  "shavings", "sawdust"};
  return kKinds;
}

std::string_view word_of(Sense sense) {
  switch (sense) {
    case Sense::sawn:
      return "";
    case Sense::less:
      return "less";
    case Sense::resaw:
      return "resaw";
  }
  return {};
}

std::string write_line(const Line& line, const ReadOptions& options) {
  return with_remark(std::visit(Writer(options), line.fact), line.remark);
}

std::string write(const Sheet& sheet, const ReadOptions& options) {
  const std::string shift = sheet.shift == 1 ? "" : " shift " + std::to_string(sheet.shift);
  std::string out =
      with_remark(pad_right("sheet", kHeadWidth) + " " + write_day(sheet.day) + shift, sheet.remark) + "\n";
  for (const Line& line : sheet.lines) out += write_line(line, options) + "\n";
  return out;
}

}  // namespace kerfbook::sheet
