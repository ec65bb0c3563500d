// A paper as it is kept for ever: written, read again, and refused when it is none. What people type into one is in
// typed_test.cpp.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "office/office.h"
#include "paper/project_paper.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kDay = *read_day("2026-05-08");

}  // namespace

TEST_CASE("a frozen paper is the same after being written and read, whatever stands in it") {
  CHECK(rc::check("frozen text", [](const std::string& text, std::int64_t any) {
    const std::int64_t units = any % 1'000'000'000'000'000;  // more than any book bills
    Paper paper;
    paper.kind = PaperKind::invoice;
    paper.number = 1;
    paper.day = kDay;
    paper.note = text;
    paper.customer = text;
    paper.amount = {units};
    BillLine line;
    line.description = text;
    line.quantity = {units % 1'000'000, 2};
    line.rate = Rational(units % 1000, 7);
    line.day = kDay;
    paper.lines.push_back(line);
    paper.document.title = text;
    render::Table table;
    table.columns.resize(3);
    table.rows.push_back({{text, render::Figure(units, 700, 2), std::monostate{}}, true});
    table.sums.push_back({text, Decimal{units, 2}, true});
    paper.document.tables.push_back(table);
    const std::string frozen = write_paper(paper);
    const Paper again = read_paper(frozen);
    RC_ASSERT(write_paper(again) == frozen);
    RC_ASSERT(again.amount == paper.amount);
    RC_ASSERT(again.lines[0].rate == paper.lines[0].rate);
    RC_ASSERT(again.document.tables[0].rows[0].cells[1] == paper.document.tables[0].rows[0].cells[1]);
  }));
}

TEST_CASE("a text that is no paper is refused in words, never read as something else") {
  CHECK_THROWS_AS(read_paper(""), Failed);
  CHECK_THROWS_AS(read_paper("{}"), Failed);
  Paper paper;
  paper.day = kDay;
  const std::string good = write_paper(paper);
  for (std::size_t cut = 0; cut + 2 < good.size(); cut += 7)
    CHECK_THROWS_AS(read_paper(good.substr(0, cut)), Failed);
  CHECK_NOTHROW(read_paper(good));
  for (std::size_t at = good.find("\"number\"");
       (at = good.find_first_of("0123456789", at)) != std::string::npos; ++at) {
    if (good[at - 1] != ' ' && good[at - 1] != ':') continue;
    CHECK_THROWS_AS(read_paper(good.substr(0, at) + "6.6e65" + good.substr(at + 1)), Failed);
  }
}
