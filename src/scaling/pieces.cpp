#include "scaling/pieces.h"

#include <algorithm>

namespace kerfbook::scaling {
namespace {

Ticks class_width(Ticks exact, const Rule& rule, System system) {
  switch (rule.diameter_class) {
    case DiameterClass::inch:
      return kInch;
    case DiameterClass::centimetre:
      return kCentimetre;
    case DiameterClass::two_centimetres:
      return 2 * kCentimetre;
    case DiameterClass::jas:
      return exact < 14 * kCentimetre ? kCentimetre : 2 * kCentimetre;
    case DiameterClass::by_log:
      return system == System::inch ? kInch : kCentimetre;
  }
  return kInch;
}

/// Both to the nearest class, of two exact halves one up and one down, and a half left in the mean is dropped.
/// Source: USDA Forest Service FSH 2409.11a, R-6 Supplement 98-2, section 21-4, 2 September 1998.
Ticks average_drop_half(Ticks one, Ticks two, Ticks width) {
  const bool both_halves = one % width * 2 == width && two % width * 2 == width;
  const Ticks first = down_to(one + width / 2, width);
  const Ticks second = both_halves ? down_to(two, width) : down_to(two + width / 2, width);
  return down_to((first + second) / 2, width);
}

/// Where the diameter `from_top` along the log lies, before rounding.
Ticks tapered(Ticks small, Ticks large, Ticks from_top, Ticks length, const Rule& rule, const Practice& by) {
  if (by.taper == TaperShare::none) return small;
  if (by.taper == TaperShare::rule && rule.taper_per_foot > 0)
    return small + from_top * rule.taper_per_foot / kFoot;
  if (large > 0) return small + std::max<Ticks>(0, large - small) * from_top / length;
  return small + from_top * by.taper_mils_per_foot / 12'000;  // thousandths of an inch per foot of 12 in
}

bool shares_even_taper(const Rule& rule, const Practice& by) {
  return by.taper == TaperShare::even || (by.taper == TaperShare::rule && rule.taper_per_foot == 0);
}

Ticks mean(const std::vector<Length>& readings) {
  if (readings.empty()) return 0;
  if (readings.size() == 1) return ticks(readings[0]);
  return (ticks(readings[0]) + ticks(readings[1])) / 2;
}

Trouble missing(const LogMeasure& log, const Rule& rule) {
  if (std::max({log.small.size(), log.large.size(), log.mid.size()}) > 2) return Trouble::too_many_readings;
  const bool middle = !log.mid.empty() || log.girth.has_value();
  switch (rule.needs) {
    case Needs::small_end:
      return log.small.empty() && log.segments.empty() ? Trouble::no_small_end : Trouble::none;
    case Needs::middle:
      return middle ? Trouble::none : Trouble::no_middle;
    case Needs::ends_and_mid:
      if (!middle) return Trouble::no_middle;
      [[fallthrough]];
    case Needs::both_ends:
      if (log.small.empty()) return Trouble::no_small_end;
      return log.large.empty() ? Trouble::no_large_end : Trouble::none;
  }
  return Trouble::none;
}

Ticks stepped(Ticks length, const Practice& by) {
  const Ticks step = ticks(by.length_step);
  return step > 0 ? down_to(length, step) : length;
}

bool within_reason(const LogMeasure& log) {
  const auto fits = [](Length reading) {
    constexpr std::int64_t kMostCounts = std::int64_t{1} << 31;
    return reading.count > 0 && reading.count < kMostCounts && ticks(reading) <= kBiggestDiameter;
  };
  for (const auto* readings : {&log.small, &log.large, &log.mid, &log.segments}) {
    if (!std::all_of(readings->begin(), readings->end(), fits)) return false;
  }
  constexpr std::int64_t kMostLengthCounts = std::int64_t{1} << 32;
  if (log.girth && (log.girth->count <= 0 || log.girth->count > kMostLengthCounts ||
                    ticks(*log.girth) > 3 * kBiggestDiameter)) {
    return false;
  }
  return log.length.count <= kMostLengthCounts && ticks(log.length) <= kLongestLog;
}

/// A log scaled in one piece: every reading goes to the rule.
void one_piece(const LogMeasure& log, const Rule& rule, const Practice& by, Pieces& into) {
  const System system = log.length.system;
  Piece& piece = into.piece[0];
  into.count = 1;
  into.overridden[0] = !log.segments.empty();
  const Ticks small = log.segments.empty()
                          ? scaling_diameter(log.small, rule, by, system)
                          : rounded_diameter(ticks(log.segments[0]), rule, by.diameter, system);
  piece.small = small;
  piece.large = scaling_diameter(log.large, rule, by, system);
  piece.mid = scaling_diameter(log.mid, rule, by, system);
  piece.girth = log.girth ? ticks(*log.girth) : 0;
  piece.length = into.length;
}

void many_pieces(const LogMeasure& log, const Rule& rule, const Practice& by, Pieces& into) {
  const System system = log.length.system;
  std::array<Ticks, kMostSegments> lengths{};
  divide(into.length, ticks(by.longest_segment), into.count, rule.division, lengths);
  const Ticks large = mean(log.large);
  const Ticks first = mean(log.small);  // where the person gave the segments, no taper is asked for
  Ticks from_top = 0;
  for (std::size_t i = 0; i < into.count; ++i) {
    into.overridden[i] = i < log.segments.size();
    Ticks diameter = 0;
    if (into.overridden[i]) {
      diameter = rounded_diameter(ticks(log.segments[i]), rule, by.diameter, system);
    } else if (i == 0) {
      diameter = scaling_diameter(log.small, rule, by, system);
    } else {
      diameter =
          rounded_diameter(tapered(first, large, from_top, into.length, rule, by), rule, by.diameter, system);
      into.taper_shared = into.taper_shared || shares_even_taper(rule, by);
      into.taper_measured = large > 0;
    }
    into.piece[i] = Piece{diameter, 0, 0, 0, lengths[i]};
    from_top += lengths[i];
  }
}

/// Even feet where the longest segment is a multiple of them, else whole feet, else 10 cm, else anything.
Ticks division_step(Ticks length, Ticks longest, Ticks pieces) {
  for (const Ticks step : {2 * kFoot, kFoot, kMetre / 10}) {
    if (longest % step == 0 && length / step >= pieces) return step;
  }
  return 1;
}

}  // namespace

Ticks rounded_diameter(Ticks exact, const Rule& rule, DiameterRounding how, System system) {
  if (how == DiameterRounding::none) return exact;
  const Ticks width = class_width(exact, rule, system);
  const Ticks low = down_to(exact, width);
  const Ticks over = 2 * (exact - low);
  bool up = false;
  switch (how) {
    case DiameterRounding::none:
    case DiameterRounding::down:
      break;
    case DiameterRounding::nearest_half_up:
      up = over >= width;
      break;
    case DiameterRounding::nearest_half_down:
      up = over > width;
      break;
    case DiameterRounding::nearest_half_even:
      up = over > width || (over == width && low / width % 2 == 1);
      break;
  }
  return up ? low + width : low;
}

Ticks scaling_diameter(const std::vector<Length>& readings, const Rule& rule, const Practice& by,
                       System system) {
  if (readings.empty()) return 0;
  Ticks joined = ticks(readings[0]);
  if (readings.size() > 1) {
    const Ticks other = ticks(readings[1]);
    switch (by.readings) {
      case ReadingsJoin::average:
        joined = (joined + other) / 2;
        break;
      case ReadingsJoin::average_drop_half:
        joined = average_drop_half(joined, other, class_width(joined, rule, system));
        break;
      case ReadingsJoin::smaller:
        joined = std::min(joined, other);
        break;
    }
  }
  return rounded_diameter(joined, rule, by.diameter, system);
}

std::size_t pieces_needed(Ticks length, Ticks longest) {
  if (longest <= 0 || length <= longest) return 1;
  return static_cast<std::size_t>((length + longest - 1) / longest);
}

// Equal division: counted in steps, the odd steps one by one to the pieces at the butt. What is under a step (the
// odd foot of a 33-ft log) goes to the piece nearest the butt among the shortest, which always has room for it.
void divide(Ticks length, Ticks longest, std::size_t count, Division how,
            std::array<Ticks, kMostSegments>& into) {
  const auto pieces = static_cast<Ticks>(count);
  if (how == Division::full_from_top && count == pieces_needed(length, longest)) {
    for (std::size_t i = 0; i + 1 < count; ++i) into[i] = longest;
    into[count - 1] = length - (pieces - 1) * longest;
    return;
  }
  const Ticks step = division_step(length, longest, pieces);
  const Ticks steps = length / step;
  const Ticks longer = steps % pieces;
  for (Ticks i = 0; i < pieces; ++i) {
    into[static_cast<std::size_t>(i)] = (steps / pieces + (pieces - i <= longer ? 1 : 0)) * step;
  }
  into[static_cast<std::size_t>(pieces - longer - 1)] += length - steps * step;
}

Trouble make_pieces(const LogMeasure& log, const Rule& rule, const Practice& by, Pieces& into) {
  if (log.length.count <= 0) return Trouble::no_length;
  if (!within_reason(log)) return Trouble::too_big;
  if (const Trouble trouble = missing(log, rule); trouble != Trouble::none) return trouble;
  into.length = stepped(std::max<Ticks>(0, ticks(log.length) - ticks(by.trim)), by);
  into.by_rule = pieces_needed(into.length, ticks(by.longest_segment));
  into.count = into.by_rule;
  into.taper_shared = false;
  into.taper_measured = false;
  if (rule.needs != Needs::small_end) {
    into.count = 1;
  } else if (!log.segments.empty()) {
    if (log.segments.size() < into.by_rule) return Trouble::too_few_segments;
    into.count = log.segments.size();
  }
  if (into.count > kMostSegments) return Trouble::too_many_segments;
  if (into.count == 1) {
    one_piece(log, rule, by, into);
  } else {
    many_pieces(log, rule, by, into);
  }
  return Trouble::none;
}

Pieces shrunk(const Pieces& whole, Ticks length, Ticks diameter, const Rule& rule, const Practice& by,
              System system) {
  const auto thinner = [&](Ticks full, Ticks off) {
    return full == 0 ? 0 : rounded_diameter(std::max<Ticks>(0, full - off), rule, by.diameter, system);
  };
  Pieces left = whole;
  left.length = length == 0 ? whole.length : stepped(std::max<Ticks>(0, whole.length - length), by);
  Ticks cut = whole.length - left.length;
  for (std::size_t i = left.count; i > 0; --i) {
    Piece& piece = left.piece[i - 1];
    const Ticks here = std::min(cut, piece.length);
    piece.length -= here;
    cut -= here;
    if (diameter == 0) continue;
    piece.small = thinner(piece.small, diameter);
    piece.large = thinner(piece.large, diameter);
    piece.mid = thinner(piece.mid, diameter);
    // A girth is pi times the diameter; 355/113 is near enough for what is an estimate of rot.
    if (piece.girth > 0) piece.girth = std::max<Ticks>(0, piece.girth - diameter * 355 / 113);
  }
  return left;
}

}  // namespace kerfbook::scaling
