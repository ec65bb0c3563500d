#include "render/outputs_check.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "base/text.h"
#include "render/cell.h"
#include "render/outputs.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

std::string shown_row(const std::vector<std::string>& cells) {
  return join(cells, " | ");
}

/// One form of one table against what it must show.
void check_same(const std::string& where, const Figures& made, const Figures& meant) {
  CHECK_MESSAGE(shown_row(made.headings) == shown_row(meant.headings), where << ": headings");
  REQUIRE_MESSAGE(made.rows.size() == meant.rows.size(), where << ": rows");
  for (std::size_t i = 0; i < made.rows.size(); ++i) {
    CHECK_MESSAGE(shown_row(made.rows[i]) == shown_row(meant.rows[i]), where << ": row " << i + 1);
    CHECK_MESSAGE(made.struck[i] == meant.struck[i], where << ": struck, row " << i + 1);
  }
  REQUIRE_MESSAGE(made.feet.size() == meant.feet.size(), where << ": feet");
  for (std::size_t i = 0; i < made.feet.size(); ++i)
    CHECK_MESSAGE(shown_row(made.feet[i]) == shown_row(meant.feet[i]), where << ": foot " << i + 1);
}

/// The counted cells of one column added up; nothing when none holds a figure.
std::string added_up(const Figures& made, std::size_t column) {
  Rational sum;
  bool any = false;
  for (std::size_t r = 0; r < made.rows.size(); ++r) {
    if (made.struck[r] || made.rows[r][column].empty()) continue;
    sum = sum + number_of(made.rows[r][column]);
    any = true;
  }
  return any ? canonical(plain(shown(sum, 9))) : "";
}

/// On a narrow screen words may be cut short, with an ellipsis; no figure may.
void check_narrow(const std::string& where, Figures made, const Figures& meant) {
  constexpr std::string_view kCut = "…";
  for (std::size_t i = 0; i < std::min(made.rows.size(), meant.rows.size()); ++i) {
    for (std::size_t k = 0; k < std::min(made.rows[i].size(), meant.rows[i].size()); ++k) {
      std::string& cell = made.rows[i][k];
      const std::string& whole = meant.rows[i][k];
      if (cell.ends_with(kCut) && whole.starts_with(cell.substr(0, cell.size() - kCut.size()))) cell = whole;
    }
  }
  check_same(where, made, meant);
}

/// A part of a whole that is the same in every row: such parts add up to the part of all of them.
bool is_part_of_whole(const Table& table, const Column& column) {
  return column.total == TotalKind::ratio && !column.ratio->percent_over &&
         table.columns[column.ratio->under].total == TotalKind::none;
}

/// Whether a note under the table tells what the printed lines of a column add to.
bool is_noted(const Table& table, const Column& column, const std::string& sum, const Style& style) {
  return std::any_of(table.notes.begin(), table.notes.end(), [&](const std::string& note) {
    if (note.find("as printed") == std::string::npos || note.find(heading_of(column)) == std::string::npos)
      return false;
    const auto words = split_words(note);
    return std::any_of(words.begin(), words.end(), [&](std::string word) {
      while (!word.empty() && std::string_view(",;.)").find(word.back()) != std::string_view::npos)
        word.pop_back();
      Column number;
      number.kind = ColumnKind::decimal;
      return canonical(word, number, style) == sum;
    });
  });
}

/// A rounded line is at most half a unit off, and so is the total.
void check_added(const std::string& where, const Table& table, const Column& column, const std::string& sum,
                 const std::string& total, std::size_t lines, const Style& style) {
  if (sum == total) return;
  CHECK_MESSAGE(is_noted(table, column, sum, style), where << ": the lines of " << column.name << " add to "
                                                           << sum << ", not to " << total
                                                           << ", and no note says so");
  const double unit = std::pow(10, -column.places);
  CHECK_MESSAGE(
      std::abs(drawn(number_of(sum) - number_of(total))) <= unit * static_cast<double>(lines + 1) / 2,
      where << ": the lines of " << column.name << " add to " << sum << ", not to " << total);
}

void check_footed(const std::string& where, const Figures& made, const std::vector<std::string>& totals,
                  const Table& table, const Style& style) {
  const auto columns = shown_columns(table);
  for (std::size_t i = 0; i < columns.size() && !made.rows.empty(); ++i) {
    const Column& column = table.columns[columns[i]];
    if (column.total != TotalKind::sum && !is_part_of_whole(table, column)) continue;
    check_added(where, table, column, added_up(made, i), totals.at(i), made.rows.size(), style);
  }
}

/// To six decimals: each line and the total is off by half a millionth at most.
void check_fine(const std::string& where, const Figures& made, const std::vector<std::string>& totals,
                const Table& table) {
  const auto columns = shown_columns(table);
  for (std::size_t i = 0; i < columns.size() && !made.rows.empty(); ++i) {
    const Column& column = table.columns[columns[i]];
    if (column.total != TotalKind::sum && !is_part_of_whole(table, column)) continue;
    const std::string sum = added_up(made, i);
    CHECK_MESSAGE(sum.empty() == totals.at(i).empty(), where << ": the lines of " << column.name);
    const double most = 0.5e-6 * static_cast<double>(made.rows.size() + 1) + 1e-12;
    CHECK_MESSAGE(
        std::abs(drawn(number_of(sum) - number_of(totals.at(i)))) <= most,
        where << ": the lines of " << column.name << " add to " << sum << ", not to " << totals.at(i));
  }
}

/// A grid: the first figure is in the cells too; each has its sums at the right and its foot. `keys` head the lines.
void check_grid_footed(const std::string& where, const Figures& made, const Table& table,
                       const Style& style) {
  if (made.rows.empty()) return;
  const std::size_t figures = made.feet.size();
  const std::size_t width = made.rows.front().size();
  std::size_t keys = 0;  // the foot has its name over the keys, and a figure under every length
  while (keys < width - figures && (keys == 0 || made.feet.front()[keys].empty())) ++keys;
  const auto across = [&](const std::vector<std::string>& line) {
    Rational sum;
    for (std::size_t i = keys; i < width - figures; ++i) sum = sum + number_of(line[i]);
    return canonical(plain(shown(sum, 9)));
  };
  for (const auto& line : made.rows)
    CHECK_MESSAGE(number_of(across(line)) == number_of(line[width - figures]),
                  where << ": across " << shown_row(line));
  for (std::size_t i = keys; i < width - figures; ++i)
    CHECK_MESSAGE(added_up(made, i) == made.feet.front()[i], where << ": down " << made.headings[i]);
  std::vector<std::size_t> columns = {table.grid->cell};
  for (const std::size_t sum : table.grid->row_sums)
    if (sum != table.grid->cell) columns.push_back(sum);
  for (std::size_t f = 0; f < figures; ++f) {
    const std::size_t at = width - figures + f;
    const Column& column = table.columns[columns.at(f)];
    check_added(where + ", down", table, column, added_up(made, at), made.feet[f][at], made.rows.size(),
                style);
    if (!made.feet[f][at].empty())
      check_added(where + ", across", table, column, across(made.feet[f]), made.feet[f][at], width, style);
  }
}

// ---- workbooks ---------------------------------------------------------------------------------------------------

using Cells = std::set<std::pair<int, int>>;

Cells named_cells(const SheetCell& cell) {
  const auto named = named_in(cell.formula);
  return {named.begin(), named.end()};
}

/// The formulas of the table's own cells, worked out again.
void check_values(const std::string& where, const Place& place) {
  const int last = place.feet.empty() ? place.rows.back() : place.feet.back();
  for (int row = place.head + 1; row <= last; ++row) {
    for (const auto& at : place.sheet->row(row)) {
      const SheetCell& cell = at.second;
      if (cell.formula.empty()) continue;
      CHECK_MESSAGE(near(worked_out(cell.formula, *place.sheet), number_of(number_in_sheet(cell.value))),
                    where << ": =" << cell.formula << " is stored as " << cell.value);
    }
  }
}

void check_sums(const std::string& where, const Place& place, const Table& table) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const bool adds = table.columns[i].total == TotalKind::sum || is_part_of_whole(table, table.columns[i]);
    if (!adds || place.of[i] < 0 || place.feet.empty()) continue;
    const SheetCell& total = place.sheet->at(place.feet.front(), place.of[i]);
    if (total.value.empty()) continue;
    Cells meant;
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      if (!table.rows[r].struck) meant.insert({place.rows[r], place.of[i]});
    }
    REQUIRE_MESSAGE(!total.formula.empty(),
                    where << ": the total of " << table.columns[i].name << " is no formula");
    CHECK_MESSAGE(named_cells(total) == meant, where << ": rows of =" << total.formula);
  }
}

/// Sums across stand beside each line, sums down in the foot of what is counted and under every column of sums.
void check_grid_sums(const std::string& where, const Place& place) {
  const std::size_t figures = place.feet.size();
  const std::size_t sums = place.across.size() - figures;
  std::size_t keys = 1;
  const auto at = [&](int row, std::size_t column) -> const SheetCell& {
    return place.sheet->at(row, place.across[column]);
  };
  while (keys < sums && at(place.feet.front(), keys).value.empty()) ++keys;
  const auto check = [&](const SheetCell& cell, const Cells& meant) {
    if (cell.value.empty()) return;
    REQUIRE_MESSAGE(!cell.formula.empty(), where << ": the sum " << cell.value << " is no formula");
    Cells named = named_cells(cell);
    // the blank rest of a cell that lies over several columns is named by a sum across, and adds nothing
    std::erase_if(named, [&](const auto& one) {
      return !meant.contains(one) && place.sheet->at(one.first, one.second).value.empty();
    });
    CHECK_MESSAGE(named == meant, where << ": cells of =" << cell.formula);
  };
  const auto down = [&](std::size_t column) {
    Cells cells;
    for (const int row : place.rows) cells.insert({row, place.across[column]});
    return cells;
  };
  for (const int row : place.rows) {
    Cells cells;
    for (std::size_t i = keys; i < sums; ++i) cells.insert({row, place.across[i]});
    check(at(row, sums), cells);
  }
  for (std::size_t i = keys; i < sums; ++i) check(at(place.feet.front(), i), down(i));
  for (std::size_t f = 0; f < figures; ++f) check(at(place.feet[f], sums + f), down(sums + f));
}

// ---- ratios ------------------------------------------------------------------------------------------------------

/// A ratio of a workbook against the figures it is made of, which are exact there.
void check_ratio(const std::string& where, const Table& table, std::size_t column, const std::string& held,
                 const std::string& over, const std::string& under) {
  const Column& ratio = table.columns[column];
  const bool known = !over.empty() && !under.empty() && !number_of(under).is_zero();
  CHECK_MESSAGE(held.empty() != known, where << ": " << ratio.name << " is known as far as its sides are");
  if (!known || held.empty()) return;
  const double top = drawn(number_of(over));
  const double bottom = drawn(number_of(under));
  const double meant = ratio.ratio->percent_over ? 100 * (top - bottom) / bottom
                                                 : static_cast<double>(ratio.ratio->scale) * top / bottom;
  CHECK_MESSAGE(std::abs(drawn(number_of(held)) - meant) <= 1e-8 * std::max(1.0, std::abs(meant)),
                where << ": " << ratio.name << " holds " << held << " of " << over << " and " << under);
}

void check_ratios(const std::string& where, const Place& place, const Table& table) {
  const auto cell = [&](int row, std::size_t column) {
    const std::string& value = place.sheet->at(row, place.of[column]).value;
    return value.empty() ? value : number_in_sheet(value);
  };
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const Column& column = table.columns[i];
    if (!column.ratio || column.hidden) continue;
    const auto& [over, under, scale, percent_over] = *column.ratio;
    REQUIRE_MESSAGE((place.of[over] >= 0 && place.of[under] >= 0), where << ": the sides of " << column.name);
    for (const int row : place.rows)
      check_ratio(where, table, i, cell(row, i), cell(row, over), cell(row, under));
    if (column.total != TotalKind::ratio || place.feet.empty()) continue;
    const int foot = place.feet.front();
    const bool whole = is_part_of_whole(table, column);  // it is not added up; the total is over it
    std::string bottom = whole ? "" : cell(foot, under);
    for (std::size_t r = 0; whole && r < place.rows.size(); ++r) {
      if (!table.rows[r].struck && bottom.empty()) bottom = cell(place.rows[r], under);
    }
    check_ratio(where + ", total", table, i, cell(foot, i), cell(foot, over), bottom);
    const SheetCell& total = place.sheet->at(foot, place.of[i]);
    CHECK_MESSAGE((whole || total.value.empty() || !total.formula.empty()),
                  where << ": the total of " << column.name << " is no formula");
  }
}

void check_sheet(const std::string& where, const Place& place, const Table& table) {
  if (place.head < 0) return;
  check_values(where, place);
  if (table.grid) return check_grid_sums(where, place);
  check_sums(where, place, table);
  check_ratios(where, place, table);
}

/// As a terminal of 80 and of 110 columns shows it.
void check_screens(const Document& document, const std::string& what) {
  for (const int width : {80, 110}) {
    Document narrow = document;
    narrow.style.width = width;
    const auto text = from_text(render_text(narrow), narrow);
    for (std::size_t i = 0; i < document.tables.size(); ++i) {
      const Table& table = document.tables[i];
      check_narrow(what + "." + table.name + " in " + std::to_string(width) + " columns", text[i],
                   printed_of(table));
    }
  }
}

void check_document(const Document& document, const std::string& what) {
  const auto csv = from_csv(render_csv(document), document);
  const auto json = from_json(render_json(document), document);
  const auto text = from_text(render_text(document), document);
  const auto html = from_html(render_html(document), document);
  const auto sheets = read_workbook(render_xlsx(document));
  const auto places = places_in(sheets, document);
  for (std::size_t i = 0; i < document.tables.size(); ++i) {
    const Table& table = document.tables[i];
    const auto where = [&](const char* form) { return what + "." + table.name + " as " + form; };
    check_same(where("json"), json[i], figures_of(table));
    Figures without_totals = json[i];
    without_totals.feet.clear();
    check_same(where("csv"), csv[i], without_totals);
    check_fine(where("csv"), csv[i], json[i].totals(), table);
    check_fine(where("json"), json[i], json[i].totals(), table);
    const Figures printed = printed_of(table);
    const Figures xlsx = from_sheet(places[i], table, document.style);
    for (const auto& [form, made] : {std::pair("text", &text[i]), {"html", &html[i]}, {"xlsx", &xlsx}}) {
      check_same(where(form), *made, printed);
      if (table.grid) {
        check_grid_footed(where(form), *made, table, document.style);
      } else {
        check_footed(where(form), *made, made->totals(), table, document.style);
      }
    }
    check_sheet(where("xlsx"), places[i], table);
  }
  check_screens(document, what);
}

}  // namespace

void check_forms(const Document& document, const std::string& what) {
  try {
    check_document(document, what);
  } catch (const std::runtime_error& fault) {
    FAIL_CHECK(what << ": " << std::string(fault.what()));
  }
}

}  // namespace kerfbook::render
