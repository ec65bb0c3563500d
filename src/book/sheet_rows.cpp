#include "book/sheet_rows.h"

#include <array>

#include "base/text.h"
#include "book/log_rows.h"
#include "book/tally_item.h"
#include "sheet/facts.h"
#include "sheet/write.h"

namespace kerfbook::book {
namespace {

using measure::System;
using sheet::DatedFact;

constexpr int kMicro = 6;  ///< places of a quantity kept in millionths

struct DayMinutes {
  int sawing = 0;
  int stops = 0;
  int charged = 0;
  int crew = 0;
};

DayMinutes minutes_of(const std::vector<DatedFact>& facts) {
  DayMinutes sum;
  for (const auto& fact : facts) {
    if (const auto* sawing = std::get_if<sheet::Sawing>(&fact.line->fact)) {
      for (const auto& span : sawing->spans) sum.sawing += span.minutes();
    } else if (const auto* stop = std::get_if<sheet::Stop>(&fact.line->fact)) {
      sum.stops += stop->minutes;
      if (stop->charge) sum.charged += stop->minutes;
    } else if (const auto* crew = std::get_if<sheet::Crew>(&fact.line->fact)) {
      sum.crew += crew->hands.at(fact.item).minutes;
    }
  }
  return sum;
}

/// Writes a sheet's rows fact by fact, in the order of the day.
class SheetWriter {
 public:
  SheetWriter(Store& store, Words& words, const SheetEntry& entry, MillInForce& then, MillInForce& now)
      : store_(store),
        words_(words),
        entry_(entry),
        day_(entry.key.day),
        shift_(entry.key.shift),
        now_(now),
        facts_(sheet::facts(entry.sheet)),
        runs_(store, words, entry.key, then),
        logs_(store, entry.key, then.file(), now.file().taper) {}

  void write() {
    write_sheet();
    over_ = over_carried();
    for (const auto& fact : facts_) {
      std::visit([&](const auto& line) { put(fact, line); }, fact.line->fact);
    }
    for (const auto* fact : teeth_) put_teeth(*fact, std::get<sheet::Teeth>(fact->line->fact));
    runs_.write();
    write_totals();
  }

 private:
  std::optional<Id> job(const std::string& code) { return words_.find_or_add(WordKind::job, code); }
  std::optional<Id> site(const std::string& name) { return words_.find_or_add(WordKind::site, name); }

  void write_sheet() {
    const auto minutes = minutes_of(facts_);
    store_.run(
        "INSERT INTO sheet (day, shift, entry, mill_entry, revision, sawing_minutes, stop_minutes, "
        "crew_minutes, "
        "charge_minutes) VALUES (?,?,?,?,?,?,?,?,?)",
        day_, shift_, entry_.entry, entry_.rules_entry, entry_.revision, minutes.sawing, minutes.stops,
        minutes.crew, minutes.charged);
  }

  /// What stands in the runs and lines already, added up for questions that go over years.
  void write_totals() {
    store_.run(
        "UPDATE sheet SET (runs, lines, rules, units, logs, unscaled_logs, net, pieces, lumber, "
        "counted_lumber, "
        "counted_net) = (SELECT count(*), coalesce(sum(lines), 0), group_concat(DISTINCT practice) FILTER "
        "(WHERE "
        "scaled), group_concat(DISTINCT unit) FILTER (WHERE scaled), coalesce(sum(logs), 0), "
        "coalesce(sum(unscaled_logs), 0), sum(net) FILTER (WHERE scaled), coalesce(sum(pieces), 0), "
        "coalesce(sum(lumber), 0), sum(lumber) FILTER (WHERE counted), sum(net) FILTER (WHERE counted) "
        "FROM run WHERE run.day = sheet.day AND run.shift = sheet.shift), "
        "lineal = (SELECT coalesce(sum(CASE metric WHEN 1 THEN 32 ELSE 127 END * length * "
        "CASE form WHEN 'lineal' THEN 1 - 2 * (sense <> 'sawn') ELSE pieces END), 0) FROM tally "
        "WHERE tally.day = sheet.day AND tally.shift = sheet.shift), "
        "sites = (SELECT group_concat(name, ' / ') FROM (SELECT site.name FROM run JOIN site ON site.id = "
        "run.site WHERE run.day = sheet.day AND run.shift = sheet.shift GROUP BY site.id ORDER BY "
        "min(run.run))) "
        "WHERE day = ? AND shift = ?",
        day_, shift_);
  }

  /// A line of which the journal's own text is enough, or that only says what holds from it on, has no row.
  template <class Other>
  void put(const DatedFact&, const Other&) {}

  // ---- logs and lumber
  void put(const DatedFact& fact, const sheet::LogLine& line) {
    RunTotals& run = runs_.of(fact);
    logs_.write(fact, line, run);
  }

  void put(const DatedFact& fact, const sheet::Tally&) { put_tally(fact); }
  void put(const DatedFact& fact, const sheet::LinealTally&) { put_tally(fact); }
  void put(const DatedFact& fact, const sheet::RandomTally&) { put_tally(fact); }

  void put_tally(const DatedFact& fact) {
    const TallyItem item = *tally_item(fact);
    RunTotals& run = runs_.of(fact);
    const auto lumber = lumber_of(item, book_units()).count;
    const auto wood = wood_of(item, now_.target_for(fact.context.job, item.size), over_, book_units()).count;
    const auto pieces = item.sign() * item.pieces;
    const std::string sense =
        item.sense == sheet::Sense::sawn ? "sawn" : std::string(sheet::word_of(item.sense));
    store_.run(
        "INSERT INTO tally (day, shift, number, run, size, grade, bundle, sense, form, pieces, length, "
        "metric, lumber, "
        "wood, reason) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, run.run, words_.find_or_add(item.size),
        words_.find_or_add(WordKind::grade, item.grade), said(fact.context.bundle), sense, word_of(item.form),
        pieces, item.length.count, item.length.system == System::metric, lumber, wood, said(item.reason));
    if (item.form != TallyForm::lineal) {
      store_.run("INSERT OR IGNORE INTO board_length (metric, length) VALUES (?,?)",
                 item.length.system == System::metric, item.length.count);
    }
    run.add_tally(pieces, lumber, wood);
  }

  void put(const DatedFact& fact, const sheet::Sold& line) {
    const auto rate = line.price ? std::optional(line.price->rounded(kMicro)) : std::nullopt;
    if (!line.bundle.empty()) {
      store_.run(
          "INSERT INTO sold_bundle (day, shift, number, buyer, bundle, price_micro) VALUES (?,?,?,?,?,?)",
          day_, shift_, fact.number, line.buyer, line.bundle, rate);
      return;
    }
    static constexpr std::array<std::string_view, 4> kPer{"bf", "piece", "lf", "lm"};
    const auto sold = line.lineal ? sheet::Tally::Item{0, *line.lineal} : line.items.at(fact.item);
    const TallyItem item{line.lineal ? TallyForm::lineal : TallyForm::piece,
                         sheet::Sense::sawn,
                         line.size,
                         sold.length,
                         sold.pieces,
                         line.grade.empty() ? fact.context.grade : line.grade,
                         ""};
    store_.run(
        "INSERT INTO sold (day, shift, number, buyer, species, size, grade, bundle, pieces, length, metric, "
        "lumber, "
        "rate_micro, form, rate_per) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, line.buyer, words_.find_or_add(WordKind::species, fact.context.species),
        words_.find_or_add(item.size), words_.find_or_add(WordKind::grade, item.grade),
        said(fact.context.bundle), item.pieces, item.length.count, item.length.system == System::metric,
        lumber_of(item, book_units()).count, rate, word_of(item.form),
        kPer.at(static_cast<std::size_t>(line.by)));
  }

  // ---- what happened in the day
  void put(const DatedFact& fact, const sheet::Sawing& line) {
    const auto of_job = job(fact.context.job);
    int number = fact.number;
    for (const auto& span : line.spans) {
      store_.run(
          "INSERT INTO sawing (day, shift, number, job, site, from_minute, minutes) VALUES (?,?,?,?,?,?,?)",
          day_, shift_, number++, of_job, site(fact.context.site), span.from, span.minutes());
    }
  }

  void put(const DatedFact& fact, const sheet::Stop& line) {
    const auto from = line.span ? std::optional(line.span->from) : std::nullopt;
    store_.run(
        "INSERT INTO stop (day, shift, number, job, site, from_minute, minutes, cause, text, charge) "
        "VALUES (?,?,?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, job(fact.context.job), site(fact.context.site), from, line.minutes,
        line.cause, line.text, line.charge);
  }

  void put(const DatedFact& fact, const sheet::Crew& line) {
    const auto& hand = line.hands.at(fact.item);
    store_.run("INSERT INTO crew (day, shift, number, job, name, minutes, activity) VALUES (?,?,?,?,?,?,?)",
               day_, shift_, fact.number, job(fact.context.job), hand.name, hand.minutes, hand.activity);
  }

  /// A set-up named again without its oversize has the one last said for it.
  void put(const DatedFact& fact, const sheet::Setup& line) {
    const Id setup = *words_.find_or_add(WordKind::setup, line.name);
    const auto feed = line.feed ? std::optional(line.feed->rounded(kMicro)) : std::nullopt;
    store_.run(
        "INSERT INTO setup_change (day, shift, number, setup, kerf_mils, over_mils, edger_mils, third_mils, "
        "lead_mils, zero_mils, feed_micro, tooth, metric, text) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, setup, line.kerf_mils, line.over_mils, line.edger_mils, line.third_mils,
        line.lead_mils, line.zero_mils, feed, said(line.tooth), entry_.metric, line.text);
    put_record(fact, "written", "");
    over_ = over_last_said(setup, fact.number);
  }

  /// The saws stand otherwise from here on, by what is said.
  void put_record(const DatedFact& fact, std::string_view begun, const std::string& saw) {
    store_.run("INSERT INTO setup_record (day, shift, number, begun, saw, site) VALUES (?,?,?,?,?,?)", day_,
               shift_, fact.number, begun, saw, site(fact.context.site));
  }

  void put(const DatedFact& fact, const sheet::Teeth& line) {
    teeth_.push_back(&fact);
    if (line.action == sheet::ToothAction::full_set) put_record(fact, "full set", line.saw);
    if (line.action == sheet::ToothAction::changed) put_record(fact, "other blade", line.saw);
  }

  /// After the logs and boards, when every run of the sheet is known. Work between runs belongs to none.
  void put_teeth(const DatedFact& fact, const sheet::Teeth& line) {
    store_.run(
        "INSERT INTO tooth_work (day, shift, number, run, job, saw, action, teeth, cause, log_tag, text) "
        "VALUES (?,?,?,?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, runs_.find(fact.context), job(fact.context.job), line.saw,
        (sheet::is_blade_work(line.action) ? "blade-" : "") + std::string(sheet::word_of(line.action)),
        line.count, line.cause, line.log, line.text);
  }

  void put(const DatedFact& fact, const sheet::Thick& line) {
    int reading = 0;
    for (const auto mils : line.readings) {
      store_.run("INSERT INTO thickness (day, shift, number, reading, size, mils) VALUES (?,?,?,?,?,?)", day_,
                 shift_, fact.number, ++reading, words_.find_or_add(line.size), mils);
    }
  }

  void put(const DatedFact& fact, const sheet::Charge& line) {
    store_.run(
        "INSERT INTO charge (day, shift, number, job, name, quantity_micro, text) VALUES (?,?,?,?,?,?,?)",
        day_, shift_, fact.number, job(fact.context.job), line.name, line.quantity.rounded(kMicro),
        line.text);
  }

  void put(const DatedFact& fact, const sheet::Meter& line) {
    store_.run("INSERT INTO meter (day, shift, number, tenths) VALUES (?,?,?,?)", day_, shift_, fact.number,
               line.tenths);
  }

  void put(const DatedFact& fact, const sheet::Fuel& line) {
    store_.run(
        "INSERT INTO fuel (day, shift, number, quantity_micro, unit, price_minor) VALUES (?,?,?,?,?,?)", day_,
        shift_, fact.number, line.quantity.rounded(kMicro),
        line.unit == sheet::FuelUnit::gallon ? "gal" : "l", line.price_minor);
  }

  void put(const DatedFact& fact, const sheet::Move& line) {
    store_.run(
        "INSERT INTO move (day, shift, number, job, from_site, to_site, distance_micro, unit, minutes) "
        "VALUES (?,?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, job(fact.context.job), site(line.from), site(line.to),
        line.distance.rounded(kMicro), line.unit == sheet::DistanceUnit::mile ? "mi" : "km", line.minutes);
    put_record(fact, "moved", "");
  }

  void put(const DatedFact& fact, const sheet::Residue& line) {
    store_.run(
        "INSERT INTO residue (day, shift, number, job, kind, quantity_micro, unit, text) VALUES "
        "(?,?,?,?,?,?,?,?)",
        day_, shift_, fact.number, job(fact.context.job), line.kind, line.quantity.rounded(kMicro),
        measure::word_of(line.unit), line.text);
  }

  void put(const DatedFact& fact, const sheet::Note& line) {
    store_.run("INSERT INTO note (day, shift, number, text) VALUES (?,?,?,?)", day_, shift_, fact.number,
               line.text);
  }

  // ---- how much over nominal is cut
  [[nodiscard]] System book_units() const { return now_.file().units; }

  std::optional<Over> over_last_said(Id setup, int number) {
    std::optional<Over> over;
    store_.each(
        "SELECT over_mils, metric FROM setup_change WHERE setup = ? AND over_mils IS NOT NULL "
        "AND (day, shift, number) <= (?, ?, ?) ORDER BY day DESC, shift DESC, number DESC LIMIT 1",
        [&](const Row& row) {
          over = Over{row.number(0), row.number(1) != 0};
        },
        setup, day_, shift_, number);
    return over;
  }

  std::optional<Over> over_carried() {
    const auto setup = store_.number(
        "SELECT setup FROM setup_change WHERE (day, shift) < (?, ?) ORDER BY day DESC, shift DESC, number "
        "DESC LIMIT 1",
        day_, shift_);
    return setup ? over_last_said(*setup, 0) : std::nullopt;
  }

  Store& store_;
  Words& words_;
  const SheetEntry& entry_;
  Day day_;
  int shift_;
  MillInForce& now_;
  std::vector<DatedFact> facts_;
  Runs runs_;
  LogWriter logs_;
  std::optional<Over> over_;
  std::vector<const DatedFact*> teeth_;
};

}  // namespace

void write_sheet_rows(Store& store, Words& words, const SheetEntry& entry, MillInForce& then,
                      MillInForce& now) {
  SheetWriter(store, words, entry, then, now).write();
}

}  // namespace kerfbook::book
