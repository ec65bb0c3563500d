// What people type -- names that begin with =, quotes, angle brackets, 200 letters, other alphabets, control characters --
// in every field there is, through every paper in every form: it stays text, and breaks none of them.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "base/text.h"
#include "office/agreed_terms.h"
#include "office/office.h"
#include "paper/project_paper.h"
#include "render/outputs.h"
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

/// What a line of a sheet can hold of it: a comma and a remark end a text, and the reader refuses control characters.
std::string for_a_sheet(const std::string& text) {
  std::string out = fit_to_print(text);
  for (char& c : out)
    if (c == '\n' || c == '\t' || c == ';' || c == ',') c = '.';
  return out;
}

std::string one_word(const std::string& text) {
  std::string out;
  for (const char c : for_a_sheet(text))
    if (c != ' ') out += c;
  return out;
}

/// A mill file with a character that cannot be printed is refused.
std::string mill_of(const std::string& typed) {
  const std::string name = quoted(fit_to_print(typed));
  const std::string word = quoted(one_word(typed));
  return "[mill]\nname = " + name + "\nowner = " + name + "\naddress = [" + name + "]\nphone = " + name +
         "\nemail = " + name + "\ntax_number = " + name + "\nterms = [" + name + "]\n[species]\n" + word +
         " = { name = " + name + " }\n[grade]\n" + word + " = " + name + "\n[invoice]\nsay = [" + name +
         "]\n[[customer]]\ncode = \"TER\"\nname = " + name + "\naddress = [" + name + "]\nphone = " + name +
         "\ncertificate = " + name + "\n[[job]]\ncode = \"TER\"\ncustomer = \"TER\"\nname = " + name +
         "\nsite = " + name +
         "\ncut_list = [\"2x6x12 4\"]\n[[job]]\ncode = \"MUM\"\ncustomer = \"TER\"\nname = " + name +
         "\nowner = \"shares\"\n[[price]]\nbasis = \"bf\"\nrate = 0.5\nname = " + name +
         "\n[[price]]\njob = \"MUM\"\nbasis = \"shares\"\n[[price]]\nown_lumber = true\nbasis = \"bf\"\nrate "
         "= 1\n"
         "[[charge]]\nname = \"waiting\"\ntitle = " +
         name +
         "\nrate = 60\nper = \"hour\"\nstop = [\"waiting\"]\n[[charge]]\nname = \"set-up\"\ntitle = " + name +
         "\nflat = 100\nonce = true\n[[tax]]\nname = " + name +
         "\nrate = 5\non = [\"sawing\", \"lumber\"]\n[[agreement]]\njob = \"TER\"\ndeposit = 50\nsay = [" +
         name + "]\n";
}

std::string sheet_of(const std::string& typed, int pieces) {
  const std::string text = for_a_sheet(typed);
  const std::string word = one_word(typed);
  return "sheet 2026-05-08\nsite " + text + "\nrun 7:00-12:00\njob TER\nspecies " + word + "\nbundle B" +
         word + "\n2x6 " + std::to_string(pieces) + "/12\n4x4 3/10\nlog L" + word + " 12x12 defect 5bf " +
         text + "\nstop 0:30 waiting " + text + ", charge\nmove " + text + " to " + text +
         " 12 mi\ncharge TER waiting 1 " + text + "\nnote " + text +
         "\njob MUM\n2x4 5/8 3/10\njob own\n2x6 9/12\n" + "sold b" + text + " 2x6 1/12\n";
}

using Papers = std::vector<render::Document>;

/// The papers that deeds leave behind, every kind of them.
void add_issued(Papers& all, book::Book& book, const std::string& typed) {
  const std::string text = for_a_sheet(typed);
  all.push_back(take_payment(book, {"", "TER", 0, {2000}, typed, typed}, kDay).document);
  all.push_back(draft_paper(book, "TER", kDay, kDay));
  const Paper invoice = issue_invoice(book, "TER", kDay, kDay);
  all.push_back(invoice.document);
  all.push_back(take_payment(book, {"", "", invoice.number, {100}, typed, typed}, kDay).document);
  all.push_back(take_payment(book, {"TER", "", 0, {100000}, typed, typed}, kDay).document);
  all.push_back(refund(book, {"TER", "", 0, {50}, typed, typed}, kDay).document);
  all.push_back(credit_invoice(book, invoice.number, Money{50}, typed, kDay).document);
  all.push_back(divide_lumber(book, "MUM", kDay, kDay).document);
  all.push_back(draft_ticket(book, "b" + text, kDay, kDay));
  all.push_back(issue_sale(book, "b" + text, kDay, kDay, typed).document);
  all.push_back(load(book, {"TER", {}, typed, typed, typed}, kDay).paper.document);
  all.push_back(take_back_load(book, 1, typed, kDay).document);
  book.post_sheet(sheet_of(typed, 3), typed);  // a line is struck, and something to bill again
  all.push_back(draft_paper(book, "TER", kDay, kDay));
  all.push_back(credit_invoice(book, invoice.number, std::nullopt, typed, kDay).document);
}

void add_made(Papers& all, const book::Book& book) {
  const Terms terms = terms_of(book.mill());
  const Ledger ledger = play(papers_of(book));
  all.push_back(tally_paper(book, deal_of(book, "TER"), kDay, kDay, kDay));
  all.push_back(statement_document(book.mill(), ledger, "TER", kDay, kDay));
  all.push_back(agreement_document(deal_of(book, "TER"), kDay));
  all.push_back(quote_document(book.mill(), terms, "TER", kDay));
  all.push_back(blank_sheet_document(book.mill(), "TER", kDay));
  all.push_back(receivables_document(book.mill(), ledger, kDay));
  for (const std::string& what : export_names()) all.push_back(export_document(book, what, kDay, kDay, kDay));
}

Papers every_paper(const std::string& typed) {
  const render::Folder folder;
  Papers all;
  book::Book book = book::Book::create(folder / "b.kerf", options(),
                                       book::Document{"mill.toml", mill_of(typed), book::EntryKind::mill});
  book.post_sheet(sheet_of(typed, 4), "");
  add_issued(all, book, typed);
  add_made(all, book);
  for (const auto& finding : book.verify()) FAIL_CHECK(finding.what);
  return all;
}

const std::vector<std::string>& typed_names() {
  static const std::vector<std::string> names{
      "=HYPERLINK(\"http://x\",\"y\")",
      "+1+cmd|' /C calc'!A0",
      "-2+3",
      "@SUM(1+1)*cmd|' /C calc'!A0",
      "<script>alert(1)</script><!-- ]]> -->",
      "\" onload=\"x\" & <b>' &amp; &#60;",
      std::string(200, 'W'),
      "Ивановъ-Æther 森林木工所 خشب עץ",
      "e\u0301o\u0308\u0323n\u0303 \U0001FA9A\U0001F332 \U0001F468\u200D\U0001F469",
      "{{title}} {#tables} {{{chart}}} %s %n \\ _x0041_ $(x) 'x'",
      "bell\u0007 esc\u001b[31m nul-like\u0001 c1\u009b turned\u202Egnp.exe\u2066x",
      "'quoted' [1]:*?/\\ 'History'"};
  return names;
}

/// Words where blanks are not told apart.
std::string words(const std::string& text) {
  return join(split_words(text), " ");
}

bool has(const std::string& all, const std::string& part) {
  return all.find(part) != std::string::npos;
}

/// The names of a page's elements: what a name typed into it must not change.
std::vector<std::string> skeleton(const std::string& html) {
  std::vector<std::string> names;
  for (const render::Element& element : render::elements_of(html)) names.push_back(element.name);
  return names;
}

void check_page(const render::Document& paper, const render::Document& plain, const std::string& typed) {
  const std::string html = render::render_html(paper);
  CHECK(skeleton(html) == skeleton(render::render_html(plain)));
  for (const render::Element& element : render::elements_of(html)) {
    for (const auto& [called, value] : element.attributes) {
      const std::string name = called;
      CAPTURE(element.name);
      CAPTURE(name);
      static const std::set<std::string> kKnown{"lang",  "charset", "name",    "content",  "class",
                                                "style", "dir",     "colspan", "data-said"};
      CHECK(kKnown.contains(name));
      if (name == "style") CHECK(value.starts_with("width: "));
      if (name == "class") CHECK(value.size() < 12);
    }
  }
  if (!paper.parties.empty()) CHECK(has(words(render::words_of(html)), words(fit_to_print(typed))));
}

/// As a spreadsheet program compares names of sheets, as far as these tests go.
std::string folded(const std::string& name) {
  return lower(name);
}

void check_names(const std::vector<render::Sheet>& sheets) {
  std::set<std::string> names;
  for (const render::Sheet& sheet : sheets) {
    CAPTURE(sheet.name);
    int units = 0;
    for (const char c : sheet.name) {
      const auto byte = static_cast<unsigned char>(c);
      if ((byte & 0xC0U) != 0x80U) units += byte >= 0xF0 ? 2 : 1;
    }
    CHECK(units >= 1);
    CHECK(units <= 31);
    CHECK(sheet.name.find_first_of("[]:*?/\\") == std::string::npos);
    CHECK(sheet.name.front() != '\'');
    CHECK(sheet.name.back() != '\'');
    CHECK(folded(sheet.name) != "history");
    CHECK(names.insert(folded(sheet.name)).second);
  }
}

/// Widths of a sheet's columns, in characters.
double printed_width(const render::Sheet& sheet) {
  double width = 0;
  const std::string_view xml = sheet.xml;
  for (std::size_t at = xml.find("<col min=\""); at != std::string_view::npos;
       at = xml.find("<col min=\"", at + 1)) {
    const auto number = [&](std::string_view name) {
      const std::size_t from = xml.find(name, at) + name.size();
      return std::stod(std::string(xml.substr(from, 12)));
    };
    width += number(" width=\"") * (number(" max=\"") - number("min=\"") + 1);
  }
  return width;
}

void check_workbook(const render::Document& paper, const std::string& typed) {
  const auto sheets = render::read_workbook(render::render_xlsx(paper));  // every part of it is well-formed
  check_names(sheets);
  bool found = false;
  for (const render::Sheet& sheet : sheets) {
    CHECK(!has(sheet.xml, "<hyperlink"));
    if (!paper.parties.empty()) CHECK(printed_width(sheet) < 125);  // an upright page at full size has 100
    for (const auto& [place, cell] : sheet.cells) {
      if (!cell.formula.empty()) CHECK(cell.formula.starts_with("SUM("));
      if (cell.value.find_first_not_of("0123456789.-E") != std::string::npos && cell.formula.empty())
        CHECK(cell.text);
      found = found || has(words(cell.value), words(fit_to_print(typed)));
    }
  }
  if (!paper.parties.empty()) CHECK(found);
}

bool is_number(const std::string& field) {
  return !field.empty() && field.find_first_not_of("0123456789.-") == std::string::npos;
}

void check_plain_forms(const render::Document& paper) {
  CHECK(nlohmann::json::accept(render::render_json(paper)));
  for (const auto& row : render::read_csv(render::render_csv(paper)))
    for (const std::string& field : row)
      if (field.size() > 1 && !is_number(field)) CHECK(field.find_first_of("=+-@\t\r") != 0);
  const std::string text = render::render_text(paper);
  std::string kept = fit_to_print(text);
  CHECK(kept == text);
  CHECK(!has(text, "\t"));
}

}  // namespace

TEST_CASE("what people type stays text in every field of every paper in every form") {
  const Papers plain = every_paper("Plain words");
  std::set<std::string> kinds;
  for (const render::Document& paper : plain) kinds.insert(paper.name);
  CHECK(kinds.size() >= 16);
  for (const std::string& typed : typed_names()) {
    CAPTURE(typed);
    const Papers papers = every_paper(typed);
    REQUIRE(papers.size() == plain.size());
    for (std::size_t i = 0; i < papers.size(); ++i) {
      CAPTURE(papers[i].name);
      check_page(papers[i], plain[i], typed);
      check_workbook(papers[i], typed);
      check_plain_forms(papers[i]);
    }
  }
}

TEST_CASE(
    "a name of 200 letters is broken over lines in a workbook, and its row is high enough for all of them") {
  const std::string name(200, 'W');
  for (const render::Document& paper : every_paper(name)) {
    if (paper.parties.empty()) continue;
    CAPTURE(paper.name);
    for (const render::Sheet& sheet : render::read_workbook(render::render_xlsx(paper))) {
      for (const auto& [place, cell] : sheet.cells) {
        if (!has(cell.value, name)) continue;
        const std::string row = "<row r=\"" + std::to_string(place.first + 1) + "\"";
        const std::size_t at = sheet.xml.find(row);
        REQUIRE(at != std::string::npos);
        const std::size_t end = sheet.xml.find('>', at);
        const std::size_t height = sheet.xml.find("ht=\"", at);
        REQUIRE(height < end);
        // Two hundred of the widest letter are two to four lines across a whole page, at 15 points a line.
        CHECK(std::stod(sheet.xml.substr(height + 4, 8)) >= 45);
      }
    }
  }
}

TEST_CASE("a name of 200 letters can be broken wherever it stands on a page") {
  for (const render::Document& paper : every_paper(std::string(200, 'W'))) {
    CAPTURE(paper.name);
    const std::string html = render::render_html(paper);
    CHECK(has(html, "overflow-wrap: anywhere; }\nh1"));  // said of the body, so of all but cells
    std::size_t at = 0;
    for (const std::string cell :
         {"<td>", "<td class=\"w\">", "<td class=\"main\">", "<td class=\"w main\">"})
      for (at = html.find(cell); at != std::string::npos; at = html.find(cell, at + 1))
        CHECK(!has(html.substr(at, html.find("</td>", at) - at), std::string(60, 'W')));
  }
}
