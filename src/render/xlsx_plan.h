// xlsx_plan.h -- how tables of different shapes share one worksheet: where each of their columns begins and ends.
// A worksheet has one set of columns; a table's column lies over as many of them as it needs. Part of the workbook
// module only.
#pragma once

#include <cstddef>
#include <vector>

#include "render/document.h"
#include "render/xlsx_book.h"

namespace kerfbook::render {

/// Characters that columns ask for: at least, and what they would be best.
struct Widths {
  std::vector<int> least;
  std::vector<int> best;
};

class Plan {
 public:
  /// `may_split`: a later table may divide the columns of an earlier one, which then lie over the parts. A report, whose
  /// figures are sorted and copied, is not divided.
  explicit Plan(bool may_split) : may_split_(may_split) {}

  /// Columns side by side from the left edge.
  void add(const Widths& widths);
  /// Widens the sheet to the right, when it is narrower.
  void reach(int characters);
  /// An edge near `wanted` (characters from the left): one that is there, at most `slack` to either side, or a new one.
  int edge_near(int wanted, int slack);
  /// An edge at `least` or up to `slack` beyond it.
  int edge_after(int least, int slack);

  [[nodiscard]] int width() const { return edges_.back(); }
  /// Width of each worksheet column.
  [[nodiscard]] std::vector<int> columns() const;
  /// From one edge to another.
  [[nodiscard]] Place between(int left, int right) const;
  [[nodiscard]] Place across() const { return between(0, width()); }
  /// The columns of the table that was added as the `table`-th.
  [[nodiscard]] std::vector<Place> places(std::size_t table) const;

 private:
  void insert(int edge);
  int edge_for(int least, int best);

  bool may_split_;
  std::vector<int> edges_{0};
  std::vector<std::vector<int>> tables_;  ///< right edges of their columns
};

/// What each shown column of the table asks for, in the order they stand: the widths of its contents, words being broken
/// over lines so that all of it is no wider than `most` where that can be.
Widths needed_widths(const Table& table, const Style& style, int most);
/// Lines of 15 points that the table takes with columns so placed: title, headings, rows, totals, sums and notes.
double needed_lines(const Table& table, const Style& style, const std::vector<Place>& places, int width);

}  // namespace kerfbook::render
