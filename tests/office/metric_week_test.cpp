// A week of an invented mill that counts in metres, from its sheets to its papers. Its figures were worked out by hand:
//
//   Barn, m3 = thickness x width x length x pieces
//     50x150   12 of 4.8 m 0.432    5 of 4.2 m 0.1575    3 of 3.6 m 0.081        together 0.6705
//     25x150   20 of 4.8 m 0.360   14 of 3.6 m 0.189                             together 0.549
//     under 75 mm thick 1.2195, billed as 1.220           x   950,00 = 1.159,00
//     100x100  4 of 4.8 m 0.192;  75x200  6 of 5.1 m 0.459: 0.651 x 1.100,00 =    716,10
//     travel 18 km there and back                        36 x  12,50 =   450,00
//     waiting 0.5 h                                     0.5 x 700,00 =   350,00
//     metal 400,00 and 2 teeth at 85,50                              =   571,00
//     sum 3.246,10; 25 % of it 811,525, half up 811,53; total 4.057,63; deposit 1.000,00; due 3.057,63
//   Footbridge: logs with ends alike are cylinders: pi/4 x 0.30^2 x 4 = 0.28274, pi/4 x 0.20^2 x 5 = 0.15708;
//     0.43982, billed as 0.440 x 640,00 = 281,60; 25 % 70,40; total 352,00
//   Yard: 10 of 50x100x4.8 = 0.240 x 4.200,00 = 1.008,00 with the tax in it: 1.008 x 25/125 = 201,60 on 806,40
//   Fence on halves: 11 of 25x100x4.8, 0.012 each: 6 and 5, so 0.006 is owed to the mill
#include <doctest/doctest.h>

#include <regex>

#include "base/text.h"
#include "office/agreed_terms.h"
#include "office/helpers.h"
#include "office/office.h"
#include "paper/project_paper.h"
#include "render/golden.h"
#include "render/outputs.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kFriday = *read_day("2026-06-12");
const std::string kFolder = std::string(KERFBOOK_ROOT) + "/tests/office/";

book::OpenOptions options() {
  book::OpenOptions made;
  made.now = [] { return std::string("2026-06-12 19:00:00"); };
  made.papers = project_paper;
  made.check_money = check_money;
  return made;
}

struct Week {
  std::map<std::string, render::Document> papers;

  [[nodiscard]] std::string text(const std::string& name) const {
    return render::render_text(papers.at(name));
  }
};

/// The week's papers; `more` is added to the mill file.
Week week_of(const std::string& more = "") {
  const render::Folder folder;
  const std::string mill = slurp(kFolder + "metric_week/kvistrup.toml") + more;
  book::Book book = book::Book::create(folder / "b.kerf", options(),
                                       book::Document{"mill.toml", mill, book::EntryKind::mill});
  Week week;
  auto& papers = week.papers;
  papers["deposit"] =
      take_payment(book, {"", "BIR", 0, {100000}, "bank", ""}, *read_day("2026-06-01")).document;
  for (const char* day : {"2026-06-08", "2026-06-09"})
    book.post_sheet(slurp(kFolder + "metric_week/" + day + ".sheet"), "");
  const Terms terms = terms_of(book.mill());
  const Day monday = *read_day("2026-06-08");
  papers["invoice"] = issue_invoice(book, "BIR", kFriday, kFriday).document;
  papers["by log"] = issue_invoice(book, "HEG", kFriday, kFriday).document;
  papers["ticket"] = issue_sale(book, "cash", kFriday, kFriday, "cash").document;
  papers["division"] = divide_lumber(book, "DEL", kFriday, kFriday).document;
  papers["tally"] = tally_paper(book, deal_of(book, "BIR"), monday, monday + 6, kFriday);
  papers["load"] = load(book, {"BIR", {"P1"}, "", "", ""}, kFriday).paper.document;
  papers["receipt"] = take_payment(book, {"", "", 1, {50000}, "bank", ""}, kFriday).document;
  papers["credit"] = credit_invoice(book, 1, Money{10000}, "one board short", kFriday).document;
  papers["statement"] =
      statement_document(book.mill(), play(papers_of(book)), "BIR", *read_day("2026-06-01"), kFriday);
  papers["agreement"] = agreement_document(deal_of(book, "BIR"), kFriday);
  papers["quote"] = quote_document(book.mill(), terms, "BIR", kFriday);
  papers["sheet"] = blank_sheet_document(book.mill(), "BIR", kFriday);
  papers["owed"] = receivables_document(book.mill(), play(papers_of(book)), kFriday);
  return week;
}

/// A line of the text that has all of these words, blanks not told apart.
bool has_line(const std::string& text, const std::string& words) {
  for (const std::string_view line : split_lines(text))
    if (join(split_words(std::string(line)), " ").find(words) != std::string::npos) return true;
  return false;
}

void check_lines(const std::string& text, const std::vector<std::string>& lines) {
  for (const std::string& line : lines) {
    CAPTURE(line);
    CHECK(has_line(text, line));
  }
}

}  // namespace

TEST_CASE("a metric job by the cubic metre sawn comes to the sum worked out by hand, tax on top") {
  const std::string text = week_of().text("invoice");
  check_lines(text, {"Sawing (54 pieces) 1,220 m³ 950,00 kr yes 1.159,00 kr",
                     "Sawing, 75 mm and thicker (10 pieces) 0,651 m³ 1.100,00 kr yes 716,10 kr",
                     "08.06.2026 Travel: Nordmoen to home and back 36 km 12,50 kr yes 450,00 kr",
                     "08.06.2026 Waiting: for the tractor 0:30 h 700,00 kr yes 350,00 kr",
                     "09.06.2026 Metal strike: log B6 1 400,00 kr yes 400,00 kr",
                     "09.06.2026 Metal strike: log B6 2 teeth 85,50 kr yes 171,00 kr", "Subtotal 3.246,10 kr",
                     "VAT 25 % on 3.246,10 kr 811,53 kr", "Total 4.057,63 kr",
                     "Deposit received -1.000,00 kr", "Balance due 3.057,63 kr", "Due date 26.06.2026"});
}

TEST_CASE(
    "a metric job by the cubic metre of log, and lumber sold with the tax in its price, come out by hand") {
  const Week week = week_of();
  check_lines(week.text("by log"), {"Sawing 0,440 m³ 640,00 kr yes 281,60 kr", "Subtotal 281,60 kr",
                                    "VAT 25 % on 281,60 kr 70,40 kr", "Total 352,00 kr"});
  const std::string ticket = week.text("ticket");
  check_lines(ticket, {"Total 1.008,00 kr", "of which VAT 25 % on 806,40 kr 201,60 kr",
                       "Paid, cash -1.008,00 kr", "Balance due 0,00 kr"});
  CHECK(!has_line(ticket, "Subtotal"));  // nothing is added between it and the total
}

TEST_CASE("a metric tally, load and division count in cubic metres that add up to what is billed") {
  const Week week = week_of();
  check_lines(week.text("tally"), {"50x150 5 12 17 0,590", "25x150 14 20 34 0,549", "100x100 4 4 0,192",
                                   "75x200 Grade A 6 6 0,459", "08.06.2026 Monday 55 1,331 4 7:00",
                                   "09.06.2026 Tuesday 9 0,540 2 2:00", "Total 64 1,871 6 9:00",
                                   // pi/4 x 5 x (2 x 0.16 + 0.1296 + 0.1936 + 0.25) + pi/4 x 4 x 0.09 = 3.790
                                   "Total 3,790", "6 logs; tally 1,871 m³, 49,3 % of the logs' volume."});
  check_lines(week.text("load"), {"P1 spruce 50x150 4,8 m 12 0,432", "Total 55 1,331"});
  check_lines(week.text("division"), {"25x100 4,8 m 11 6 5", "Customer 6 0,072", "Mill 5 0,060",
                                      "Carried to the next division: 0,006 m³ owed to the mill."});
  check_lines(week.text("statement"),
              {"01.06.2026 Deposit, bank -1.000,00 kr -1.000,00 kr", "Balance due 2.457,63 kr"});
}

TEST_CASE("no board feet, feet or inches stand on any metric paper, in any form") {
  const std::regex foreign(
      "\\b(bf|MBF|lf|ft|in x ft|inch(es)?|[Bb]oard f[eo][eo]t|mi)\\b|[0-9] in\\b|International");
  for (const auto& [called, paper] : week_of().papers) {
    const std::string name = called;
    CAPTURE(name);
    for (const render::Format& format : render::formats()) {
      if (format.binary) continue;
      std::string made = format.render(paper);
      if (format.name == "html") made = render::words_of(made);
      std::smatch found;
      const bool any = std::regex_search(made, found, foreign);
      CHECK_MESSAGE(!any, format.name << " says '" << found.str() << "'");
    }
    for (const render::Sheet& sheet : render::read_workbook(render::render_xlsx(paper)))
      for (const auto& [place, cell] : sheet.cells) CHECK(!std::regex_search(cell.value, foreign));
  }
}

TEST_CASE(
    "a metric mill that names a cubic rule has its scale on the tally, and how much of it became lumber") {
  const Week week = week_of("\n[scale]\nrule = \"smalian\"\n");
  const std::string text = week.text("tally");
  // Ends alike: Smalian's mean of the ends is the cylinder itself; 10 % off B2's 0.628 is 0.063, so 3.727 net.
  check_lines(text, {"by Smalian", "% of the scale"});
  CHECK(has_line(week.text("agreement"), "Logs are scaled by Smalian."));
}

TEST_CASE("the metric week's papers read as they did") {
  std::string all;
  for (const auto& [name, paper] : week_of().papers)
    all += "==== " + name + "\n" + render::render_text(paper) + "\n";
  render::check_golden("office", "metric_week.txt", all);
}
