// Papers against whatever people type: names that begin with =, quotes, angle brackets, 200 letters, other alphabets.
// Each goes through every paper in every format without becoming code or breaking it.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "billing/office.h"
#include "billing/project_paper.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kDay = *read_day("2026-05-08");

book::OpenOptions options() {
  book::OpenOptions made;
  made.now = [] { return std::string("2026-05-08 19:00:00"); };
  made.papers = project_paper;
  made.check_money = check_money;
  return made;
}

/// In TOML's quotes.
std::string quoted(const std::string& text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::string mill_of(const std::string& nasty) {
  return "[mill]\nname = " + quoted(nasty) + "\nowner = " + quoted(nasty) + "\naddress = [" + quoted(nasty) +
         "]\nterms = [" + quoted(nasty) + "]\n[[customer]]\ncode = \"TER\"\nname = " + quoted(nasty) +
         "\naddress = [" + quoted(nasty) + "]\ncertificate = " + quoted(nasty) +
         "\n[[job]]\ncode = \"TER\"\ncustomer = \"TER\"\nname = " + quoted(nasty) +
         "\ncut_list = [\"2x6x12 4\"]\n[[price]]\nbasis = \"bf\"\nrate = 0.5\nname = " + quoted(nasty) +
         "\n[[price]]\nsells = true\nbasis = \"bf\"\nrate = 1\n[[charge]]\nname = \"waiting\"\ntitle = " +
         quoted(nasty) + "\nrate = 60\nper = \"hour\"\nstop = \"waiting\"\n[[tax]]\nname = " + quoted(nasty) +
         "\nrate = 5\non = [\"sawing\", \"lumber\"]\n[[agreement]]\njob = \"TER\"\nsay = [" + quoted(nasty) +
         "]\n";
}

std::vector<render::Document> every_paper(const std::string& nasty) {
  static int number = 0;
  const auto folder = std::filesystem::temp_directory_path() / ("kerfbook_paper_" + std::to_string(++number));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  std::vector<render::Document> all;
  {
    book::Book book = book::Book::create(folder / "b.kerf", options(),
                                         book::Document{"mill.toml", mill_of(nasty), book::EntryKind::mill});
    std::string one_line = nasty;
    for (char& c : one_line)
      if (c == '\n' || c == '\r' || c == ';' || c == ',') c = '.';
    book.post_sheet(
        "sheet 2026-05-08\njob TER\nspecies DF\nrun 7:00-12:00\nbundle B1\n2x6 4/12\nlog T1 12x12\nstop 0:30 "
        "waiting " +
            one_line + ", charge\nsold cash 2x6 1/12\n",
        "");
    const Paper invoice = issue_invoice(book, "TER", kDay, kDay);
    all.push_back(invoice.document);
    all.push_back(take_payment(book, {"", "", invoice.number, {100}, one_line, one_line}, kDay).document);
    all.push_back(credit_invoice(book, invoice.number, Money{50}, one_line, kDay).document);
    all.push_back(issue_sale(book, "cash", kDay, kDay, one_line).document);
    all.push_back(load(book, {"TER", {}, nasty, nasty, nasty}, kDay).document);
    const Terms terms = terms_of(book.mill());
    all.push_back(tally_document(book, terms, "TER", kDay, kDay, kDay));
    all.push_back(statement_document(book.mill(), play(papers_of(book)), "TER", kDay, kDay));
    all.push_back(agreement_document(book.mill(), terms, "TER", kDay));
    all.push_back(quote_document(book.mill(), terms, "TER", kDay));
    all.push_back(blank_sheet_document(book.mill(), "TER", kDay));
    all.push_back(receivables_document(book.mill(), play(papers_of(book)), kDay));
    all.push_back(stock_document(book, kDay, kDay));
    for (const std::string& what : export_names())
      all.push_back(export_document(book, what, kDay, kDay, kDay));
    for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
  }
  std::filesystem::remove_all(folder);
  return all;
}

}  // namespace

TEST_CASE("what a user typed is text in every paper and every format") {
  const std::vector<std::string> names{"=HYPERLINK(\"http://x\",\"y\")",
                                       "+1+cmd|' /C calc'!A0",
                                       "<script>alert(1)</script>",
                                       "\" onload=\"x\" & <b>'",
                                       std::string(200, 'W'),
                                       "Ивановъ-Æther 森林木工所 خشب",
                                       "{{title}} {#tables}"};
  for (const std::string& name : names) {
    for (const render::Document& paper : every_paper(name)) {
      CAPTURE(name);
      CAPTURE(paper.name);
      const std::string html = render::render_html(paper);
      CHECK(html.find("<script>alert") == std::string::npos);
      CHECK(html.find("\" onload=\"x") == std::string::npos);
      CHECK(html.find("</html>") != std::string::npos);
      CHECK(!render::render_text(paper).empty());
      CHECK(nlohmann::json::accept(render::render_json(paper)));
      const std::string csv = render::render_csv(paper);
      CHECK(csv.find("\n=HYPERLINK") == std::string::npos);
      CHECK(csv.find(",=HYPERLINK") == std::string::npos);
    }
  }
}

TEST_CASE("a frozen paper is the same after being written and read, whatever stands in it") {
  CHECK(rc::check("frozen text", [](const std::string& text, std::int64_t units) {
    Paper paper;
    paper.kind = PaperKind::invoice;
    paper.number = 1;
    paper.day = kDay;
    paper.note = text;
    paper.customer = text;
    paper.amount = {units};
    Line line;
    line.description = text;
    line.quantity = {units % 1'000'000, 2};
    line.rate = Rational(units % 1000, 7);
    line.day = kDay;
    paper.lines.push_back(line);
    paper.document.title = text;
    render::Table table;
    table.columns.resize(3);
    table.rows.push_back({{text, Decimal{units, 2}, std::monostate{}}, true});
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
}
