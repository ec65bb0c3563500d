// tables.h -- a table as the reckoning expects it, and what an answer of the program has otherwise.
#pragma once

#include <map>
#include <string>
#include <variant>
#include <vector>

#include "answer.h"
#include "fraction.h"

namespace reckoning {

/// A figure of 0 that may be printed as 0 or as a dash: of a day on which nothing of it was done.
struct Idle {
  bool operator==(const Idle&) const = default;
};
/// A figure of shared time, which the book keeps in millionths of a minute: its last printed place may be one off.
struct Shared {
  Fraction value;
  bool operator==(const Shared&) const = default;
};
/// Nothing there (a dash), a text, or a figure.
using Cell = std::variant<std::monostate, std::string, Fraction, Idle, Shared>;

using Row = std::map<std::string, Cell>;

/// of / over x times - less; a dash where one is missing or `over` is 0. Its total is the total of the one over that of
/// the other; `once`: `over` is the same whole in every row.
struct Ratio {
  std::string of;
  std::string over;
  Fraction times = 1;
  Fraction less = 0;
  bool once = false;
};

struct Table {
  std::string name;               ///< of the answer's tables; empty = the answer is one table
  std::vector<std::string> keys;  ///< the columns by which a row is found
  std::vector<std::string> sums;  ///< columns with a total
  std::map<std::string, Ratio> ratios;
  bool with_totals = true;
  std::vector<Row> rows;  ///< with what the ratios are made of, printed or not
};

Cell text_or_dash(const std::string& text);
Cell figure(const Fraction& value);
/// A count or measure of a day: 0 is printed as 0 or as a dash.
Cell idle_or(const Fraction& value);
Cell dash_if_zero(const Fraction& value);
Cell shared(const Fraction& value);

/// Adds a figure to a cell that may be a dash yet.
void add_to(Cell& cell, const Fraction& more);

/// What differs, each in a sentence; nothing when all agrees.
std::vector<std::string> differences(Table expected, const Json& answer);

/// Is what is printed the figure to the nearest millionth?
bool is_nearest(const std::string& printed, const Fraction& exact);

/// The figure a cell of an answer prints, as text; empty where there is a dash.
std::string printed(const Json& answer, const std::string& table, const std::string& column,
                    const Row& key = {});

}  // namespace reckoning
