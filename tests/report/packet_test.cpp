// The week's set as one Document, and the list of views a report may read.
#include "report/packet.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "base/error.h"
#include "demo.h"
#include "render/outputs.h"
#include "render/renderer.h"
#include "report/views.h"

using namespace kerfbook;
using namespace kerfbook::report;

TEST_CASE("the packet is every report of the set, its tables under its own title and name") {
  const auto book = demo_week();
  Ask ask;
  ask.from = make_day(2026, 5, 4);
  ask.to = make_day(2026, 5, 10);
  const auto document = packet(all_reports(""), {"production", "upkeep", "downtime"}, book, ask, {}, kToday);
  REQUIRE(document.tables.size() == 6);
  CHECK(document.tables[0].name == "production.production");
  CHECK(document.tables[0].title == "Production by day");
  CHECK(document.tables[4].title == "Stops by cause");
  CHECK(document.tables[5].title == "Stops by cause: Every stop");
  CHECK(document.subtitle == "Q. Hargan, custom sawing; 2026-05-04 to 2026-05-10");
  CHECK(document.tables[0].notes.back().starts_with("Board feet are nominal"));
  CHECK(render::render_json(document).find("6486.75") != std::string::npos);
}

TEST_CASE("the mill file chooses the packet's reports; without a choice every one of the usual set exists") {
  auto book = empty_book();
  const auto reports = all_reports("");
  for (const auto& name : packet_reports(book.mill())) CHECK_NOTHROW(find_report(reports, name));
  book.post_mill("[packet]\nreports = [\"overrun\", \"crew\"]\n", "");
  CHECK(packet_reports(book.mill()) == std::vector<std::string>{"overrun", "crew"});
  book.post_mill("# the week's\n[packet]\nreports = \"overrun\"\n", "one");
  CHECK_THROWS_WITH(
      packet_reports(book.mill()),
      "mill file, line 3: [packet] reports takes names of reports, as reports = [\"production\"]");
}

TEST_CASE("the list of views names every view and column a report may read") {
  const auto book = empty_book();
  const auto document = views_document(book, {}, kToday);
  const auto text = render::render_text(document);
  CHECK(document.tables.size() >= 20);
  CHECK(text.find("v_run: one row a run") != std::string::npos);
  CHECK(text.find("nominal volume of the book (lumber)") != std::string::npos);
}

namespace {

/// The columns of a worksheet that its reader does not see.
std::set<int> hidden_columns(const std::string& xml) {
  static const std::regex kColumn("<col min=\"([0-9]+)\" max=\"([0-9]+)\"[^>]*hidden=\"1\"");
  std::set<int> hidden;
  for (std::sregex_iterator at(xml.begin(), xml.end(), kColumn), end; at != end; ++at) {
    for (int column = std::stoi((*at)[1]); column <= std::stoi((*at)[2]); ++column) hidden.insert(column - 1);
  }
  return hidden;
}

void check_nothing_hidden(const render::Document& document) {
  const auto sheets = render::read_workbook(render::render_xlsx(document));
  const auto places = render::places_in(sheets, document);
  std::size_t seen = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i].head < 0) continue;
    const auto hidden = hidden_columns(places[i].sheet->xml);
    for (const int column : places[i].across) {
      CHECK_MESSAGE(!hidden.contains(column), document.tables[i].name << " column " << column);
    }
    seen += hidden.size();
  }
  CHECK(seen > 0);  // there are hidden ones, made for the live ratios
}

}  // namespace

TEST_CASE("tables that share a worksheet hide none of each other's columns") {
  const auto book = demo_week();
  Ask ask;
  ask.from = make_day(2026, 5, 4);
  ask.to = make_day(2026, 5, 10);
  const auto reports = all_reports("");
  check_nothing_hidden(packet(reports, packet_reports(book.mill()), book, ask, {}, kToday));
  check_nothing_hidden(run_report(find_report(reports, "day"), book, {}, {}, kToday));
}

TEST_CASE("the days a report is of are said once, however they were asked for") {
  const auto book = demo_week();
  const auto subtitle = [&](const std::string& words) {
    Ask ask;
    const auto period = read_period(words, kToday, 1, 1, 1);
    ask.from = period.from;
    ask.to = period.to;
    ask.period_words = period.words;
    return run_report(find_report(all_reports(""), "overrun"), book, ask, {}, kToday).subtitle;
  };
  CHECK(subtitle("2026-05-05") == "Q. Hargan, custom sawing; Tuesday 2026-05-05");
  CHECK(subtitle("yesterday") == "Q. Hargan, custom sawing; yesterday, Thursday 2026-05-07");
  CHECK(subtitle("2026-w19") == "Q. Hargan, custom sawing; week 19 of 2026: 2026-05-04 to 2026-05-10");
}

TEST_CASE("a report of the packet that cannot be limited as the packet was says so") {
  const auto book = demo_week();
  Ask ask;
  ask.job = "TER";
  const auto document = packet(all_reports(""), {"production", "ownership"}, book, ask, {}, kToday);
  const auto says = [&](std::size_t table) {
    const auto& notes = document.tables[table].notes;
    return std::find(notes.begin(), notes.end(), "Not limited to job TER.") != notes.end();
  };
  CHECK(!says(0));  // production
  CHECK(says(1));   // ownership
}
