// scale.cpp -- a log scaled: pieces, gross, deductions, net, cull, and the words that say how it came about.
#include <fmt/core.h>

#include <algorithm>

#include "scaling/arithmetic.h"
#include "scaling/deduction.h"
#include "scaling/pieces.h"
#include "scaling/scaler.h"

namespace kerfbook::scaling {
namespace {

/// Everything that is worked out for one log.
struct Worked {
  Pieces pieces;
  Amounts amounts;
  std::vector<Rational> taken;
  bool under_top = false;
  bool under_length = false;
  std::int64_t unculled = 0;  ///< the net before the log was found to be a cull
};

bool past_table(const Pieces& pieces, const Rule& rule) {
  if (rule.greatest_diameter == 0) return false;
  const auto* end = pieces.piece.begin() + pieces.count;
  return std::any_of(pieces.piece.begin(), end,
                     [&rule](const Piece& p) { return p.small > rule.greatest_diameter; });
}

void find_cull(const Practice& by, Worked& worked) {
  Amounts& amounts = worked.amounts;
  const Ticks top = worked.pieces.piece[0].small;
  worked.under_top = top > 0 && top < ticks(by.minimum_top);
  worked.under_length = worked.pieces.length < ticks(by.minimum_length);
  const bool unsound = !by.merchantable_percent.is_zero() && amounts.gross > 0 &&
                       Rational(amounts.net) * 100 < by.merchantable_percent * amounts.gross;
  worked.unculled = amounts.net;
  if (!worked.under_top && !worked.under_length && !unsound) return;
  amounts.cull = true;
  amounts.deduction = amounts.gross;
  amounts.net = 0;
}

Trouble work_out(const LogMeasure& log, const std::vector<Defect>& defects, const Rule& rule,
                 const Practice& by, Worked& into) {
  if (const Trouble trouble = make_pieces(log, rule, by, into.pieces); trouble != Trouble::none)
    return trouble;
  if (past_table(into.pieces, rule)) return Trouble::off_table;
  Amounts& amounts = into.amounts;
  const System system = log.length.system;
  amounts.unit = unit_for(rule, system);
  amounts.gross = whole_scale(into.pieces, rule, by, amounts.unit);
  if (!defects.empty()) {
    const Sound sound{rule, by, into.pieces, amounts.gross, amounts.unit, system};
    into.taken = taken_off(sound, defects);
    amounts.deduction = rounded_deduction(sound, into.taken);
  }
  amounts.net = amounts.gross - amounts.deduction;
  find_cull(by, into);
  return Trouble::none;
}

/// `by_rule`: how many segments the practice makes of the log.
Slip slip_for(Trouble trouble, std::size_t by_rule, const Rule& rule, const LogMeasure& log,
              const Practice& by) {
  const auto say = [](std::string what, std::string instead) {
    return Slip{std::move(what), std::move(instead), 0};
  };
  switch (trouble) {
    case Trouble::none:
      break;
    case Trouble::no_small_end:
      return say(fmt::format("{} needs the small end", rule.shown), "write it as 15x12");
    case Trouble::no_large_end:
      return say(fmt::format("{} needs both ends", rule.shown), "write the large end too, as 12-15x16");
    case Trouble::no_middle:
      return say(fmt::format("{} needs a measure at mid length", rule.shown), "add 'mid 13.5' or 'girth 48'");
    case Trouble::no_length:
      return say("the log has no length", "write it as 15x12");
    case Trouble::too_many_readings:
      return say("more than two readings of one place", "give one, or two at right angles");
    case Trouble::too_few_segments:
      return say(fmt::format("{} diameter{} for segments, but at {} the log divides into {}",
                             log.segments.size(), log.segments.size() == 1 ? "" : "s",
                             measure::spoken_length(by.longest_segment), by_rule),
                 "give the small-end diameter of each segment, top first");
    case Trouble::too_many_segments:
      return say(fmt::format("the log would be scaled in more than {} segments", kMostSegments),
                 "give fewer segments");
    case Trouble::too_big:
      return say("a reading is no tree's: it must be over 0, to 240 in through and 400 ft long",
                 "look at the figures again");
    case Trouble::off_table:
      return say(fmt::format("a diameter is past the end of the {} table", rule.title),
                 "the table ends at 120 in");
  }
  return {};
}

System diameters_in(const Rule& rule, System log) {
  if (rule.diameter_class == DiameterClass::by_log) return log;
  return rule.diameter_class == DiameterClass::inch ? System::inch : System::metric;
}

void say_segments(const Worked& worked, const Practice& by, Scale& scale) {
  const Pieces& pieces = worked.pieces;
  if (pieces.count > pieces.by_rule) {
    scale.remarks.push_back(fmt::format("divided in {} by the person; the practice would divide it in {}",
                                        pieces.count, pieces.by_rule));
  }
  if (!pieces.taper_shared) return;
  scale.remarks.push_back(
      pieces.taper_measured
          ? std::string("taper shared evenly between the measured ends (from memory)")
          : fmt::format("no large end measured: a taper of {} in per ft shared evenly (from memory)",
                        plain(shown(Rational(by.taper_mils_per_foot, 1000), 3))));
}

void say_limits(const Worked& worked, const Rule& rule, const Practice& by, const LogMeasure& log,
                Scale& scale) {
  const Piece& top = worked.pieces.piece[0];
  if (rule.needs == Needs::small_end && top.small < rule.least_diameter) {
    scale.remarks.push_back(fmt::format("zero: under the rule's least diameter of {} in",
                                        measure::write_inches(length_of(rule.least_diameter, System::inch))));
  } else if (worked.pieces.length < rule.least_length || worked.pieces.length == 0) {
    scale.remarks.emplace_back("zero: under the rule's least length");
  }
  if (!log.large.empty() && top.large > 0 && top.large < top.small) {
    scale.remarks.emplace_back("the large end is smaller than the small end");
  }
  if (worked.under_top) {
    scale.remarks.push_back("cull: under the minimum top of " + measure::write_inches(by.minimum_top) +
                            (by.minimum_top.system == System::inch ? " in" : ""));
  }
  if (worked.under_length) {
    scale.remarks.push_back("cull: under the minimum length of " + measure::spoken_length(by.minimum_length));
  }
  if (scale.cull && !worked.under_top && !worked.under_length) {
    scale.remarks.push_back(fmt::format(
        "cull: {} sound of {} is under {} %", plain(shown(Rational(worked.unculled, kPerUnit), 2)),
        plain(shown(Rational(scale.gross, kPerUnit), 2)), plain(shown(by.merchantable_percent, 1))));
  }
}

void say_defects(const Worked& worked, const std::vector<Defect>& defects, Scale& scale) {
  for (std::size_t i = 0; i < defects.size(); ++i) {
    scale.taken.push_back({write_defect(defects[i]), defects[i].reason, worked.taken[i].rounded(0)});
    if (defects[i].kind != DefectKind::volume || defects[i].unit == scale.unit) continue;
    scale.remarks.push_back(fmt::format("{} taken as {} {} of solid wood", write_defect(defects[i]),
                                        plain(shown(worked.taken[i] / kPerUnit, 3)), unit_word(scale.unit)));
  }
}

Scale in_words(const Worked& worked, const LogMeasure& log, const std::vector<Defect>& defects,
               const Rule& rule, const Practice& by) {
  Scale scale;
  scale.rule = std::string(rule.name);
  scale.unit = worked.amounts.unit;
  scale.gross = worked.amounts.gross;
  scale.deduction = worked.amounts.deduction;
  scale.net = worked.amounts.net;
  scale.cull = worked.amounts.cull;
  const System system = log.length.system;
  for (std::size_t i = 0; i < worked.pieces.count; ++i) {
    const Piece& piece = worked.pieces.piece[i];
    const bool by_middle = rule.needs == Needs::middle;
    const Ticks diameter = !by_middle ? piece.small : piece.mid > 0 ? piece.mid : piece.girth * 113 / 355;
    scale.segments.push_back({length_of(diameter, diameters_in(rule, system)),
                              length_of(piece.length, system), piece_scale(piece, rule, by, scale.unit),
                              worked.pieces.overridden[i]});
  }
  say_segments(worked, by, scale);
  say_limits(worked, rule, by, log, scale);
  say_defects(worked, defects, scale);
  return scale;
}

}  // namespace

std::string_view unit_word(VolumeUnit unit) {
  switch (unit) {
    case VolumeUnit::board_foot:
      return "bf";
    case VolumeUnit::cubic_foot:
      return "ft3";
    case VolumeUnit::cubic_metre:
      return "m3";
    case VolumeUnit::hoppus_foot:
      return "hoppus ft";
  }
  return "";
}

Scaler::Scaler(const Practice& practice, const Rule& rule) : practice_(practice), rule_(&rule) {}

Result<Scaler> Scaler::make(const Practice& practice) {
  const Rule* rule = find_rule(practice.rule);
  if (rule == nullptr) return Slip{why_not(practice.rule), "", 0};
  return Scaler(practice, *rule);
}

Result<Scale> Scaler::scale(const LogMeasure& log, const std::vector<Defect>& defects) const {
  Worked worked;
  const Trouble trouble = work_out(log, defects, *rule_, practice_, worked);
  if (trouble != Trouble::none) return slip_for(trouble, worked.pieces.by_rule, *rule_, log, practice_);
  return in_words(worked, log, defects, *rule_, practice_);
}

std::optional<Amounts> Scaler::amounts(const LogMeasure& log, const std::vector<Defect>& defects) const {
  Worked worked;
  if (work_out(log, defects, *rule_, practice_, worked) != Trouble::none) return std::nullopt;
  return worked.amounts;
}

Result<Scale> scale(const LogMeasure& log, const std::vector<Defect>& defects, const Practice& practice) {
  const auto scaler = Scaler::make(practice);
  if (!scaler) return scaler.slip();
  return scaler->scale(log, defects);
}

}  // namespace kerfbook::scaling
