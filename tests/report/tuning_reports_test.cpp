// tuning_reports_test.cpp -- size control and tooth life as reports: published readings come through a book to the digits
// printed, and what is said above the figures is right where the truth is known.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>
#include <vector>

#include "measure/csv_rows.h"
#include "office/office.h"
#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr std::size_t kSizes = 0, kTargets = 1, kBoards = 2;
constexpr std::size_t kSaws = 0, kCurve = 1, kCauses = 4, kCompared = 5, kPace = 6;

double figure(const render::Document& document, std::size_t table, const std::string& column,
              std::size_t row) {
  const auto& cell =
      document.tables.at(table).rows.at(row).cells.at(column_at(document.tables.at(table), column));
  REQUIRE(std::holds_alternative<render::Figure>(cell));
  return std::get<render::Figure>(cell).nearest();
}

std::string said(const render::Document& document) {
  std::string words;
  for (const auto& line : document.lead) words += line + "\n";
  return words;
}

/// One sheet a day from 2026-04-01, each with the lines given.
std::vector<std::string> days_of(const std::vector<std::string>& lines) {
  std::vector<std::string> sheets;
  for (std::size_t i = 0; i < lines.size(); ++i)
    sheets.push_back(fmt::format("sheet 2026-04-{:02}\n{}", i + 1, lines[i]));
  return sheets;
}

/// Twelve boards called 2 in, six of them a bit thinner, about `middle`.
std::string twelve_boards(double middle, double off = 0.01) {
  std::string lines = "setup 1 kerf 0.25 over 0.09\n2x6 40/16\n";
  for (int i = 0; i < 12; ++i) {
    const double own = middle + (i % 2 == 0 ? off : -off);
    lines += fmt::format("thick 2x6 {:.3f} {:.3f}\n", own - 0.005, own + 0.005);
  }
  return lines;
}

}  // namespace

TEST_CASE("the eight boards of EM 8731 come through a book to the digits printed") {
  std::string sheet = "sheet 2026-05-04\n";
  for (const auto& row : test::rows_of("tuning/em8731_thickness.csv"))
    sheet += fmt::format("thick 2x4 {} {} {} {}\n", row.at(0), row.at(1), row.at(2), row.at(3));
  const auto document = answer(small_book("", {sheet}), "size-control");
  // source: T. D. Brown, OSU Extension EM 8731, 2000, pp. 21-22
  CHECK(fmt::format("{:.5f}", figure(document, kSizes, "within", 0)) == "0.01594");
  CHECK(fmt::format("{:.5f}", figure(document, kSizes, "board_means", 0)) == "0.02235");
  CHECK(fmt::format("{:.5f}", figure(document, kSizes, "all_readings", 0)) == "0.02546");
  CHECK(fmt::format("{:.5f}", figure(document, kSizes, "between", 0)) == "0.02088");
  CHECK(cell_of(document, "boards", 0) == "8");
  CHECK(cell_of(document, "mean", 0) == "1.707");
  CHECK(said(document) ==
        "Too few boards to tell: 2x4 has the most, 8 boards; 10 of one size under one set-up would tell "
        "(common "
        "practice, no source).\n");
}

TEST_CASE("a size cut too thick, too thin, or right is told so, with what it takes") {
  const auto thick = answer(small_book("", days_of({twelve_boards(2.09)})), "size-control");
  // by hand: squares 12 x (0.015^2 + 0.005^2) over 23; 2 + 1.645 x 0.0114 = 2.019; 0.071 / 2.34 of the wood
  CHECK(said(thick) ==
        "2x6 under set-up 1 is cut thicker than it need be: 2.090 in on average, where 2.019 in would keep "
        "19 readings "
        "in 20 at 2.000 in or more. That takes 3.0 % of the wood, 20 bf a year.\n");
  CHECK(cell_of(thick, "set_for", 0, kTargets) == "2.090");
  CHECK(cell_of(thick, "oversize", 0, kTargets) == "0.071");
  CHECK(cell_of(thick, "money", 0, kTargets) == "-");  // nothing invoiced, no price
  const auto thin = answer(small_book("", days_of({twelve_boards(2.0)})), "size-control");
  CHECK(said(thin) ==
        "2x6 under set-up 1 is set too thin: 50 readings in 100 are under 2.000 in; set for 2.019 in five "
        "would be.\n");
  const auto right = answer(small_book("", days_of({twelve_boards(2.019)})), "size-control");
  CHECK(cell_of(right, "verdict", 0, kTargets) == "set right");
  CHECK(said(right) ==
        "2x6 under set-up 1 is set right: it averages 2.019 in, and 2.019 in is needed for 19 readings in 20 "
        "at 2.000 in "
        "or more.\n");
  CHECK(cell_of(thick, "verdict", 0, kTargets) == "thicker than needed");
}

TEST_CASE(
    "lumber billed by the thousand is worth what the same is by the board foot, and both together their "
    "mean") {
  const auto worth = [](const std::string& prices, const std::vector<std::string>& jobs) {
    std::string mill = "[[customer]]\ncode = \"A\"\nname = \"Ama Quist\"\n" + prices;
    std::string sheet = twelve_boards(2.09);
    for (const auto& job : jobs) {
      mill += "[[job]]\ncode = \"" + job + "\"\ncustomer = \"A\"\n";
      sheet += "job " + job + "\n2x6 125/16\n";  // 2,000 bf
    }
    auto book = small_book(mill, days_of({sheet}));
    for (const auto& job : jobs) billing::issue_invoice(book, job, kToday, kToday);
    return cell_of(answer(book, "size-control"), "money", 0, kTargets);
  };
  const std::string by_foot = "[[price]]\nbasis = \"bf\"\nrate = 0.50\njob = \"A\"\n";
  const std::string by_thousand = "[[price]]\nbasis = \"mbf\"\nrate = 500.00\njob = \"B\"\n";
  // by hand: 2,640 bf in the year x 0.07121 / 2.26879 = 82.87 bf at 0.50
  CHECK(worth(by_foot, {"A"}) == "$41.43");
  CHECK(worth(by_thousand, {"B"}) == "$41.43");
  const std::string dearer = "[[price]]\nbasis = \"mbf\"\nrate = 900.00\njob = \"B\"\n";
  // 2,000 bf at 0.50 and 2,000 at 0.90 are 0.70; 4,640 bf in the year
  CHECK(worth(by_foot + dearer, {"A", "B"}) == "$101.95");
}

TEST_CASE("a size cut to less than it is called must hold what the mill file says it is cut to") {
  const std::string house = "[lumber]\nsizes = [\"2x6\"]\n[lumber.target]\n\"2x6\" = \"1-5/8x5-5/8\"\n";
  const auto document = answer(small_book(house, days_of({twelve_boards(1.70)})), "size-control");
  CHECK(cell_of(document, "must_hold", 0, kTargets) == "1.625");
  CHECK(cell_of(document, "needed", 0, kTargets) == "1.644");  // 1.625 + 1.645 x 0.0114, as above
  CHECK(cell_of(document, "set_for", 0, kTargets) == "-");
  CHECK(cell_of(document, "verdict", 0, kTargets) == "thicker than needed");
  CHECK(said(document).find("1.644 in would keep 19 readings in 20 at 1.625 in or more") !=
        std::string::npos);
  const std::string own = house + "[[job]]\ncode = \"F\"\ntarget = { \"2x6\" = \"1-1/2x5-1/2\" }\n";
  const auto job = answer(small_book(own, days_of({"job F\n" + twelve_boards(1.70)})), "size-control");
  CHECK(cell_of(job, "must_hold", 0, kTargets) == "1.500");
}

TEST_CASE(
    "without a target in the mill file, or cut for several jobs on one day, a scant size has none to hold") {
  const std::string job = "[[job]]\ncode = \"F\"\ntarget = { \"2x6\" = \"1-5/8x5-5/8\" }\n";
  const std::string other = "[[job]]\ncode = \"G\"\ntarget = { \"2x6\" = \"1-3/4x5-3/4\" }\n";
  const auto none_to_hold = [](const book::Book& book) {
    const auto document = answer(book, "size-control");
    CHECK(cell_of(document, "verdict", 0, kTargets) == "no size to hold");
    CHECK(cell_of(document, "needed", 0, kTargets) == "-");
    CHECK(cell_of(document, "holds", 0, kTargets) == "1.601");
    CHECK(
        said(document) ==
        "What was measured is all cut to less than it is called, for planing or drying; what it must hold is "
        "not in the book.\n");
  };
  {
    auto book = small_book(job, days_of({"job F\n" + twelve_boards(1.62)}));
    book.post_mill("[mill]\nname = \"Odd\"\n", "done");  // the job is done, and out of the file
    none_to_hold(book);
  }
  none_to_hold(small_book(job + other, days_of({"job F\n" + twelve_boards(1.62) + "job G\n2x6 40/16\n"})));
}

TEST_CASE("a new set-up begins readings of its own, and only the newest is spoken of") {
  const auto document = answer(
      small_book(
          "", days_of({twelve_boards(2.09), "setup 2 kerf 0.25 over 0.02\n2x6 1/16\nthick 2x6 2.02 2.03\n"})),
      "size-control");
  CHECK(column_of(document, "setup") == "1 2");
  CHECK(column_of(document, "boards") == "12 1");
  CHECK(cell_of(document, "lumber", 0, kTargets) == "-");
}

TEST_CASE("readings under a set-up that was only named again, or moved, have the kerf last said for it") {
  std::string named = twelve_boards(2.09);
  named.replace(named.find(" kerf 0.25 over 0.09"), 20, "");
  const auto said_once =
      answer(small_book("", days_of({"setup 1 kerf 0.25 over 0.09\n", named})), "size-control");
  const auto said = answer(small_book("", days_of({twelve_boards(2.09)})), "size-control");
  for (const char* column : {"set_for", "wood_percent"})
    CHECK(cell_of(said_once, column, 0, kTargets) == cell_of(said, column, 0, kTargets));
}

TEST_CASE("where a size strays tells where to look") {
  const auto notes = [](double off) {
    const auto document = answer(small_book("", days_of({twelve_boards(2.09, off)})), "size-control");
    std::string words;
    for (const auto& note : document.tables.at(kSizes).notes) words += note + "\n";
    return words;
  };
  CHECK(notes(0.002).find("2x6 under set-up 1 strays more along a board than from one to the next: look to "
                          "teeth, lead, tension and feed.") != std::string::npos);
  CHECK(notes(0.03).find("2x6 under set-up 1 strays more from board to board than along one: look to the "
                         "set-works and to how the log lies.") != std::string::npos);
  CHECK(notes(0.01).find("strays more") == std::string::npos);
}

TEST_CASE("boards set differently, and one uneven along its length, are marked in the control chart") {
  std::string lines = "2x6 10/16\n";
  for (int i = 0; i < 11; ++i) lines += "thick 2x6 2.09 2.11 2.10 2.10\n";
  lines += "thick 2x6 2.19 2.21 2.20 2.20\nthick 2x6 1.99 2.01 2.00 2.00\nthick 2x6 2.00 2.20 2.10 2.10\n";
  const auto document = answer(small_book("", days_of({lines})), "size-control");
  CHECK(cell_of(document, "remark", 11, kBoards) == "thick: outside");
  CHECK(cell_of(document, "remark", 12, kBoards) == "thin: outside");
  CHECK(cell_of(document, "remark", 13, kBoards) == "uneven along its length");
  CHECK(document.tables.at(kBoards).rows.size() == 14);
  CHECK(document.tables.at(kBoards).chart);
}

TEST_CASE(
    "sharpenings: a strike cuts one short, what is still in the saw too, and what was sawn first is no "
    "life") {
  const auto document =
      answer(small_book("[[cost]]\nname = \"Teeth\"\nrate = 2.50\nper = \"tooth\"\n",
                        days_of({"2x6 100/16\nteeth head touched-up\n2x6 10/16\nteeth head touched-up\n",
                                 "2x6 20/16\nteeth head replaced 3 metal\n2x6 30/16\n",
                                 "2x6 10/16\nteeth head full-set 20 wear\n2x6 5/16\n"})),
             "tooth-life");
  // lives of 160 worn, 320 struck, 640 worn, 80 still in: survival 3/4 at 160, then 0 at 640
  CHECK(cell_of(document, "lives", 0, kSaws) == "4");
  CHECK(cell_of(document, "worn", 0, kSaws) == "2");
  CHECK(cell_of(document, "strikes", 0, kSaws) == "1");
  CHECK(cell_of(document, "running", 0, kSaws) == "1");
  CHECK(cell_of(document, "median_bf", 0, kSaws) == "640");
  CHECK(cell_of(document, "lower", 0, kSaws) == "-");  // fewer than ten worn
  CHECK(cell_of(document, "shortest", 0, kSaws) == "160");
  CHECK(cell_of(document, "cost_per_mbf", 0, kSaws) == "$47.92");  // 23 teeth x 2.50 over 1.2 MBF
  CHECK(cell_of(document, "life", 1, kSaws) == "set");
  CHECK(column_of(document, "times", kCauses) == "1 1 1");
  CHECK(column_of(document, "cause", kCauses) == "- metal wear");
  CHECK(said(document) ==
        "Too few sharpenings of the head saw to tell how long one lasts and what interval costs least: 2 "
        "worn, where 10 would tell (common practice, no source).\n");
  CHECK(document.foot.front().find("power locked out") != std::string::npos);
}

namespace {

/// The head saw is touched up about every 8 days, the edger every 16th; each day the same ten boards, in a minute more
/// than the day before since the eighth day. A stop for teeth takes 6 minutes.
std::vector<std::string> slowing(const std::string& board) {
  std::vector<std::string> sheets{"sheet 2025-01-01\nteeth head touched-up\nteeth edger touched-up\n"};
  for (int i = 0; i < 200; ++i) {
    std::string lines = fmt::format("sheet {}\nsawing 8:00-8:{}\n{}\n", write_day(make_day(2025, 1, 2) + i),
                                    30 + i % 8, board);
    const int last = i / 8 % 3 == 0 ? 6 : 7;  // lives are not all one
    if (i % 8 == last) lines += "stop 0:06 teeth\nteeth head touched-up\n";
    if (i % 16 == 15) lines += "teeth edger touched-up\n";
    sheets.push_back(lines);
  }
  return sheets;
}

}  // namespace

TEST_CASE("two saws of which one lasts twice as long, and a mill that slows as its teeth dull") {
  const auto document = answer(small_book("", slowing("2x6 10/16")), "tooth-life");
  CHECK(cell_of(document, "verdict", 0, kCompared) == "they differ");
  CHECK(document.tables.at(kPace).rows.size() == 200);
  CHECK(cell_of(document, "edger", 0, kCurve) == "100");
  CHECK(said(document) ==
        "A sharpening of the edger saw lasts about 2,560 bf: half are worn sooner, half last longer.\n"
        "At what interval sharpening costs least cannot be told: the book has no cost of a crew hour, or no "
        "sawing hours (mill file: [[cost]], per = \"crew-hour\").\n"
        "A sharpening of the head saw lasts about 1,280 bf: half are worn sooner, half last longer.\n"
        "Sharpenings last longer on the edger saw than on the head saw (2,560 bf against 1,280 bf); chance "
        "alone would "
        "do as much in fewer than 1 of 1,000 such records.\n"
        "The mill slows as the head saw dulls, by 41 bf an hour for each 1,000 bf since it was sharpened. A "
        "stop for "
        "teeth takes 6 minutes on average; by this line sharpening every 656 bf takes the least time in "
        "all.\n");
  CHECK(document.tables.at(kPace).notes.back() ==
        "Least squares: -41 bf an hour for each 1,000 bf since sharpening, -45 to -36 with 95 in 100. The "
        "cut list and the "
        "logs move the pace too.");
}

TEST_CASE("in a metric book the same is said in cubic metres") {
  const auto document = answer(
      small_book("[mill]\nname = \"Odd\"\nunits = \"metric\"\n", slowing("50x150 10/4.8")), "tooth-life");
  CHECK(
      said(document).find("The mill slows as the head saw dulls, by 0.04 m3 an hour for each m3 since it was "
                          "sharpened.") != std::string::npos);
  CHECK(said(document).find("(5.8 m3 against 2.9 m3)") != std::string::npos);
}

TEST_CASE("twenty sharpenings of 160 to 3,200 bf: half last 1,600, and the record leaves a range") {
  std::vector<std::string> lines{"teeth head touched-up\n"};
  for (int i = 1; i <= 20; ++i) lines.push_back(fmt::format("2x6 {}/16\nteeth head touched-up\n", 10 * i));
  CHECK(said(answer(small_book("", days_of(lines)), "tooth-life")) ==
        "A sharpening of the head saw lasts about 1,600 bf: half are worn sooner, half last longer; the "
        "record leaves it "
        // by hand: log-log limits of 15 of 20 and of 5 of 20
        "between 800 bf and 2,400 bf.\n"
        "At what interval sharpening costs least cannot be told: the book has no cost of a crew hour, or no "
        "sawing hours (mill file: [[cost]], per = \"crew-hour\").\n");
}

TEST_CASE("a saw whose sharpenings mostly outlast the record, and a pace that does not fall") {
  std::vector<std::string> lines{"teeth head touched-up\nteeth edger touched-up\n"};
  for (int i = 0; i < 10; ++i)
    lines.emplace_back("sawing 8:00-8:30\n2x6 10/16\nteeth head touched-up\nteeth edger touched-up\n");
  for (int i = 0; i < 12; ++i)
    lines.emplace_back("sawing 8:00-8:30\n2x6 20/16\nteeth head touched-up\nteeth edger replaced 1 metal\n");
  const auto words = said(answer(small_book("", days_of(lines)), "tooth-life"));
  CHECK(words.find("More than half the sharpenings of the edger saw outlast the record.") !=
        std::string::npos);
  CHECK(words.find("(more than the record against 320 bf); chance alone would do as much in fewer than") !=
        std::string::npos);
  CHECK(words.find("Whether the mill slows as the head saw dulls cannot be told from these days.") !=
        std::string::npos);
}

TEST_CASE("of a book without readings and without teeth both say so") {
  const auto book = small_book("", {"sheet 2026-05-04\n2x6 10/16\n"});
  CHECK(answer(book, "size-control").lead.empty());
  CHECK(answer(book, "size-control").tables.at(kSizes).when_empty.find("thick 2x6") != std::string::npos);
  CHECK(answer(book, "tooth-life").tables.at(kSaws).rows.empty());
}
