// raw_log.h -- the raw measure of a log as one text in the sheet's own notation ("12/13-15x16'6\" defect 10% rot"),
// which the book keeps so that a log can be scaled again under any rule.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "scaling/practice.h"

namespace kerfbook::book {

struct LogSpec {
  scaling::LogMeasure measure;
  std::vector<scaling::Defect> defects;
};

std::string write_spec(const LogSpec& spec);
/// `metric`: what plain numbers mean, as in the sheet the text was written in. nullopt when it is no log.
std::optional<LogSpec> read_spec(std::string_view text, bool metric);
/// The one unit a practice answers in within a book: cubic feet in an inch book and cubic metres in a metric one for
/// rules that give either, whichever way a log was measured, so that logs can be added up.
scaling::VolumeUnit unit_in(const scaling::Practice& practice, measure::System book);
/// The log's scale in that unit; nullopt when the rule needs a reading that was not taken.
std::optional<scaling::Scale> scaled(const LogSpec& spec, const scaling::Practice& practice,
                                     measure::System book);
/// What was taken off and why, for the eye: "15bf rot; 10%"; empty when nothing was.
std::string defect_words(const std::vector<scaling::Defect>& defects);
/// The small end as one diameter: the mean of its readings, rounded half up to a count.
std::optional<measure::Length> mean_small_end(const scaling::LogMeasure& log);

}  // namespace kerfbook::book
