// tally_tables.h -- the tables a customer holds against his stack: sizes by lengths, days, logs, what was struck.
#pragma once

#include <string>
#include <vector>

#include "billing/bill.h"
#include "book/book.h"
#include "render/document.h"

namespace kerfbook::billing {

/// Pieces by size and length, one table a species (and grade, as a second key), board feet counted by the convention.
/// Board feet are shown to hundredths and settled so that lines add to rows and rows to the total.
std::vector<render::Table> size_tables(const book::Mill& mill, const measure::Convention& by,
                                       const std::vector<Fact>& facts);
/// Lineal feet by size; empty rows when none were counted.
render::Table lineal_table(const book::Mill& mill, const measure::Convention& by,
                           const std::vector<Fact>& facts);
/// Pieces, board feet, logs and sawing hours of each day, and of each week when there are several.
render::Table day_table(const measure::Convention& by, const std::vector<Fact>& facts);
/// Logs sawn with gross and net scale; the yield line stands in its notes.
render::Table log_table(const book::Book& book, const JobTerms& job, Day from, Day to,
                        const Rational& lumber_bf);
/// Lines of the job that corrections struck, with the reason.
render::Table struck_table(const book::Book& book, const std::string& job, Day from, Day to);

/// Of the facts, those of sheets from `from` to `to`.
std::vector<Fact> within(const std::vector<Fact>& facts, Day from, Day to);
/// Board feet of all piece and lineal counts, exact.
Rational lumber_bf(const std::vector<Fact>& facts, const measure::Convention& by);

}  // namespace kerfbook::billing
