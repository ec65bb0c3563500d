#include "render/xlsx_plan.h"

#include <algorithm>
#include <numeric>

#include "base/text.h"
#include "render/cell.h"
#include "render/grid.h"
#include "render/renderer.h"
#include "render/xlsx_text.h"

namespace kerfbook::render {
namespace {

constexpr int kSlack = 5;        ///< characters a column may be wider than it needs, to share an edge
constexpr int kMostWords = 44;   ///< words longer than this are broken over lines
constexpr int kLeastWords = 14;  ///< a column of words is not made narrower than this
constexpr int kForAPencil = 7;

int longest_line(const std::string& text) {
  int longest = 0;
  for (const auto line : split_lines(text)) longest = std::max(longest, printed_width(std::string(line)));
  return longest;
}

/// Takes from the widest columns of words until all fit.
void narrow(std::vector<int>& widths, const std::vector<bool>& words, int most) {
  while (std::accumulate(widths.begin(), widths.end(), 0) > most) {
    std::size_t widest = widths.size();
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const bool may = words[i] && widths[i] > kLeastWords;
      if (may && (widest == widths.size() || widths[i] > widths[widest])) widest = i;
    }
    if (widest == widths.size()) return;
    --widths[widest];
  }
}

/// Gives what is left of the width to the column of words, or to all as their hints say when they are to be filled in.
void stretch(const Table& table, std::vector<int>& widths, const std::vector<bool>& words, int most) {
  const int all = std::accumulate(widths.begin(), widths.end(), 0);
  if (all >= most || widths.empty()) return;
  if (table.ruled) {
    const std::vector<int> least = widths;
    int shares = 0;
    for (const Column& column : table.columns) shares += std::max(column.width_hint, kForAPencil);
    for (std::size_t i = 0; i < widths.size(); ++i)
      widths[i] = std::max(least[i], most * std::max(table.columns[i].width_hint, kForAPencil) / shares);
    widths.back() =
        std::max(least.back(), widths.back() + most - std::accumulate(widths.begin(), widths.end(), 0));
  } else if (!table.sums.empty() || widths.size() == 1) {
    std::size_t widest = 0;
    for (std::size_t i = 0; i < widths.size(); ++i)
      if (words[i] && (!words[widest] || widths[i] > widths[widest])) widest = i;
    widths[widest] += most - all;
  }
}

int cell_width(const Cell& cell, const Column& column, const Style& style) {
  return is_absent(cell) ? 0 : longest_line(shown_cell(cell, column, style));
}

struct Needs {
  std::vector<int> widths;
  std::vector<bool> words;
  void add(int width, bool is_words) {
    widths.push_back(width);
    words.push_back(is_words);
  }
};

Needs plain_needs(const Table& table, const Style& style) {
  Needs needs;
  for (const std::size_t i : shown_columns(table)) {
    const Column& column = table.columns[i];
    const bool words = column.kind == ColumnKind::text;
    int content = 0;
    for (const Row& row : table.rows) content = std::max(content, cell_width(row.cells[i], column, style));
    if (!table.totals.empty()) content = std::max(content, cell_width(table.totals[i], column, style));
    if (words) content = std::min(content, kMostWords);
    const int least = table.ruled ? kForAPencil : column.width_hint;
    needs.add(std::max({content + 2, heading_width(column) - 1, least}), words);
  }
  return needs;
}

Needs grid_needs(const Table& table, const Style& style) {
  const GridLayout grid = lay_out(table);
  Needs needs;
  int label = 0;  // the foot says what its figures are, in the first column
  for (const GridFigure& figure : grid.figures) {
    const Column& column = table.columns[figure.column];
    label = std::max(label, screen_width(heading_of(column) + ", " + column.unit));
  }
  for (std::size_t k = 0; k < grid.key_columns.size(); ++k) {
    const Column& column = table.columns[grid.key_columns[k]];
    int content = k == 0 ? label : 0;
    for (const auto& keys : grid.keys) content = std::max(content, cell_width(keys[k], column, style));
    needs.add(std::max(std::min(content, kMostWords), printed_width(heading_of(column))) + 2, true);
  }
  for (std::size_t i = 0; i < grid.heads.size(); ++i) {
    int content = cell_width(grid.heads[i], table.columns[table.grid->column_key], style);
    for (const GridFigure& figure : grid.figures) {
      const Column& column = table.columns[figure.column];
      content = std::max(content, cell_width(figure.head_sums[i], column, style));
    }
    needs.add(std::max(content, 4) + 2, false);
  }
  for (const GridFigure& figure : grid.figures) {
    const Column& column = table.columns[figure.column];
    needs.add(std::max(cell_width(figure.total, column, style) + 3, heading_width(column)), false);
  }
  return needs;
}

double heading_lines(const Table& table, const std::vector<Place>& places) {
  int lines = 1;
  std::size_t at = 0;
  for (const std::size_t i : shown_columns(table)) {
    const Column& column = table.columns[i];
    const int unit = column.unit.empty() ? 0 : 1;
    lines = std::max(lines, lines_in(heading_of(column), places[at++].width) + unit);
  }
  return lines;
}

double rows_lines(const Table& table, const Style& style, const std::vector<Place>& places) {
  const auto columns = shown_columns(table);
  double lines = 0;
  for (const Row& row : table.rows) {
    int tall = 1;
    for (std::size_t at = 0; at < columns.size(); ++at) {
      const Column& column = table.columns[columns[at]];
      if (column.kind != ColumnKind::text) continue;
      tall = std::max(tall, lines_in(shown_cell(row.cells[columns[at]], column, style), places[at].width));
    }
    lines += table.ruled ? std::max(1.5, static_cast<double>(tall)) : tall;
  }
  return lines;
}

}  // namespace

void Plan::insert(int edge) {
  const auto at = std::lower_bound(edges_.begin(), edges_.end(), edge);
  if (at == edges_.end() || *at != edge) edges_.insert(at, edge);
}

void Plan::reach(int characters) {
  if (width() < characters) edges_.push_back(characters);
}

int Plan::edge_after(int least, int slack) {
  const auto at = std::lower_bound(edges_.begin(), edges_.end(), least);
  const bool shares = at != edges_.end() && (*at <= least + slack || !may_split_);
  if (shares) return *at;
  insert(least);
  return least;
}

int Plan::edge_near(int wanted, int slack) {
  int best = -1;
  for (const int edge : edges_)
    if (std::abs(edge - wanted) <= slack && (best < 0 || std::abs(edge - wanted) < std::abs(best - wanted)))
      best = edge;
  if (best >= 0) return best;
  insert(wanted);
  return wanted;
}

void Plan::add(const Widths& widths) {
  std::vector<int> right;
  int left = 0;
  int best = 0;
  for (std::size_t i = 0; i < widths.least.size(); ++i) {
    best += widths.best[i];
    const int least = left + widths.least[i];
    left = edge_for(least, std::max(least, best));
    right.push_back(left);
  }
  tables_.push_back(std::move(right));
}

/// The edge nearest to the best that leaves the column its width, when one is near enough.
int Plan::edge_for(int least, int best) {
  if (tables_.empty() || !may_split_) return edge_after(best, 0);
  int found = -1;
  for (const int edge : edges_)
    if (edge >= least && std::abs(edge - best) <= kSlack &&
        (found < 0 || std::abs(edge - best) < std::abs(found - best)))
      found = edge;
  if (found >= 0) return found;
  insert(best);
  return best;
}

std::vector<int> Plan::columns() const {
  std::vector<int> widths;
  for (std::size_t i = 1; i < edges_.size(); ++i) widths.push_back(edges_[i] - edges_[i - 1]);
  return widths;
}

Place Plan::between(int left, int right) const {
  const auto index = [&](int edge) {
    return static_cast<int>(std::lower_bound(edges_.begin(), edges_.end(), edge) - edges_.begin());
  };
  const int first = index(left);
  const int last = std::max(first, index(right) - 1);
  return {static_cast<SheetColumn>(first), static_cast<SheetColumn>(last), right - left};
}

std::vector<Place> Plan::places(std::size_t table) const {
  std::vector<Place> out;
  int left = 0;
  for (const int right : tables_[table]) {
    out.push_back(between(left, right));
    left = right;
  }
  return out;
}

Widths needed_widths(const Table& table, const Style& style, int most) {
  if (table.rows.empty() && !table.ruled) {
    const int words = std::min(printed_width(table.when_empty) + 2, most);
    return {{words}, {words}};
  }
  Needs needs = table.grid ? grid_needs(table, style) : plain_needs(table, style);
  narrow(needs.widths, needs.words, most);
  Widths widths{needs.widths, needs.widths};
  stretch(table, widths.best, needs.words, most);
  return widths;
}

double needed_lines(const Table& table, const Style& style, const std::vector<Place>& places, int width) {
  double lines = table.title.empty() ? 1 : 2;  // and a gap below
  if (table.rows.empty() && !table.ruled) {
    lines += 1;
  } else if (table.grid) {
    const GridLayout grid = lay_out(table);
    lines += 2 + static_cast<double>(grid.keys.size() + grid.figures.size() + grid.struck.size());
  } else {
    lines += heading_lines(table, places) + rows_lines(table, style, places) + (table.totals.empty() ? 0 : 1);
  }
  if (!table.sums.empty()) lines += 1 + static_cast<double>(table.sums.size());
  if (has_struck(table)) lines += 2;
  for (const std::string& note : table.notes) lines += 0.85 * lines_in(note, width * 6 / 5);
  return lines;
}

}  // namespace kerfbook::render
