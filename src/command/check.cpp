// check.cpp -- `kerfbook check SHEET...`: everything that is wrong or odd, and nothing posted.
#include <algorithm>
#include <filesystem>
#include <ostream>

#include "base/count.h"
#include "base/error.h"
#include "base/text.h"
#include "book/under.h"
#include "command/commands.h"
#include "command/sheet_files.h"
#include "office/unbilled.h"
#include "render/text_table.h"
#include "report/report.h"
#include "sheet/read.h"

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

bool several(const std::vector<book::Under>& all, std::string book::Under::*word) {
  return std::any_of(all.begin(), all.end(),
                     [&](const book::Under& one) { return !same_word(one.*word, all.front().*word); });
}

/// What stands under each job and place, where a sheet has two of either: the order of its lines decides it.
std::string under_jobs(const book::Document& document, const std::optional<book::Book>& open,
                       const Session& session) {
  sheet::ReadOptions options;
  if (open) {
    options.metric = open->mill().units == measure::System::metric;
    options.money_places = open->mill().currency.places;
  }
  const auto system = options.metric ? measure::System::metric : measure::System::inch;
  const auto all = book::put_under(sheet::read(document.text, options).sheet, system);
  if (!several(all, &book::Under::job) && !several(all, &book::Under::site)) return "";
  render::TextTable table;
  table.columns = {{"Job", "", false, true},
                   {"Site", "", false, true},
                   {"Lines", "", false, true},
                   {"Sawing", "h:mm", true},
                   {"Logs", "", true},
                   {"Pieces", "", true},
                   {"Lumber", options.metric ? "m³" : "bf", true},
                   {"Stops", "", true},
                   {"Moves", "", true},
                   {"Charges", "", true}};
  const auto count = [](std::int64_t many) { return many == 0 ? std::string("-") : grouped({many, 0}); };
  for (const book::Under& one : all) {
    const Decimal lumber = options.metric ? shown(measure::cubic_metres(one.lumber), 3)
                                          : shown(measure::board_feet(one.lumber), 2);
    table.lines.push_back(
        {{one.job.empty() ? "no job" : one.job, one.site.empty() ? "-" : one.site,
          book::line_ranges(one.lines), one.sawing_minutes == 0 ? "-" : write_duration(one.sawing_minutes),
          count(one.logs), count(one.pieces), one.lumber.count == 0 ? "-" : grouped(lumber), count(one.stops),
          count(one.moves), count(one.charges)},
         false});
  }
  const render::Style style = session.style(open ? open->mill() : book::Mill{});
  return "\n" + render::draw(table, style.width, style.colour);
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
      if (document.kind == book::EntryKind::sheet && !is_report(document.name))
        session.out() << under_jobs(document, open, session);
    }
  }
  if (bad > 0) {
    throw Refused(counted(bad, "file has errors", "files have errors"));
  }
}

}  // namespace

Form check_form() {
  auto files = std::make_shared<std::vector<std::string>>();
  return {.rows = Rows{{"SHEET...", files.get(),
                        "day sheets, mill files (.toml) or reports of your own (.sql); - is standard input"}},
          .footer =
              "Errors are what cannot be understood; warnings and notes do not stop a post.\n\n"
              "  kerfbook check 2026-05-05.sheet\n"
              "  kerfbook -b mill.book check 2026-05-05.sheet   # and against the book",
          .deed = [files](const Session& session) { check_all(*files, session); }};
}

}  // namespace kerfbook::command
