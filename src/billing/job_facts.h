// job_facts.h -- a job's facts out of the book, as billing sees them, and what the mill file says of the job.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "billing/bill.h"
#include "book/book.h"

namespace kerfbook::billing {

/// Everything the sheets up to and including `to` say of a job, in the order of the days.
JobFacts job_facts(const book::Book& book, const std::string& job, Day to);
/// The same of several jobs, in the order given, with each table of the book gone through once.
std::vector<JobFacts> job_facts(const book::Book& book, const std::vector<std::string>& jobs, Day to);
/// What was sold to a buyer from own stock up to and including `to`.
JobFacts sale_facts(const book::Book& book, const std::string& buyer, Day to);
std::vector<JobFacts> sale_facts(const book::Book& book, const std::vector<std::string>& buyers, Day to);

/// Job, customer, certificate, counting and scaling as the newest mill file has them. A job the mill file does not
/// know is its own customer and counts as the house does.
JobTerms job_terms(const book::Mill& mill, const std::string& job);
/// For a sale: no job, the buyer as customer.
JobTerms sale_terms(const book::Mill& mill, const std::string& buyer);

/// The money tables of the book's mill file. Throws Refused, naming the first problem, when they have errors.
Terms terms_of(const book::Mill& mill);
TermsOptions options_of(const book::Mill& mill);
/// What is wrong with the money tables of a mill file's text: for book::OpenOptions::check_money and for `check`.
std::vector<Diagnostic> check_money(std::string_view mill_toml);

}  // namespace kerfbook::billing
