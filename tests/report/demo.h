// demo.h -- books to report on: the demo week as it is posted, one with nothing in it, and two that try every form:
// odd days (thirds, lineal feet, two rules, logs without scale, words full of marks, a year's end), and metric days.
#pragma once

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "book/book.h"
#include "office/unbilled.h"
#include "paper/project_paper.h"
#include "report/report.h"
#include "slurp.h"

namespace kerfbook::report {

inline std::string file_text(const std::filesystem::path& file) {
  return tests::slurp(file);
}

inline std::filesystem::path fresh_file(const std::string& name) {
  const auto folder =
      std::filesystem::temp_directory_path() / ("kerfbook-report-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const auto file = folder / name;
  std::filesystem::remove(file);
  return file;
}

inline const Day kToday = make_day(2026, 5, 8);

inline book::OpenOptions on_friday() {
  book::OpenOptions options;
  options.now = [] { return std::string("2026-05-08 20:00:00"); };
  options.papers = billing::project_paper;
  return options;
}

inline book::Book empty_book() {
  auto book = book::Book::create(fresh_file("empty.book"), on_friday());
  billing::register_unbilled(book);
  return book;
}

inline std::vector<std::filesystem::path> sheets_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> sheets;
  if (!std::filesystem::exists(folder)) return sheets;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".sheet") sheets.push_back(entry.path());
  }
  std::sort(sheets.begin(), sheets.end());
  return sheets;
}

/// The sheets of a folder as first posted, and its corrections.
inline book::Book book_of(const std::string& folder, const std::string& mill, const std::string& why) {
  const std::filesystem::path data = std::string(KERFBOOK_ROOT) + "/" + folder;
  auto book = book::Book::create(fresh_file(data.filename().string() + ".book"), on_friday());
  book.post_mill(file_text(data / mill), "");
  for (const auto& sheet : sheets_in(data)) book.post_sheet(file_text(sheet), "");
  for (const auto& sheet : sheets_in(data / "corrections")) book.post_sheet(file_text(sheet), why);
  billing::register_unbilled(book, kToday);
  return book;
}

inline book::Book demo_week() {
  return book_of("demo_data", "hargan.toml", "bundle count: 23, not 32");
}

/// Every fault of a report's text, header and SQL, as `line: what`.
inline std::vector<std::string> faults(const std::string& text) {
  const auto book = empty_book();
  std::vector<std::string> out;
  for (const auto& one : check_report(read_report(text, "mine.sql"), book)) {
    out.push_back(std::to_string(one.place.line) + ": " + one.what +
                  (one.instead.empty() ? "" : "; " + one.instead));
  }
  return out;
}

inline book::Book odd_days() {
  return book_of("tests/report/odd_days", "mill.toml", "=typed \"wrong\" & <twice>");
}

inline book::Book metric_days() {
  return book_of("tests/report/metric_days", "mill.toml", "");
}

}  // namespace kerfbook::report
