// Thickness, length and rounding conventions as a mill file names them, on published hardwood and softwood examples:
// the publication stands beside each.
#include "helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kFriday = *read_day("2026-05-08");
const SheetRef kMonday = sheet_of("2026-05-04");

/// Board feet billed at 1.00 a foot under `count`.
std::string billed_bf(const std::string& count, const std::string& lines) {
  const Draft draft =
      make_draft(terms_of("[[price]]\nbasis = \"bf\"\nrate = 1.00\ncount = { " + count + " }\n"),
                 job_terms("TER"), job_facts(tally(kMonday, "WOOD", lines)), {}, {}, kFriday);
  REQUIRE(draft.lines.size() == 1);
  CHECK(draft.total.minor == draft.lines[0].amount.minor);
  return plain(draft.lines[0].quantity);
}

constexpr const char* kExact = "rounding = \"total-hundredths\"";
const std::string kHardwood =
    "surface_measure = true, length = \"whole-foot-down\", thickness = \"next-quarter\", "
    "under_inch_as_inch = true, rounding = \"total-hundredths\"";

}  // namespace

TEST_CASE("softwood board measure: pieces x thickness x width x length / 12") {
  // source: L. H. Bailey, Farm and Garden Rule-Book, board measure (quoting The Woodsman's Handbook, USFS): 2 x 8, 18 ft = 24
  CHECK(billed_bf(kExact, "2x8: 18/1") == "24.00");
  // the same in inches throughout: 2 x 8 x 216 / 144
  CHECK(billed_bf(kExact, "2x8: 216in/1") == "24.00");
  // source: US Army Engineer subcourse EN5155, p. 1-28: four pieces 1 x 8, 14 ft = 37 1/3, under each rounding
  CHECK(billed_bf("rounding = \"total-hundredths\"", "1x8: 14/4") == "37.33");
  CHECK(billed_bf("rounding = \"line-hundredths\"", "1x8: 14/4") == "37.33");
  CHECK(billed_bf("rounding = \"total-whole\"", "1x8: 14/4") == "37");
  CHECK(billed_bf("rounding = \"line-whole\"", "1x8: 14/4") == "37");
  // source: US Navy, Engineering Aid Basic, p. 6-3: one 2 x 4, 14 ft (its answer computed here: 9 1/3)
  CHECK(billed_bf(kExact, "2x4: 14/1") == "9.33");
  // source: Idaho Board of Scaling Practices, Scale vs. Lumber Yield (Overrun): three pieces 1 x 4, 1 ft = 1
  CHECK(billed_bf(kExact, "1x4: 1/3") == "1.00");
}

TEST_CASE("softwood thinner than an inch counts as an inch where the price says so") {
  // source: L. H. Bailey, Farm and Garden Rule-Book, boards under an inch are counted as inch boards. The thicknesses are the
  // nominal ones of PS 20: 3/8, 1/2, 5/8 and 3/4 in.
  for (const char* thin : {"3/8", "1/2", "5/8", "3/4"}) {
    const std::string boards = std::string(thin) + "x12: 10/10";
    CHECK(billed_bf(std::string(kExact) + ", under_inch_as_inch = true", boards) == "100.00");
  }
  CHECK(billed_bf(kExact, "3/4x12: 10/10") == "75.00");
  CHECK(billed_bf(kExact, "3/8x12: 10/10") == "37.50");
}

TEST_CASE("dressed softwood is billed by its nominal size: the size written is the size counted") {
  // source: NIST news item, 2017: a two-by-four is 1 1/2 by 3 1/2; PS 20 gives the dressed sizes. Nominal board measure of an 8-ft
  // two-by-four is 5 1/3; measured as dressed it would be 3 1/2.
  CHECK(billed_bf(kExact, "2x4: 8/1") == "5.33");
  CHECK(billed_bf(kExact, "1-1/2x3-1/2: 8/1") == "3.50");
}

TEST_CASE("hardwood surface measure: width by whole feet over 12, to the whole foot, board by board") {
  // source: American Hardwood Export Council, measurement page: 6 1/4 in x 8 ft = 4; 2 in thick = 8 bf
  CHECK(billed_bf(kHardwood, "4/4x6-1/4: 8/1") == "4.00");
  CHECK(billed_bf(kHardwood, "8/4x6-1/4: 8/1") == "8.00");
  // source: NHLA Rules Book 2015 p. 7 para. 16: a fraction of a foot of length is dropped
  CHECK(billed_bf(kHardwood, "8/4x6-1/4: 8'6/1") == "8.00");
  // source: NHLA Rules Book 2023 p. 9 para. 18: a bundle is the sum of the surface measures by the thickness: 4 + 4 + 5, 5/4
  CHECK(billed_bf(kHardwood, "5/4x6-1/4: 8/2; 5/4x8: 8/1") == "16.25");
  // exact board measure of the same three boards is 5/4 x (100 + 64) / 12
  CHECK(billed_bf(kExact, "5/4x6-1/4: 8/2; 5/4x8: 8/1") == "17.08");
}

TEST_CASE(
    "hardwood thickness goes by quarters: dried or planed stock counts as the quarters it was sawn for") {
  // source: E. Wengert, 2001: kiln-dried rough 4/4 is 15/16, 5/4 is 1 3/16; 4/4 planed two sides 13/16
  CHECK(billed_bf(kHardwood, "15/16x12: 10/1") == "10.00");
  CHECK(billed_bf(kHardwood, "13/16x12: 10/1") == "10.00");
  CHECK(billed_bf(kHardwood, "1-3/16x12: 10/1") == "12.50");
  // source: E. Wengert, 2001: green 4/4 is sawn to 1 1/8; that is 5/4 by the step, 1 1/8 as cut, 2 by the whole inch
  CHECK(billed_bf(kHardwood, "1-1/8x12: 10/1") == "12.50");
  CHECK(billed_bf(kExact, "1-1/8x12: 10/1") == "11.25");
  CHECK(billed_bf(std::string("thickness = \"next-inch\", ") + kExact, "1-1/8x12: 10/1") == "20.00");
}

TEST_CASE("an exact half of a foot of surface measure goes up") {
  // 6 in x 9 ft is 4 1/2. AHEC gives halves alternately up and down over a bundle; here each goes up (our own rule)
  CHECK(billed_bf(kHardwood, "4/4x6: 9/1") == "5.00");
  CHECK(billed_bf(kHardwood, "4/4x6: 9/2") == "10.00");
}

TEST_CASE("a tally by the thousand: M is a thousand board feet") {
  // source: E. Wengert, 2001: money = bf / 1000 x price; his five sizes (Value-Added Processing): 220 + 352 + 242 + 160 + 24 bf
  const Draft draft = make_draft(
      terms_of("[[price]]\nbasis = \"mbf\"\nrate = 450\n"), job_terms("TER"),
      job_facts(tally(kMonday, "WOOD", "1x12: 220/1; 2x12: 176/1; 1x6: 484/1; 1x4: 480/1; 2x6: 24/1")), {},
      {}, kFriday);
  CHECK(draft.lines.at(0).quantity == Decimal{998, 3});
  CHECK(draft.total.minor == 44910);
}

TEST_CASE("cubic metres of lumber: 1 bf is 0.002359737216 m3") {
  // exact, from 1 in = 25.4 mm (international yard and pound agreement, 1959): 423.776 bf to the cubic metre
  const Draft draft = make_draft(terms_of("[[price]]\nbasis = \"m3-sawn\"\nrate = 1000\n"), job_terms("TER"),
                                 job_facts(tally(kMonday, "WOOD", "12x12: 100/353")), {}, {}, kFriday);
  // 423,600 bf = 999.584684... m3
  CHECK(draft.lines.at(0).quantity == Decimal{999585, 3});
}

TEST_CASE("lineal feet go by the length convention and its rounding, and say so") {
  const auto feet = [](const std::string& count) {
    const Draft draft = make_draft(
        terms_of("[[price]]\nbasis = \"lineal-foot\"\nrate = 1\ncount = { " + count + " }\n"),
        job_terms("TER"), job_facts(tally(kMonday, "WOOD", "1x6: 8'7/3; 1x4: 10'3/2")), {}, {}, kFriday);
    return plain(draft.lines.at(0).quantity) + " " + draft.lines.at(0).counted;
  };
  // 3 x 8 7/12 + 2 x 10 1/4 = 46 1/4
  CHECK(feet("rounding = \"total-hundredths\"") ==
        "46.25 lengths as written; only the total is rounded, to hundredths of a foot");
  CHECK(feet("rounding = \"total-whole\"") ==
        "46 lengths as written; only the total is rounded, to the whole foot");
  // 25 3/4 and 20 1/2, each a line
  CHECK(feet("rounding = \"line-whole\"") ==
        "47 lengths as written; each line rounded to the whole foot, the total adds the lines");
  CHECK(feet("rounding = \"total-whole\", length = \"whole-foot-down\"") ==
        "44 lengths down to the whole foot; only the total is rounded, to the whole foot");
}
