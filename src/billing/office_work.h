// office_work.h -- what every deed of the office begins and ends with. Private to office.cpp and money_deeds.cpp.
#pragma once

#include <string>
#include <vector>

#include "billing/ledger.h"
#include "billing/paper.h"
#include "book/book.h"

namespace kerfbook::billing {

/// A paper with the next number of its kind, made when `papers` were all there was.
Paper begun(const std::vector<Paper>& papers, PaperKind kind, Day day, std::int64_t first = 1);
void post(book::Book& book, const Paper& paper);
/// Refused with the reason when the paper cannot follow on the ledger.
void check(const Ledger& ledger, const Paper& paper);
/// The job's code as the mill file spells it. Refused for own work, and for a job that is in no sheet and no file.
std::string known_job(const book::Book& book, const std::string& job);

}  // namespace kerfbook::billing
