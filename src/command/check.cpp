// check.cpp -- `kerfbook check SHEET...`: everything that is wrong or odd, and nothing posted.
#include <CLI/CLI.hpp>
#include <filesystem>
#include <ostream>

#include "base/count.h"
#include "base/error.h"
#include "base/text.h"
#include "billing/unbilled.h"
#include "command/commands.h"
#include "command/documents.h"
#include "report/report.h"

namespace kerfbook::command {
namespace {

bool is_report(const std::string& name) {
  return lower(std::filesystem::path(name).extension().string()) == ".sql";
}

/// A report of one's own: its header, and with a book at hand its SELECTs too.
std::vector<Diagnostic> look_at_report(const book::Document& document,
                                       const std::optional<book::Book>& open) {
  const auto file = report::read_report(document.text, document.name);
  if (!file.faults.empty() || !open) return file.faults;
  billing::register_unbilled(*open);
  return report::check_report(file, *open);
}

/// With a book the sheet is held against what the book knows; without one, against the language alone.
std::vector<Diagnostic> look_at(const book::Document& document, const std::optional<book::Book>& open) {
  if (is_report(document.name)) return look_at_report(document, open);
  if (document.kind == book::EntryKind::mill) return look_at_mill(document.text);
  return open ? open->check_sheet(document.text) : book::check_without_book(document.text);
}

void check_all(const std::vector<std::string>& files, const Session& session) {
  std::optional<book::Book> open;
  if (session.names_book()) open.emplace(session.open_book(true));
  int bad = 0;
  for (const auto& document : read_documents(files, session)) {
    const auto found = look_at(document, open);
    session.err() << show_all(found, document.name, document.text);
    if (has_error(found)) {
      ++bad;
    } else {
      session.out() << document.name << ": " << (found.empty() ? "good" : "can be posted") << "\n";
    }
  }
  if (bad > 0) {
    throw Refused(counted(bad, "file has errors", "files have errors"));
  }
}

}  // namespace

void add_check(CLI::App& app, Session& session) {
  auto files = std::make_shared<std::vector<std::string>>();
  app.add_option("SHEET", *files,
                 "day sheets, mill files (.toml) or reports of your own (.sql); - is standard input")
      ->required();
  app.footer(
      "Errors are what cannot be understood; warnings and notes do not stop a post.\n\n"
      "  kerfbook check 2026-05-05.sheet\n"
      "  kerfbook -b mill.book check 2026-05-05.sheet   # also against what the book knows");
  app.callback([files, &session] { session.deed = [files, &session] { check_all(*files, session); }; });
}

}  // namespace kerfbook::command
