#include "sheet/raw_log.h"

#include "base/exact.h"
#include "base/text.h"
#include "scaling/rules.h"
#include "sheet/read.h"
#include "sheet/write.h"

namespace kerfbook::book {
namespace {

using measure::System;
using scaling::VolumeUnit;

// 1 ft = 304.8 mm exactly, so 1 ft3 = 0.028316846592 m3.
constexpr std::int64_t kCubicMetresPerFt3Num = 28'316'846'592;
constexpr std::int64_t kCubicMetresPerFt3Den = 1'000'000'000'000;

std::int64_t converted(std::int64_t figure, VolumeUnit from, VolumeUnit to) {
  if (from == to) return figure;
  return to == VolumeUnit::cubic_metre
             ? round_half_up(Wide{figure} * kCubicMetresPerFt3Num, kCubicMetresPerFt3Den)
             : round_half_up(Wide{figure} * kCubicMetresPerFt3Den, kCubicMetresPerFt3Num);
}

}  // namespace

std::string write_spec(const LogSpec& spec) {
  sheet::LogLine line;
  line.measure = spec.measure;
  std::string written = sheet::write_line({line, "", {}});
  written = trim(std::string_view(written).substr(written.find("log") + 3));
  const bool metric = spec.measure.length.system == System::metric;  // how it will be read again
  for (const auto& defect : spec.defects) {
    written += " defect " + scaling::write_defect(defect, metric) +
               (defect.reason.empty() ? "" : " " + defect.reason);
  }
  return written;
}

std::optional<LogSpec> read_spec(std::string_view text, bool metric) {
  // The sheet's reader is the one place that knows the notation, so the text is handed to it as a one-log sheet.
  const auto read = sheet::read("sheet 2000-01-01\nlog " + std::string(text) + "\n", {metric});
  if (has_error(read.found) || read.sheet.lines.size() != 1) return std::nullopt;
  const auto* line = std::get_if<sheet::LogLine>(&read.sheet.lines.front().fact);
  if (line == nullptr || !line->measure) return std::nullopt;
  return LogSpec{*line->measure, line->defects};
}

VolumeUnit unit_in(const scaling::Practice& practice, System book) {
  const auto* rule = scaling::find_rule(practice.rule);
  switch (rule == nullptr ? scaling::Answers::board_feet : rule->answers) {
    case scaling::Answers::board_feet:
      return VolumeUnit::board_foot;
    case scaling::Answers::cubic:
      return book == System::metric ? VolumeUnit::cubic_metre : VolumeUnit::cubic_foot;
    case scaling::Answers::cubic_metres:
      return VolumeUnit::cubic_metre;
    case scaling::Answers::hoppus_feet:
      return VolumeUnit::hoppus_foot;
  }
  return VolumeUnit::board_foot;
}

std::optional<scaling::Scale> scaled(const LogSpec& spec, const scaling::Practice& practice, System book) {
  auto answer = scaling::scale(spec.measure, spec.defects, practice);
  if (!answer) return std::nullopt;
  scaling::Scale scale = *answer;
  const VolumeUnit unit = unit_in(practice, book);
  scale.gross = converted(scale.gross, scale.unit, unit);
  scale.net = converted(scale.net, scale.unit, unit);
  scale.deduction = scale.gross - scale.net;
  scale.unit = unit;
  return scale;
}

std::string defect_words(const std::vector<scaling::Defect>& defects) {
  std::vector<std::string> words;
  for (const auto& defect : defects) {
    words.push_back(scaling::write_defect(defect) + (defect.reason.empty() ? "" : " " + defect.reason));
  }
  return join(words, "; ");
}

std::optional<measure::Length> mean_small_end(const scaling::LogMeasure& log) {
  if (log.small.empty()) return std::nullopt;
  Wide sum = 0;
  for (const auto& reading : log.small) sum += reading.count;
  return measure::Length{round_half_up(sum, static_cast<Wide>(log.small.size())), log.small.front().system};
}

}  // namespace kerfbook::book
