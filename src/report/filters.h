// filters.h -- what a person asked to see, checked against the book and made into a SELECT's parameters.
#pragma once

#include <string>
#include <vector>

#include "report/report.h"
#include "report/rows.h"

namespace kerfbook::report {

struct Filtered {
  Parameters parameters;           ///< of every name that a SELECT may bind (report.h)
  std::vector<std::string> words;  ///< for the heading: period and filters, each in words
  Ask ask;                         ///< with the book's own spelling of every name
};

/// Throws Refused for a name the book does not know (naming the nearest), WrongUsage for a filter the report does
/// not take.
Filtered filtered(const ReportFile& report, const book::Book& book, const Ask& ask,
                  const render::Style& style, Day today);

/// A day as reports write it in a text: in the order of the style.
std::string day_words(Day day, const render::Style& style);

/// The SELECT for what was asked: a condition written `(:job IS NULL OR job = :job)` is left out when no job was asked
/// for, and is `job = :job` when one was, so that no name is looked up for nothing and an index on it is of use;
/// `day BETWEEN :from AND :to` is left out when all days are asked for.
/// Every other byte, and every line, stays where it was.
std::string fitted(std::string sql, const Parameters& parameters);

}  // namespace kerfbook::report
