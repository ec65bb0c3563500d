// What a page is made of: it stands alone, nothing typed becomes markup, and its charts can be read without eyes.
#include <doctest/doctest.h>

#include <string>

#include "render/chart.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

std::size_t times(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size()))
    ++count;
  return count;
}

}  // namespace

TEST_CASE("A page needs no network and no script") {
  for (const Document& document : {production_week(), tally_week(), chart_sampler(), paper()}) {
    const std::string html = render_html(document);
    for (const char* outside : {"<script", "<link", "@import", "url(", "src=\"http", "href="}) {
      CAPTURE(outside);
      CHECK(html.find(outside) == std::string::npos);
    }
  }
}

TEST_CASE("Nothing typed becomes markup, in a title, a cell, a heading, a note, a party or a chart") {
  const std::string attack = "<img src=x onerror=\"a()\">&'";
  Document document = production_week();
  document.title = document.subtitle = document.meaning = attack;
  document.foot = {attack};
  document.parties = {{attack, {attack}}};
  document.head = {{attack, attack, ColumnKind::text}};
  document.signatures = {attack};
  Table& table = document.tables.front();
  table.title = attack;
  table.notes = {attack};
  table.sums = {{attack, dec(1, 2), true}};
  table.chart->title = attack;
  table.chart->x = 1;
  for (Column& column : table.columns) column.heading = column.unit = attack;
  for (Row& row : table.rows) row.cells[1] = attack;
  const std::string html = render_html(document);
  CHECK(html.find("<img") == std::string::npos);
  CHECK(html.find("&lt;img") != std::string::npos);
}

TEST_CASE("Every chart says in words what it draws, has its axis and as many marks as figures") {
  const Document document = chart_sampler();
  for (const Table& table : document.tables) {
    const std::string svg = chart_svg(table, document.style);
    CAPTURE(table.chart->title);
    CHECK(svg.find("<title>" + table.chart->title + "</title>") != std::string::npos);
    CHECK(svg.find("<desc>") != std::string::npos);
    CHECK(svg.find("role=\"img\"") != std::string::npos);
    CHECK(times(svg, "<line") >= 3);
  }
  CHECK(times(chart_svg(document.tables[0], document.style), "<rect") == 5 + 1);      // five days, one name
  CHECK(times(chart_svg(document.tables[1], document.style), "<circle") == 5);        // five days
  CHECK(times(chart_svg(document.tables[2], document.style), "<rect") == 5 + 4 + 2);  // one day without stops
  CHECK(times(chart_svg(document.tables[3], document.style), "class=\"trend\"") == 1);
}

TEST_CASE("A table with nothing to draw draws nothing") {
  Document document = no_rows();
  CHECK(chart_svg(document.tables.front(), document.style).empty());
  CHECK(render_html(document).find("<svg") == std::string::npos);
}

TEST_CASE("A page prints on the paper of the house") {
  Document document = production_week();
  CHECK(render_html(document).find("size: letter") != std::string::npos);
  document.style.paper = PaperSize::a4;
  CHECK(render_html(document).find("size: A4") != std::string::npos);
}

}  // namespace kerfbook::render
