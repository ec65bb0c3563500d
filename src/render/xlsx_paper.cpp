// xlsx_paper.cpp -- a paper on worksheets that print as it should be handed over: the mill at the left, title and number
// at the right, tables one under the other, sums under the amounts, lines to sign.
#include "render/xlsx_paper.h"

#include <algorithm>
#include <optional>

#include "base/text.h"
#include "render/cell.h"
#include "render/image.h"
#include "render/renderer.h"
#include "render/xlsx_plan.h"
#include "render/xlsx_text.h"

namespace kerfbook::render {

namespace {

constexpr int kWidth = 94;       ///< characters of an upright page at full size
constexpr int kLeastWidth = 84;  ///< the head of a paper needs some room, however narrow its tables
constexpr double kShrink = 1.2;  ///< what overshoots a page by no more is set smaller, and stays whole
constexpr double kLetterLines = 46;
constexpr double kA4Lines = 49;
constexpr int kLogoRows = 3;
constexpr double kLogoHeight = 56;  ///< pixels, at most
constexpr double kLogoWidth = 300;

/// What of a paper stands on one worksheet, and how its columns are shared out.
struct Sheet {
  std::size_t first = 0;  ///< tables
  std::size_t end = 0;
  bool front = false;
  Plan plan{true};
  int middle = 0;  ///< where the right half of the head begins, and its values
  int values = 0;
  double lines = 0;

  [[nodiscard]] Place left_half() const { return plan.between(0, middle); }
  [[nodiscard]] Place right_half() const { return plan.between(middle, plan.width()); }
};

struct HeadLine {
  std::string text;
  Look look;
};

/// The mill and whom the paper is for, one under the other. The sender has no heading, and stands out.
std::vector<HeadLine> party_lines(const Document& document) {
  std::vector<HeadLine> lines;
  for (const Party& party : document.parties) {
    if (!lines.empty()) lines.push_back({});
    if (!party.heading.empty()) lines.push_back({party.heading, {.quiet = true}});
    bool first = party.heading.empty();
    for (const std::string& line : party.lines) {
      lines.push_back({line, first ? Look{.bold = true, .points = 12} : Look{}});
      first = false;
    }
  }
  return lines;
}

int label_width(const Document& document) {
  int width = 6;
  for (const HeadFact& fact : document.head) width = std::max(width, printed_width(fact.label));
  return std::min(width, kWidth / 4) + 2;
}

double head_lines(const Document& document) {
  const double left =
      static_cast<double>(party_lines(document).size()) + (document.logo.empty() ? 0 : kLogoRows);
  return std::max(left, static_cast<double>(document.head.size()) + 1.4) + 2;
}

double foot_lines(const Document& document, int width) {
  double lines = document.foot.empty() ? 0 : 1;
  for (const std::string& words : document.foot) lines += lines_in(words, width * 6 / 5);
  const std::size_t pairs = (document.signatures.size() + 1) / 2;
  return lines + 3 * static_cast<double>(pairs);
}

/// The tables from `first` to `end` as they would share a sheet.
Sheet laid_out(const Document& document, std::size_t first, std::size_t end, bool front) {
  Sheet sheet;
  sheet.first = first;
  sheet.end = end;
  sheet.front = front;
  const auto& tables = document.tables;
  for (std::size_t i = first; i < end; ++i) sheet.plan.add(needed_widths(tables[i], document.style, kWidth));
  sheet.plan.reach(kLeastWidth);
  const int width = sheet.plan.width();
  sheet.middle = sheet.plan.edge_near(width * 9 / 20, width / 8);
  sheet.values = sheet.plan.edge_after(sheet.middle + label_width(document), 5);
  sheet.plan.reach(sheet.values + kWidth / 4);
  sheet.lines = front ? head_lines(document) + foot_lines(document, width) : 2.4;
  if (front)
    for (const std::string& words : document.lead) sheet.lines += lines_in(words, width) + 1;
  for (std::size_t i = first; i < end; ++i)
    sheet.lines += needed_lines(tables[i], document.style, sheet.plan.places(i - first), sheet.plan.width());
  return sheet;
}

/// Lines of a page when the sheet is made to fit its width.
double page_lines(const Document& document, const Sheet& sheet) {
  const double lines = document.style.paper == PaperSize::a4 ? kA4Lines : kLetterLines;
  return lines * std::max(1.0, static_cast<double>(sheet.plan.width()) / kWidth);
}

/// How many pages high it is at the size that fits the width.
double pages_of(const Document& document, const Sheet& sheet) {
  return sheet.lines / page_lines(document, sheet);
}

/// Whether it is one page, set a little smaller when it overshoots by little, but never too small to be read.
bool fits_page(const Document& document, const Sheet& sheet) {
  const double across = std::max(1.0, static_cast<double>(sheet.plan.width()) / kWidth);
  return pages_of(document, sheet) * across <= kShrink || pages_of(document, sheet) <= 1;
}

bool must_be_one_page(const Document& document) {
  return !document.tables.empty() &&
         std::all_of(document.tables.begin(), document.tables.end(),
                     [](const Table& table) { return table.ruled && !table.new_page; });
}

/// As many tables as a page holds, each kept whole; a table that begins a page of its own begins a sheet.
Sheet next_sheet(const Document& document, std::size_t first, bool front) {
  const auto& tables = document.tables;
  Sheet sheet = laid_out(document, first, std::min(first + 1, tables.size()), front);
  while (sheet.end < tables.size() && !tables[sheet.end].new_page) {
    Sheet more = laid_out(document, first, sheet.end + 1, front);
    if (!must_be_one_page(document) && !fits_page(document, more)) break;
    sheet = std::move(more);
  }
  return sheet;
}

/// The mill's own sign. A missing or strange file is left out.
void write_logo(Cursor& cursor, const Document& document) {
  if (read_image(document.logo).kind.empty()) return;
  if (worksheet_insert_image(cursor.raw(), cursor.row, 0, document.logo.c_str()) != LXW_NO_ERROR) return;
  lxw_object_properties* const image = STAILQ_FIRST(cursor.raw()->image_props);
  if (image->height > 0 && image->width > 0)
    image->x_scale = image->y_scale = std::min({1.0, kLogoHeight / image->height, kLogoWidth / image->width});
}

void write_facts(Cursor& cursor, const Document& document, const Sheet& sheet, std::size_t which) {
  if (which >= document.head.size()) return;
  const HeadFact& fact = document.head[which];
  Column column;
  column.kind = fact.kind;
  const std::string value = shown_cell(fact.value, column, document.style);
  cursor.put_at(sheet.plan.between(sheet.middle, sheet.values), fact.label, {});
  cursor.put_at(sheet.plan.between(sheet.values, sheet.plan.width()), value, {.line_below = value.empty()});
}

void write_head(Cursor& cursor, const Document& document, const Sheet& sheet) {
  std::vector<HeadLine> left = party_lines(document);
  if (!read_image(document.logo).kind.empty()) {
    write_logo(cursor, document);
    left.insert(left.begin(), kLogoRows, {});
  }
  const std::size_t rows = std::max(left.size(), document.head.size() + 1);
  for (std::size_t i = 0; i < rows; ++i, ++cursor.row) {
    if (i < left.size() && !left[i].text.empty())
      cursor.put_at(sheet.left_half(), left[i].text, left[i].look);
    if (i == 0) cursor.put_at(sheet.right_half(), document.title, {.bold = true, .points = 14});
    if (i > 0) write_facts(cursor, document, sheet, i - 1);
  }
  ++cursor.row;
  for (const std::string& words : document.lead) {
    cursor.put_at(sheet.plan.across(), words, {});
    cursor.row += 2;
  }
}

/// The sums stand under the last column of the table, their labels to the left of it.
void write_sums(Cursor& cursor, const Table& table, const Sheet& sheet) {
  if (table.sums.empty()) return;
  const Style& style = cursor.book().document().style;
  const Place value = cursor.places().back();
  const int right = sheet.plan.width() - value.width;
  Column money;
  money.kind = ColumnKind::money;
  money.places = style.currency.places;
  ++cursor.row;
  for (const SumLine& line : table.sums) {
    const int left = std::min(sheet.middle, right);
    cursor.put_at(sheet.plan.between(left, right), line.label, {.bold = line.strong, .right = true});
    cursor.put_at(value, line.value,
                  {.number = number_format(money, style), .bold = line.strong, .right = true});
    ++cursor.row;
  }
}

SheetRow write_one(Cursor& cursor, const Table& table, const Sheet& sheet) {
  if (!table.title.empty()) {
    cursor.put_at(sheet.plan.across(), table.title, {.bold = true});
    ++cursor.row;
  }
  const SheetRow head = table.grid ? write_grid(cursor, table) : write_table(cursor, table);
  write_sums(cursor, table, sheet);
  if (!table.notes.empty() || has_struck(table)) ++cursor.row;
  if (has_struck(table)) cursor.put_words(kStruckNote, {.quiet = true});
  for (const std::string& note : table.notes) cursor.put_words(note, {.quiet = true});
  ++cursor.row;
  return head;
}

/// Two to a line: who signs stands under the line, and after it the day.
void write_signatures(Cursor& cursor, const Document& document, const Sheet& sheet) {
  const auto& who = document.signatures;
  for (std::size_t i = 0; i < who.size(); i += 2) {
    cursor.row += 2;
    cursor.put_at(sheet.left_half(), who[i] + ", date", {.ruled_above = true, .quiet = true});
    if (i + 1 < who.size())
      cursor.put_at(sheet.plan.between(sheet.values, sheet.plan.width()), who[i + 1] + ", date",
                    {.ruled_above = true, .quiet = true});
    ++cursor.row;
  }
}

void write_sheet(Workbook& book, const Document& document, const Sheet& sheet) {
  const Table* first = sheet.first < document.tables.size() ? &document.tables[sheet.first] : nullptr;
  const bool named = !sheet.front && first != nullptr && !first->title.empty();
  Cursor cursor(book, named ? first->title : document.title, sheet.plan);
  if (sheet.front) {
    write_head(cursor, document, sheet);
  } else {
    cursor.put_at(sheet.plan.across(), document.title, {.bold = true, .points = 14});
    cursor.row += 2;
  }
  int head = -1;
  for (std::size_t i = sheet.first; i < sheet.end; ++i) {
    cursor.take_table(i - sheet.first);
    head = static_cast<int>(write_one(cursor, document.tables[i], sheet));
  }
  if (sheet.front) {
    for (const std::string& words : document.foot) cursor.put_words(words, {.quiet = true});
    write_signatures(cursor, document, sheet);
  }
  // A heading is repeated on further pages only where it can stand over no other table's figures.
  const bool alone = sheet.end == sheet.first + 1;
  const bool shrunk = fits_page(document, sheet) && pages_of(document, sheet) > 1;
  cursor.finish(alone && !shrunk ? head : -1, shrunk || must_be_one_page(document));
}

}  // namespace

bool is_paper(const Document& document) {
  return !document.parties.empty() || !document.head.empty() || !document.signatures.empty();
}

void write_paper(Workbook& book, const Document& document) {
  bool front = true;
  std::size_t next = 0;
  while (front || next < document.tables.size()) {
    const Sheet sheet = next_sheet(document, next, front);
    write_sheet(book, document, sheet);
    next = sheet.end;
    front = false;
  }
}

}  // namespace kerfbook::render
