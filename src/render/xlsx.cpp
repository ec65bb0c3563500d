// xlsx.cpp -- a Document as a workbook: of a report a worksheet a table; a paper is xlsx_paper.cpp's.
#include "render/xlsx.h"

#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/text.h"
#include "build_mark.h"
#include "render/cell.h"
#include "render/xlsx_book.h"
#include "render/xlsx_paper.h"
#include "render/xlsx_plan.h"

namespace kerfbook::render {
namespace {

namespace fs = std::filesystem;

constexpr double kTitleLines = 1.4;                  ///< height of the title's row
constexpr std::size_t kConstantMemoryFrom = 20'000;  ///< rows

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

void write_title(Cursor& cursor, const Document& document, const Table* table) {
  cursor.put_free(0, document.title, {.bold = true, .wrap = false, .points = 14});
  cursor.set_height(kTitleLines);
  ++cursor.row;
  if (!document.subtitle.empty()) {
    constexpr std::size_t kOneLine = 90;
    if (document.subtitle.size() > kOneLine) {
      cursor.put_words(document.subtitle, {});
    } else {
      cursor.put_free(0, document.subtitle, {});
      ++cursor.row;
    }
  }
  if (table == nullptr || table == &document.tables.front()) {
    for (const auto& words : document.lead) cursor.put_words(words, {.bold = true});
  }
  if (table != nullptr && !table->title.empty()) {
    cursor.put_free(0, table->title, {.bold = true});
    ++cursor.row;
  }
  ++cursor.row;
}

struct Drawn {
  SheetRow head = 0;
  SheetRow last = 0;  ///< last row of figures
};

Drawn write_body(Cursor& cursor, const Table& table) {
  Drawn drawn;
  drawn.head = table.grid ? write_grid(cursor, table) : write_table(cursor, table);
  drawn.last = drawn.head + static_cast<SheetRow>(table.rows.size());
  if (!table.notes.empty() || has_struck(table)) ++cursor.row;
  if (has_struck(table)) cursor.put_words(kStruckNote, {.quiet = true});
  for (const auto& note : table.notes) cursor.put_words(note, {.quiet = true});
  return drawn;
}

void write_foot(Cursor& cursor, const Document& document) {
  ++cursor.row;
  if (!document.meaning.empty()) cursor.put_words(document.meaning, {.quiet = true});
  for (const auto& foot : document.foot) cursor.put_words(foot, {.quiet = true});
}

/// The tables from `first` on that stand on one worksheet.
std::size_t end_of_sheet(const std::vector<Table>& tables, std::size_t first) {
  std::size_t end = first + 1;
  while (end < tables.size() && tables[end].follows) ++end;
  return end;
}

void write_together(Cursor& cursor, const Document& document, std::size_t first, std::size_t end) {
  const Table& table = document.tables[first];
  const bool alone = end == first + 1;
  write_title(cursor, document, &table);
  cursor.take_table(0);
  const Drawn drawn = write_body(cursor, table);
  for (std::size_t i = first + 1; i < end; ++i) {
    ++cursor.row;
    cursor.put_free(0, document.tables[i].title, {.bold = true});
    ++cursor.row;
    cursor.take_table(i - first);
    write_body(cursor, document.tables[i]);
  }
  write_foot(cursor, document);
  write_chart(cursor, table, drawn.head, drawn.last);
  if (!table.rows.empty()) worksheet_freeze_panes(cursor.raw(), drawn.head + 1, 0);
  cursor.finish(alone ? static_cast<int>(drawn.head) : -1);
}

void write_report(Workbook& book, const Document& document) {
  constexpr int kMost = 200;  // characters: a report may be printed sideways
  const auto& tables = document.tables;
  for (std::size_t i = 0; i < tables.size();) {
    const std::size_t end = end_of_sheet(tables, i);
    const bool whole = i == 0 && end == tables.size() && end > 1;  // the report is this one sheet
    const std::string& title = tables[i].title.empty() || whole ? document.title : tables[i].title;
    if (end == i + 1 || book.raw()->options.constant_memory) {
      Cursor cursor(book, title);
      write_together(cursor, document, i, end);
    } else {
      Plan plan(false);
      for (std::size_t k = i; k < end; ++k) plan.add(needed_widths(tables[k], document.style, kMost));
      plan.reach(60);
      Cursor cursor(book, title, plan);
      write_together(cursor, document, i, end);
    }
    i = end;
  }
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
    const bool paper = is_paper(document);
    Workbook book(file.path(), document, !paper && most_rows(document) >= kConstantMemoryFrom);
    if (paper) {
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

extern "C" __attribute__((visibility("default"))) const char kerfbook_workbook_build[] = KERFBOOK_BUILD_MARK;

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
