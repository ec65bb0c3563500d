// A blade changed whole: seen where work on the saws is reported, and never counted as teeth.
#include <doctest/doctest.h>

#include <algorithm>

#include "demo.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

book::Book sawn_on_two_blades() {
  auto book = book::Book::create(fresh_file("blade.book"), on_friday());
  billing::register_unbilled(book);
  book.post_sheet(
      "sheet 2026-05-04\nsawing 8:00-10:00\nlog 16x16\n2x6 10/16\nteeth head full-set 22 wear\n2x6 5/16\n"
      "blade head changed dull\n2x6 3/16\nteeth head replaced 2 metal\n",
      "");
  return book;
}

render::Document answered(const book::Book& book, const std::string& name) {
  return run_report(find_report(all_reports(""), name), book, {}, {}, kToday);
}

std::size_t column(const render::Table& table, const std::string& name) {
  const auto at = std::find_if(table.columns.begin(), table.columns.end(),
                               [&](const render::Column& one) { return one.name == name; });
  REQUIRE(at != table.columns.end());
  return static_cast<std::size_t>(at - table.columns.begin());
}

}  // namespace

TEST_CASE("a changed blade stands among the work on teeth and blades and adds no tooth") {
  const auto book = sawn_on_two_blades();
  const auto document = answered(book, "teeth");
  const auto& table = document.tables.front();
  REQUIRE(table.rows.size() == 3);
  CHECK(table.rows[1].cells[column(table, "action")] == render::Cell(std::string("blade changed")));
  CHECK(table.rows[1].cells[column(table, "cause")] == render::Cell(std::string("dull")));
  CHECK(table.rows[1].cells[column(table, "teeth")] == render::Cell());
  CHECK(table.rows[0].cells[column(table, "teeth")] == render::Cell(std::int64_t{22}));
  CHECK(table.rows[2].cells[column(table, "teeth")] == render::Cell(std::int64_t{2}));
}

TEST_CASE("upkeep counts the lumber of a saw from its new blade") {
  const auto book = sawn_on_two_blades();
  const auto document = answered(book, "upkeep");
  const auto& saws = document.tables.front();
  REQUIRE(saws.rows.size() == 1);
  const auto& since_new = saws.rows[0].cells[column(saws, "since_full_set_bf")];
  CHECK(since_new == render::Cell(std::int64_t{48}));  // 3 of 2x6x16: 16 bf each, sawn after the change
}

TEST_CASE("a new blade ends a set of teeth and begins one") {
  const auto document = answered(sawn_on_two_blades(), "tooth-life");
  const auto& saws = document.tables.front();
  REQUIRE(saws.rows.size() == 2);
  const auto of_set = [&](const char* name) { return saws.rows[1].cells[column(saws, name)]; };
  CHECK(of_set("life") == render::Cell(std::string("set")));
  CHECK(of_set("worn") == render::Cell(std::int64_t{1}));  // 5 of 2x6x16 on the full set
  CHECK(of_set("running") == render::Cell(std::int64_t{1}));
}
