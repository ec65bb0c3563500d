// demo.h -- books to report on: the demo week as it is posted, and one with nothing in it.
#pragma once

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "billing/project_paper.h"
#include "billing/unbilled.h"
#include "book/book.h"
#include "report/report.h"

namespace kerfbook::report {

inline std::string file_text(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
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

/// The five sheets as first posted, and Thursday's correction.
inline book::Book demo_week() {
  const std::filesystem::path data = std::string(KERFBOOK_ROOT) + "/demo_data";
  auto book = book::Book::create(fresh_file("demo.book"), on_friday());
  book.post_mill(file_text(data / "hargan.toml"), "");
  std::vector<std::filesystem::path> sheets;
  for (const auto& entry : std::filesystem::directory_iterator(data)) {
    if (entry.path().extension() == ".sheet") sheets.push_back(entry.path());
  }
  std::sort(sheets.begin(), sheets.end());
  for (const auto& sheet : sheets) book.post_sheet(file_text(sheet), "");
  book.post_sheet(file_text(data / "corrections" / "2026-05-07.sheet"), "bundle count: 23, not 32");
  billing::register_unbilled(book, kToday);
  return book;
}

}  // namespace kerfbook::report
