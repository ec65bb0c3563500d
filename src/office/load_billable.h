// load_billable.h -- what is to be billed of a job or a sale, out of the book.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "price/bill.h"

namespace kerfbook::billing {

/// Everything the sheets up to and including `to` say of a job, in the order of the days.
JobFacts job_facts(const book::Book& book, const std::string& job, Day to);
/// The same of several jobs, in the order given, with each table of the book gone through once.
std::vector<JobFacts> job_facts(const book::Book& book, const std::vector<std::string>& jobs, Day to);
/// What was sold to a buyer from own stock up to and including `to`.
JobFacts sale_facts(const book::Book& book, const std::string& buyer, Day to);
std::vector<JobFacts> sale_facts(const book::Book& book, const std::vector<std::string>& buyers, Day to);

}  // namespace kerfbook::billing
