// xlsx.cpp -- a Document as a workbook: a worksheet a table for a report, one running sheet for a paper with further
// sheets where a table begins a page of its own.
#include "render/xlsx.h"

#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/text.h"
#include "render/cell.h"
#include "render/grid.h"
#include "render/renderer.h"
#include "render/xlsx_book.h"

namespace kerfbook::render {
namespace {

namespace fs = std::filesystem;

constexpr double kTitleLines = 1.4;                  ///< height of the title's row
constexpr std::size_t kConstantMemoryFrom = 20'000;  ///< rows
constexpr std::size_t kRowsOfPage = 46;              ///< of a printed page, upright

/// A file of its own in the folder for temporary files, gone again at the end.
class TemporaryFile {
 public:
  TemporaryFile() {
    std::string pattern = (fs::temp_directory_path() / "kerfbook-XXXXXX").string();
    const int handle = ::mkstemp(pattern.data());
    if (handle < 0) throw std::runtime_error("no file can be made in " + fs::temp_directory_path().string());
    ::close(handle);
    path_ = pattern;
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  ~TemporaryFile() {
    std::error_code ignored;
    fs::remove(path_, ignored);
  }
  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] std::string bytes() const {
    std::string all(fs::file_size(path_), '\0');
    std::ifstream stream(path_, std::ios::binary);
    if (!stream.read(all.data(), static_cast<std::streamsize>(all.size()))) {
      throw std::runtime_error(path_.string() + " cannot be read back");
    }
    return all;
  }

 private:
  fs::path path_;
};

void write_parties(Cursor& cursor, const Document& document) {
  for (const Party& party : document.parties) {
    if (!party.heading.empty()) {
      cursor.put_free(0, party.heading, {.wrap = true, .quiet = true});
      ++cursor.row;
    }
    for (const auto& line : party.lines) {
      cursor.put_free(0, line, {.wrap = false});
      ++cursor.row;
    }
    ++cursor.row;
  }
  for (const HeadFact& fact : document.head) {
    Column column;
    column.kind = fact.kind;
    if (const auto* decimal = std::get_if<Decimal>(&fact.value)) column.places = decimal->places;
    cursor.put_text(0, fact.label, {.bold = true});
    cursor.put_free(1, shown_cell(fact.value, column, document.style), {});
    ++cursor.row;
  }
  if (!document.head.empty()) ++cursor.row;
}

/// The mill's own sign at the head of a paper. A missing or strange file is left out.
void write_logo(Cursor& cursor, const Document& document) {
  constexpr double kHeight = 56;  // pixels, at most
  constexpr SheetRow kRows = 3;
  std::error_code error;
  if (document.logo.empty() || !fs::is_regular_file(document.logo, error)) return;
  if (worksheet_insert_image(cursor.raw(), cursor.row, 0, document.logo.c_str()) != LXW_NO_ERROR) return;
  lxw_object_properties* const image = STAILQ_FIRST(cursor.raw()->image_props);
  image->x_scale = image->y_scale = std::min(1.0, kHeight / image->height);
  cursor.row += kRows;
}

void write_title(Cursor& cursor, const Document& document, const Table* table) {
  cursor.put_free(0, document.title, {.bold = true, .wrap = false, .points = 14});
  cursor.set_height(kTitleLines);
  ++cursor.row;
  if (!document.subtitle.empty()) {
    cursor.put_free(0, document.subtitle, {});
    ++cursor.row;
  }
  if (table != nullptr && !table->title.empty()) {
    cursor.put_free(0, table->title, {.bold = true});
    ++cursor.row;
  }
  ++cursor.row;
}

void write_sums(Cursor& cursor, const Table& table) {
  if (table.sums.empty()) return;
  const Style& style = cursor.book().document().style;
  const auto columns = shown_columns(table).size();
  const auto value = static_cast<SheetColumn>(columns - 1);
  const auto label = static_cast<SheetColumn>(columns > 1 ? columns - 2 : 0);
  ++cursor.row;
  for (const SumLine& line : table.sums) {
    Column money;
    money.kind = ColumnKind::money;
    money.places = style.currency.places;
    cursor.put_text(label, line.label, {.bold = line.strong, .right = true});
    cursor.put(value, line.value,
               {.number = number_format(money, style), .bold = line.strong, .right = true});
    ++cursor.row;
  }
}

struct Drawn {
  SheetRow head = 0;
  SheetRow last = 0;  ///< last row of figures
};

Drawn write_body(Cursor& cursor, const Table& table) {
  Drawn drawn;
  drawn.head = table.grid ? write_grid(cursor, table) : write_table(cursor, table);
  drawn.last = drawn.head + static_cast<SheetRow>(table.rows.size());
  write_sums(cursor, table);
  if (!table.notes.empty() || has_struck(table)) ++cursor.row;
  if (has_struck(table)) cursor.put_words(kStruckNote, {.quiet = true});
  for (const auto& note : table.notes) cursor.put_words(note, {.quiet = true});
  return drawn;
}

void write_foot(Cursor& cursor, const Document& document) {
  ++cursor.row;
  if (!document.meaning.empty()) cursor.put_words(document.meaning, {.quiet = true});
  for (const auto& foot : document.foot) cursor.put_words(foot, {.quiet = true});
  for (const auto& who : document.signatures) {
    cursor.row += 2;
    cursor.put_free(0, who + " ______________________________   Date ______________", {});
    ++cursor.row;
  }
}

/// Columns the widest of the tables takes that share the worksheet of table `at`.
int widest(const std::vector<Table>& tables, std::size_t at) {
  std::size_t most = 0;
  do {
    const Table& table = tables[at];
    if (table.grid) {
      const GridLayout grid = lay_out(table);
      most = std::max(most, grid.key_columns.size() + grid.heads.size() + grid.figures.size());
    } else {
      most = std::max(most, shown_columns(table).size());
    }
  } while (++at < tables.size() && tables[at].follows);
  return static_cast<int>(most);
}

void write_report(Workbook& book, const Document& document) {
  const auto& tables = document.tables;
  for (std::size_t i = 0; i < tables.size();) {
    const Table& table = tables[i];
    const bool alone = i + 1 == tables.size() || !tables[i + 1].follows;
    const bool whole =
        std::all_of(tables.begin() + 1, tables.end(), [](const Table& t) { return t.follows; });
    Cursor cursor(book, table.title.empty() || (whole && !alone) ? document.title : table.title);
    if (!alone) cursor.keep_hidden_from(widest(tables, i));
    write_title(cursor, document, &table);
    const Drawn drawn = write_body(cursor, table);
    for (++i; i < tables.size() && tables[i].follows; ++i) {
      ++cursor.row;
      cursor.put_free(0, tables[i].title, {.bold = true});
      ++cursor.row;
      write_body(cursor, tables[i]);
    }
    write_foot(cursor, document);
    write_chart(cursor, table, drawn.head, drawn.last);
    if (!table.rows.empty()) worksheet_freeze_panes(cursor.raw(), drawn.head + 1, 0);
    cursor.finish(alone ? static_cast<int>(drawn.head) : -1);
  }
}

/// The printed height of a table's rows, in lines; rows to be filled in by hand are half as high again.
std::size_t lines_of(const Table& table) {
  const std::size_t rows = table.grid ? lay_out(table).keys.size() : table.rows.size();
  return table.ruled ? rows + rows / 2 : rows;
}

/// A paper of nothing but tables to fill in is one page to carry, set as small as that needs.
bool fills_one_page(const Document& document) {
  return !document.tables.empty() &&
         std::all_of(document.tables.begin(), document.tables.end(),
                     [](const Table& table) { return table.ruled && !table.new_page; });
}

/// The tables from `next` on, one under the other, as far as they share a sheet. The heading row to repeat on further
/// pages; -1 when several tables share it, for then one's heading would stand over another.
int write_tables(Cursor& cursor, const Document& document, std::size_t& next, bool begun) {
  const bool one_page = fills_one_page(document);
  int head = -1;
  std::size_t taller = 0;  // lines by which rows to be filled in are higher than others
  for (const std::size_t from = next; next < document.tables.size(); ++next, begun = true) {
    const Table& table = document.tables[next];
    const std::size_t lines = lines_of(table);
    // A table is kept whole: one that has no more room on the page begins a sheet of its own.
    const bool full = !one_page && next > from && cursor.row + taller + lines > kRowsOfPage;
    if (begun && (full || table.new_page)) break;
    taller += lines - std::min(lines, table.rows.size());
    if (!table.title.empty()) {
      cursor.put_free(0, table.title, {.bold = true});
      ++cursor.row;
    }
    const Drawn drawn = write_body(cursor, table);
    head = begun ? -1 : static_cast<int>(drawn.head);
    ++cursor.row;
  }
  return head;
}

/// A paper: tables one under the other, as it is printed, on further sheets where a page is full.
void write_paper(Workbook& book, const Document& document) {
  std::size_t next = 0;
  Cursor front(book, document.title);
  write_logo(front, document);
  write_title(front, document, nullptr);
  write_parties(front, document);
  for (const auto& words : document.lead) front.put_words(words, {});
  write_tables(front, document, next, true);
  write_foot(front, document);
  front.finish(-1, fills_one_page(document));
  while (next < document.tables.size()) {
    const std::string& title = document.tables[next].title;
    Cursor cursor(book, title.empty() ? document.title : title);
    write_title(cursor, document, nullptr);
    cursor.finish(write_tables(cursor, document, next, false));
  }
}

bool is_paper(const Document& document) {
  return !document.parties.empty() || !document.head.empty() || !document.signatures.empty();
}

std::size_t most_rows(const Document& document) {
  std::size_t most = 0;
  for (const auto& table : document.tables) most = std::max(most, table.rows.size());
  return most;
}

void write(const Document& document, std::string& bytes) {
  const TemporaryFile file;
  std::string fault;
  {
    Workbook book(file.path(), document, most_rows(document) >= kConstantMemoryFrom);
    if (is_paper(document)) {
      write_paper(book, document);
    } else if (document.tables.empty()) {
      Cursor cursor(book, document.title);
      write_title(cursor, document, nullptr);
      write_foot(cursor, document);
      cursor.finish(-1);
    } else {
      write_report(book, document);
    }
    fault = book.close();
  }
  if (!fault.empty()) throw std::runtime_error(fault);
  bytes = file.bytes();
}

}  // namespace
}  // namespace kerfbook::render

extern "C" __attribute__((visibility("default"))) bool kerfbook_write_workbook(
    const kerfbook::render::Document& document, std::string& bytes, std::string& fault) {
  try {
    kerfbook::render::write(document, bytes);
    return true;
  } catch (const std::exception& error) {
    fault = error.what();
    return false;
  }
}
