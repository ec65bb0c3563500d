// What the work costs and brings, what is due by engine hours, and the lumber on the yard: figures worked by hand, and
// the unit costs of two published examples.
#include <doctest/doctest.h>

#include "demo.h"
#include "office/office.h"
#include "office/unbilled.h"
#include "render/cell.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

/// A table of a report as text: cells as shown, hidden columns left out, blank where a total has none.
std::string shown(const render::Document& document, std::size_t at = 0) {
  const auto& table = document.tables.at(at);
  std::string out;
  const auto show = [&](const std::vector<render::Cell>& cells, bool total) {
    std::string row;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
      if (table.columns[c].hidden) continue;
      const bool blank = total && std::holds_alternative<std::monostate>(cells.at(c));
      row += "|" + (blank ? "" : render::shown_cell(cells.at(c), table.columns[c], document.style));
    }
    out += row + "|\n";
  };
  for (const auto& row : table.rows) show(row.cells, false);
  if (!table.totals.empty()) show(table.totals, true);
  return out;
}

render::Document run(const book::Book& book, const std::string& name, const Ask& ask = {},
                     Day today = kToday) {
  render::Style style;
  style.currency = book.mill().currency;
  return run_report(find_report(all_reports(""), name), book, ask, style, today);
}

book::Book book_of(const std::string& mill, const std::vector<std::string>& sheets) {
  auto book = book::Book::create(fresh_file("money.book"), on_friday());
  book.post_mill(mill, "");
  for (const auto& sheet : sheets) book.post_sheet(sheet, "");
  billing::register_unbilled(book, kToday);
  return book;
}

}  // namespace

TEST_CASE(
    "14.3 minutes a thousand at 6.33 cents a minute cost 90.5 cents (Garver and Miller, FPL, May 1933)") {
  // source: R. D. Garver and R. H. Miller, Forest Products Laboratory, 1933
  const auto book = book_of(R"(
[mill]
currency = { sign = "$", places = 3 }
[[cost]]
name = "Mill time"
rate = 3.798   # 60 x 6.33 cents
per = "sawing-hour"
)",
                            {"sheet 2026-05-04\nrun 7:00-9:23\n2x12x10 500\n"});  // 143 minutes, 10 MBF
  const auto document = run(book, "cost");
  CHECK(shown(document) ==
        "|Mill time|2.38|sawing hour|$3.798|$9.052|$0.905|100.0|\n"
        "|||||$9.052|$0.905|100.0|\n");
}

TEST_CASE("60 an hour over 100 m3 an hour is 0.60 a m3 (FAO Forestry Paper 99, chapter 3)") {
  // source: FAO Forestry Paper 99, chapter 3
  const auto book = book_of(R"(
[mill]
units = "metric"
[[cost]]
name = "Machine"
rate = 60
per = "sawing-hour"
)",
                            {"sheet 2026-05-04\nrun 7:00-8:00\n100x200 1000/5\n"});  // 0.1 m3 a board
  const auto document = run(book, "cost");
  CHECK(document.tables[0].columns[5].heading == "Cost per m³");
  CHECK(shown(document).starts_with("|Machine|1.00|sawing hour|$60.00|$60.00|$0.60|"));
}

TEST_CASE(
    "a hand with a wage of its own has that one, the others the common one, and a later rate takes over") {
  const auto book = book_of(R"(
[[cost]]
name = "Wages"
rate = 20
per = "crew-hour"
[[cost]]
name = "Wages"
rate = 21
per = "crew-hour"
from = 2026-05-06
[[cost]]
name = "Bess"
rate = 25
per = "crew-hour"
hand = "bess"
[[cost]]
name = "Insurance"
rate = 1100
per = "year"
days = 110
)",
                            {"sheet 2026-05-05\ncrew Bess 8, Quill 10, Dace 2\n2x12x10 50\n",
                             "sheet 2026-05-06\ncrew Bess 8, Quill 10\n2x12x10 50\n"});
  CHECK(shown(run(book, "cost")) ==
        "|Wages|12.00|crew hour|$20.00|$240.00|$120.00|27.6|\n"
        "|Wages|10.00|crew hour|$21.00|$210.00|$105.00|24.1|\n"
        "|Bess|16.00|crew hour|$25.00|$400.00|$200.00|46.0|\n"
        "|Insurance|2.00|day sawn|$10.00|$20.00|$10.00|2.3|\n"
        "|||||$870.00|$435.00|100.0|\n");
}

TEST_CASE(
    "fuel costs what a sheet says was paid, else the mill file's price; engine hours count between "
    "readings") {
  const auto book = book_of(R"(
[[cost]]
name = "Fuel"
rate = 4
per = "gallon"
[[cost]]
name = "Wear"
rate = 5
per = "engine-hour"
)",
                            {"sheet 2026-05-05\nmeter 100.0\nmeter 106.5\nfuel 10 gal\n2x12x10 50\n",
                             "sheet 2026-05-06\nmeter 110.0\nfuel 5 gal 21.55\n2x12x10 50\n"});
  Ask second;
  second.from = second.to = make_day(2026, 5, 6);
  CHECK(shown(run(book, "cost")).starts_with("|Fuel|10.00|gal|$4.00|$40.00|$20.00|35.9|\n"));
  CHECK(shown(run(book, "cost", second)) ==
        "|Wear|3.50|engine hour|$5.00|$17.50|$17.50|44.8|\n"
        "|Fuel, as paid on the sheets|5.00|gal|-|$21.55|$21.55|55.2|\n"
        "|||||$39.05|$39.05|100.0|\n");
}

TEST_CASE("a service is due so many engine hours after the last stop for it; overdue is below nothing") {
  const auto book = book_of(R"(
[[service]]
name = "oil"
every = 50
[[service]]
name = "grease"
every = 8
[[service]]
name = "filter"
every = 200
)",
                            {"sheet 2026-05-04\nmeter 1000\nstop 0:30 service Oil and grease\n",
                             "sheet 2026-05-05\nmeter 1012.5\nstop 0:10 service belts\n"});
  CHECK(shown(run(book, "upkeep"), 1) ==
        "|oil|50.0|2026-05-04|12.5|37.5|\n"
        "|grease|8.0|2026-05-04|12.5|-4.5|\n"
        "|filter|200.0|-|-|-|\n");
}

TEST_CASE("the demo jobs bring by the hour what was charged over their hours, issued or not") {
  auto book = demo_week();
  billing::issue_invoice(book, "TER", kToday, kToday);
  billing::register_unbilled(book, kToday);
  // Crew: TER all of Monday and Tuesday (36 h) and 1.50 of Wednesday's 3.25 sawing hours: 18 x 1.5 / 3.25 = 8.31.
  CHECK(shown(run(book, "earnings")) ==
        "|QHH|Hall framing, finish size|-|$554.36|$554.36|893.33|$0.621|3.00|$184.79|9.50|$58.35|\n"
        "|TER|Barn, full dimension|$1,882.31|-|$1,882.31|3,043.33|$0.619|12.50|$150.58|44.31|$42.48|\n"
        "|||$1,882.31|$554.36|$2,436.67|3,936.67|$0.619|15.50|$157.20|53.81|$45.28|\n");
}

TEST_CASE("a partly credited invoice counts less the credit, tax apart") {
  auto book = book_of(R"(
[[customer]]
code = "A"
name = "Ama Quist"
[[job]]
code = "A"
customer = "A"
[[price]]
basis = "bf"
rate = 0.50
job = "A"
[[tax]]
name = "Tax"
rate = 10
on = ["sawing"]
)",
                      {"sheet 2026-05-04\njob A\nrun 7:00-9:00\n2x12x10 10\n"});
  CHECK(shown(run(book, "earnings")).starts_with("|A|-|-|$100.00|"));  // 200 bf; the tax is not the mill's
  billing::issue_invoice(book, "A", kToday, kToday);
  billing::credit_invoice(book, 1, measure::Money{1100}, "wane", kToday);
  billing::register_unbilled(book, kToday);
  CHECK(shown(run(book, "earnings")).starts_with("|A|-|$90.00|-|$90.00|200.00|$0.450|2.00|$45.00|-|-|\n"));
}

TEST_CASE("stock is what was cut and came from shares, less what was sold; a load slip takes a bundle once") {
  auto book = demo_week();
  billing::divide_lumber(book, "MUM", kToday, kToday);
  billing::load(book, {"QHH", {}, "", "", ""}, kToday);
  CHECK_THROWS_WITH(billing::load(book, {"QHH", {}, "", "", ""}, kToday),
                    "job QHH: nothing to load up to 2026-05-08; all of it went with earlier load slips");
  const auto document = run(book, "stock");
  // 114 cut + 67 from shares - 6 sold; 1,591.67 + 480.42 - 96.00 = 1,976.08 3/4 rounded once
  CHECK(shown(document).ends_with("||||||0|114|67|6|0|175||1,976.08|\n"));
  CHECK(shown(document, 2) ==
        "|MUM|-|133|67|0|66|478.00|\n"
        "|QHH|-|68|0|68|0|0.00|\n"
        "|TER|-|208|0|0|208|3,043.33|\n"
        "|||409|67|68|274|3,521.33|\n");
}

TEST_CASE("stock by bundle: before, cut, sold; a sale from no bundle is told; lineal feet have no pieces") {
  auto book = book_of("[[job]]\ncode = \"own\"\n",
                      {"sheet 2026-05-01\njob own\nspecies DF\nbundle B1\n2x6 10/16\nbundle B2\n1x3 240lf\n",
                       "sheet 2026-05-05\njob own\nspecies DF\nbundle B1\n2x6 5/16\nsold Ferrin 2x6 3/16\n"
                       "bundle -\nsold Ferrin 2x6 1/16\n",
                       "sheet 2026-05-09\njob own\nspecies DF\nbundle B2\nsold Ferrin 1x3 260lf\n"});
  Ask may;
  may.from = make_day(2026, 5, 5);
  may.to = make_day(2026, 5, 8);
  const auto document = run(book, "stock", may);
  CHECK(shown(document) ==
        "|-|DF|-|2x6|16|0|0|0|1|0|-1|-|-16.00|\n"
        "|B1|DF|-|2x6|16|10|5|0|3|0|12|-|192.00|\n"
        "|B2|DF|-|1x3|-|0|0|0|0|0|0|240|60.00|\n"
        "||||||10|5|0|4|0|11||236.00|\n");
  CHECK(document.tables[0].notes ==
        std::vector<std::string>{"More sold than there is, below 0 on hand: DF 2x6 of no bundle."});
  CHECK(run(book, "stock").tables[0].notes ==
        std::vector<std::string>{"More sold than there is, below 0 on hand: DF 2x6 of no bundle.",
                                 "More sold than there is, below 0 on hand: DF 1x3 of bundle B2."});
}

TEST_CASE(
    "a bundle sold whole takes out of the stock what lay in it, and what is cut for its tag after stays") {
  auto book = book_of(
      "[[job]]\ncode = \"own\"\n",
      {"sheet 2026-05-01\njob own\nspecies DF\nbundle B1\n2x6 10/16 4/12\n1x3 240lf\nbundle B2\n2x8 7/16\n",
       "sheet 2026-05-05\njob own\nspecies DF\nbundle B1\n2x6 5/16\nsold Ferrin 2x6 3/16\n",
       "sheet 2026-05-06\njob own\nspecies DF\nsold Ferrin bundle B1 at 240\nbundle B1\n2x6 2/16\n"});
  const auto document = run(book, "stock");
  // B1 was sold with 12 of 2x6x16, 4 of 2x6x12 and the 240 ft; 2 were cut for it since
  CHECK(shown(document) ==
        "|B1|DF|-|1x3|-|0|0|0|0|0|0|0|0.00|\n"
        "|B1|DF|-|2x6|12|0|4|0|4|0|0|-|0.00|\n"
        "|B1|DF|-|2x6|16|0|17|0|15|0|2|-|32.00|\n"
        "|B2|DF|-|2x8|16|0|7|0|0|0|7|-|149.33|\n"
        "||||||0|28|0|19|0|9||181.33|\n");
}

TEST_CASE("logs of two origins sawn on one day stand on two lines of the year's volume") {
  auto book = book_of("[species]\nDF = { name = \"fir\", group = \"fir\" }\n",
                      {"sheet 2026-05-01\nspecies DF\nin A1 15x12 from Tannet\nin A2 15x12 from Orlow\nin A3 "
                       "15x12 from Tannet\n",
                       "sheet 2026-05-04\nspecies DF\nlog A1\nlog A2\nlog A3\n2x6 10/12\n"});
  // a log is pi/4 x (15^2 + 16.5^2) / 2 / 144 x 12 = 16.27 ft3, 1/8 in taper a foot
  CHECK(shown(run(book, "year")) ==
        "|2026|fir|Orlow|international-quarter|1|115|16.3|\n"
        "|2026|fir|Tannet|international-quarter|2|230|32.5|\n"
        "|||||3|345|48.8|\n");
}
