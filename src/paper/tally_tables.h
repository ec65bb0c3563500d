// tally_tables.h -- the tables a customer holds against his stack: sizes by lengths, days, logs, what was struck.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "book/book.h"
#include "price/bill.h"
#include "render/document.h"

namespace kerfbook::billing {

/// Pieces by size and length, one table a species (and grade, as a second key), board feet counted by the convention,
/// in a metric book cubic metres.
std::vector<render::Table> size_tables(const book::Mill& mill, const measure::Convention& by,
                                       const std::vector<Fact>& facts, const std::string& title = "Tally");
/// The same for each day by itself; none when there is but one day.
std::vector<render::Table> size_tables_by_day(const book::Mill& mill, const measure::Convention& by,
                                              const std::vector<Fact>& facts);
/// What was counted end to end, by size; empty rows when nothing was.
render::Table lineal_table(const book::Mill& mill, const measure::Convention& by,
                           const std::vector<Fact>& facts);
/// Pieces, lumber, logs and sawing hours of each day, and of each week when there are several.
std::vector<render::Table> day_tables(const book::Mill& mill, const measure::Convention& by,
                                      const std::vector<Fact>& facts);
/// The sheets a paper is about, each with the revision from which on its struck lines are told: 1, or the one billed.
using SheetsSince = std::map<SheetKey, int>;
/// Logs sawn with gross and net scale, or what they hold; the yield line, over `lumber` in the mill's unit, stands in
/// its notes. Overrun is that of the report of this name: of the runs of which every log has a scale.
render::Table log_table(const book::Book& book, const JobTerms& job, const SheetsSince& sheets,
                        const Rational& lumber);
/// Lines of the job that corrections struck, with the reason.
render::Table struck_table(const book::Book& book, const std::string& job, const SheetsSince& sheets);

/// Of the facts, those of the sheets.
std::vector<Fact> of_sheets(const std::vector<Fact>& facts, const SheetsSince& sheets);
/// All piece and lineal counts in the mill's unit, exact.
Rational counted_lumber(const book::Mill& mill, const std::vector<Fact>& facts,
                        const measure::Convention& by);
/// Whether logs are scaled for this job's papers in the unit its lumber is counted in. A metric book whose mill file
/// says nothing of log rules has only the usual board-foot rule, which means nothing to its customers.
bool scale_is_shown(const book::Mill& mill, const JobTerms& job);

}  // namespace kerfbook::billing
