// ratios.h -- the columns the engine works out of two others, row by row and for the total. Inside the room.
#pragma once

#include <vector>

#include "report/figures.h"
#include "report/raw_view.h"
#include "report/table.h"

namespace kerfbook::report {

constexpr int kHiddenPlaces = 6;  ///< a figure of a workbook's hidden columns is shown so to who looks there

/// Works on a table whose columns are described and whose figures SQL gave; adds hidden columns where a ratio needs
/// sides of its own.
class Ratios {
 public:
  Ratios(const TableSpec& spec, const RawView& raw, const Setting& setting, const Struck& struck,
         bool totalled, render::Table& table, std::vector<Figures>& figures)
      : spec_(spec),
        raw_(raw),
        setting_(setting),
        struck_(struck),
        totalled_(totalled),
        table_(table),
        figures_(figures) {}

  /// A ratio column: its two sides row by row, made alike where one side is lumber and the other a log scale in
  /// another unit. Its total is over the sums that are printed under its sides, whatever rows have but one of them; of
  /// two sides that nobody sees, whose sums are not printed, only the rows that have both count.
  void work_out(std::size_t c);

 private:
  [[nodiscard]] bool is_part_of_whole(std::size_t c) const;
  void total_hidden(std::size_t side);
  [[nodiscard]] Rational multiplier(const ColumnSpec& spec) const;
  [[nodiscard]] bool is_lumber_over_scale(std::size_t over, std::size_t under) const;
  [[nodiscard]] bool needs_own_sides(std::size_t over, std::size_t under) const;
  [[nodiscard]] bool are_hidden(std::size_t over, std::size_t under) const;
  void convert_to_scale(std::size_t over, std::size_t under, Figures& tops) const;
  std::size_t add_hidden(const std::string& name, Figures figures);

  const TableSpec& spec_;
  const RawView& raw_;
  const Setting& setting_;
  const Struck& struck_;
  bool totalled_;
  render::Table& table_;
  std::vector<Figures>& figures_;  ///< one a column; empty for text and day
};

}  // namespace kerfbook::report
