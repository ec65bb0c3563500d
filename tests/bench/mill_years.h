// mill_years.h -- an invented mill for the benchmarks: any number of years of day sheets, with every kind of line that
// grows with the years. The same number always gives the same sheet.
#pragma once

#include <chrono>
#include <filesystem>
#include <functional>
#include <string>

#include "book/book.h"

namespace kerfbook::bench {

constexpr int kDaysAYear = 230;  ///< five days a week, 46 weeks a year
constexpr int kLines = 50;       ///< tally lines a day
constexpr int kLogs = 12;        ///< logs sawn a day

Day day_of(int number);
std::string sheet_of(int number);
/// The sheet with one line counted again: another one for the same day.
std::string corrected_sheet_of(int number);
/// Always of the same size: the customers, and the newest 46 jobs with their cut lists.
std::string mill_file(int years);

book::OpenOptions options(bool read_only = false);
/// A book with so many years of sheets, every fortieth of them corrected, posted in two transactions, and a load slip a week.
void fill(const std::filesystem::path& file, int years);

double seconds(const std::function<void()>& deed);

}  // namespace kerfbook::bench
