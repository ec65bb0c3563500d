// book_helpers.h -- a real book in a folder of its own, with the invented demo week in it.
#pragma once

#include <doctest/doctest.h>
#include <stdlib.h>

#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>

#include "office/office.h"
#include "paper/project_paper.h"
#include "render/renderer.h"
#include "slurp.h"

namespace kerfbook::billing {

inline const Day kFriday = *read_day("2026-05-08");

inline std::string read_file(const std::filesystem::path& path) {
  return tests::slurp(path);
}

inline std::string demo(const std::string& name) {
  return read_file(std::string(KERFBOOK_ROOT) + "/demo_data/" + name);
}

/// The demo's mill file with one thing in it changed.
inline std::string changed_mill(const std::string& from, const std::string& to) {
  std::string mill = demo("hargan.toml");
  const std::size_t at = mill.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, from);
  REQUIRE_MESSAGE(mill.find(from, at + 1) == std::string::npos, from << " stands there twice");
  return mill.replace(at, from.size(), to);
}

/// `week`: the five sheets as first posted. `clock` is the time of posting and may be set forward.
struct DemoBook {
  explicit DemoBook(const std::string& mill = demo("hargan.toml"), bool week = true,
                    const std::string& started = "2026-04-20 19:00:00")
      : clock(std::make_shared<std::string>(started)), folder(fresh_folder()) {
    book::OpenOptions options;
    options.now = [at = clock] { return *at; };
    options.papers = project_paper;
    options.check_money = check_money;
    book = std::make_unique<book::Book>(book::Book::create(
        folder / "demo.kerf", options, book::Document{"hargan.toml", mill, book::EntryKind::mill}));
    *clock = "2026-05-08 19:00:00";
    if (!week) return;
    for (const char* day : {"04", "05", "06", "07", "08"})
      book->post_sheet(demo(std::string("2026-05-") + day + ".sheet"), "");
  }
  ~DemoBook() {
    book.reset();
    std::filesystem::remove_all(folder);
  }
  DemoBook(const DemoBook&) = delete;
  DemoBook& operator=(const DemoBook&) = delete;

  static std::filesystem::path fresh_folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "kerfbook-billing-XXXXXX").string();
    return ::mkdtemp(pattern.data());
  }
  void correct() const { book->post_sheet(demo("corrections/2026-05-07.sheet"), "bundle count: 23, not 32"); }
  void whole() const {
    for (const auto& finding : book->verify()) FAIL_CHECK(finding.what);
  }
  [[nodiscard]] Draft draft(const std::string& job) const { return draft_job(*book, job, kFriday, kFriday); }

  std::shared_ptr<std::string> clock;
  std::filesystem::path folder;
  std::unique_ptr<book::Book> book;
};

inline std::string text_of(const render::Document& document) {
  return render::render_text(document);
}

inline Money money(const std::string& text) {
  return *measure::read_money(text, 2);
}

}  // namespace kerfbook::billing
