// The report of where the wood went: the demo week's trap in a sentence, a run worked by hand, and what is doubtful told.
#include <doctest/doctest.h>

#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr const char* kMill =
    "[[saw]]\nrole = \"head\"\nkerf = 0.25\n[[saw]]\nrole = \"edger\"\nkerf = 0.1875\n";

std::string notes_of(const render::Document& document, std::size_t at) {
  std::string out;
  for (const auto& note : document.tables.at(at).notes) out += note + "\n";
  return out;
}

}  // namespace

TEST_CASE(
    "the demo week: 58 parts lumber; Thursday's best overrun is told to be the worse recovery, and why") {
  const auto document = answer(demo_week(), "where-wood-went");
  REQUIRE(document.lead.size() == 2);
  CHECK(document.lead[0] ==
        "Of 100 parts of log 58 went into lumber, 12 into sawdust and 30 into slabs, edgings and trim.");
  CHECK(
      document.lead[1] ==
      "The best overrun, +38.5 % (QHH WH on 2026-05-07), is not good recovery: its boards are counted at "
      "their "
      "nominal size and cut smaller, so only 53.5 % of those logs went into boards, against 58.3 % of all.");
  CHECK(column_of(document, "lumber_percent", 1) == "59.9 56.9 51.6 60.7 53.5 62.1 60.9 57.8");
}

TEST_CASE("one size, worked by hand: ten boards of 2x6x16 with kerfs of 1/4 and 3/16") {
  const auto book = small_book(kMill, {"sheet 2026-05-04\nlog 15x16\n2x6 10/16\n"});
  const auto document = answer(book, "where-wood-went");
  // lumber 160 x 12 in2 / 144; dust 160 x (6/4 + 2 x 3/16 + 3/64) in2 / 144
  CHECK(cell_of(document, "lumber_ft3", 0) == "13.3");
  CHECK(cell_of(document, "sawdust_ft3", 0) == "2.1");  // 2.135
  CHECK(cell_of(document, "head_kerf", 0) == "0.250");
  CHECK(cell_of(document, "edger_kerf", 0) == "0.188");
  CHECK(document.lead.size() == 1);
}

TEST_CASE("a set-up's own kerf goes before the mill file's, and a third saw adds its cut") {
  const auto dust = [](const std::string& mill, const std::string& line) {
    const auto book = small_book(mill, {"sheet 2026-05-04\n" + line + "log 24x16\n2x6 40/16\n"});
    return cell_of(answer(book, "where-wood-went"), "sawdust_ft3", 0);
  };
  CHECK(dust(kMill, "") == "8.5");                    // 640 x 1.921875 / 144
  CHECK(dust(kMill, "setup A kerf 0.3\n") == "9.9");  // 640 x (1.8 + 0.375 + 0.05625) / 144 = 9.917
  CHECK(dust(std::string(kMill) + "[[saw]]\nrole = \"third\"\nkerf = 0.1875\n", "") ==
        "10.4");  // 640 x (1.921875 + 2.25 x 0.1875) / 144
}

TEST_CASE(
    "more wood out than in is flagged as a fault of measuring, with the run, and stays in the figures") {
  const auto book = small_book(kMill, {"sheet 2026-05-04\njob own\nspecies DF\nlog 10x8\n2x6 20/16\n"});
  const auto document = answer(book, "where-wood-went");
  CHECK(document.lead.at(0) ==
        "More wood is tallied than the logs held: something is measured wrongly or missing from the book.");
  CHECK(notes_of(document, 1)
            .find("own DF on 2026-05-04: more wood out than the logs held. A log or a board is "
                  "measured wrongly, or a log is not in the book.") != std::string::npos);
  CHECK(cell_of(document, "rest_ft3", 0).starts_with("-"));
}

TEST_CASE("a kerf that nobody wrote down is told with what is taken for it") {
  const auto book = small_book("", {"sheet 2026-05-04\nlog 15x16\n2x6 10/16\n"});
  const auto document = answer(book, "where-wood-went");
  CHECK(notes_of(document, 0)
            .find("The kerf of set-up - is not in the book; a quarter inch is taken (common practice, no "
                  "source).") != std::string::npos);
}

TEST_CASE("boards taken off again leave neither lumber nor dust of theirs") {
  const auto one = answer(small_book(kMill, {"sheet 2026-05-04\nlog 15x16\n2x6 10/16\n"}), "where-wood-went");
  const auto less = answer(small_book(kMill, {"sheet 2026-05-04\nlog 15x16\n2x6 12/16\nless 2x6 2/16\n"}),
                           "where-wood-went");
  for (const char* column : {"lumber_ft3", "sawdust_ft3", "rest_ft3"})
    CHECK(cell_of(less, column, 0) == cell_of(one, column, 0));
}

TEST_CASE("each run is reckoned with the kerfs of its own day: a set-up's later kerf is a row of its own") {
  const auto book =
      small_book(kMill, {"sheet 2026-05-04\nsetup A kerf 0.3 edger 0.2 third 0.15\nlog 24x16\n2x6 40/16\n",
                         "sheet 2026-05-05\nsetup A kerf 0.25\nlog 24x16\n2x6 40/16\n"});
  const auto document = answer(book, "where-wood-went");
  REQUIRE(document.tables.at(0).rows.size() == 2);
  CHECK(column_of(document, "head_kerf") == "0.300 0.250");
  CHECK(column_of(document, "edger_kerf") == "0.200 0.200");
  CHECK(column_of(document, "third_kerf") == "0.150 0.150");
  // 640 x (2.3 x 6.35 - 12) / 144, 640 x (2.25 x 6.35 - 12) / 144
  CHECK(column_of(document, "sawdust_ft3") == "11.6 10.2");
}

TEST_CASE("residue is held against what the logs left: slabs against the rest, dust against the dust") {
  const auto book =
      small_book(kMill, {"sheet 2026-05-04\nlog 15x16\n2x6 10/16\nresidue slabs 0.05 cord\n"
                         "residue sawdust 0.1 yd3\nresidue sawdust 0.1 yd3\nresidue bark 2 ft3\n"});
  const auto document = answer(book, "where-wood-went");
  CHECK(column_of(document, "kind", 2) == "bark sawdust slabs");
  CHECK(column_of(document, "solid_ft3", 2) == "0.8 2.2 3.8");  // 2 / 2.5; 5.4 / 2.5; 0.05 x 75
  CHECK(column_of(document, "of", 2) == "- sawdust rest");
  CHECK(cell_of(document, "share_percent", 1, 2) == "101.1");  // 2.16 of 2.137, the edger at 0.188
  CHECK(document.lead.at(1).starts_with(
      "What was taken away of slabs, edgings, trim and chips holds about 4 ft3 of wood, "));
  CHECK(document.lead.at(2) ==
        "What was taken away of sawdust holds about 2 ft3 of wood, 101 % of what the logs left.");
}

TEST_CASE("more residue than the logs left is told, and of one species or site none is shown") {
  const auto book =
      small_book(kMill, {"sheet 2026-05-04\nspecies DF\nlog 15x16\n2x6 10/16\nresidue sawdust 1 yd3\n"});
  CHECK(answer(book, "where-wood-went")
            .lead.at(1)
            .ends_with(" % of what the logs left: more than there was, so a heap, a log or a board is "
                       "measured wrongly, or it came of other logs."));
  Ask fir;
  fir.species = "DF";
  CHECK(answer(book, "where-wood-went", fir).tables.at(2).rows.empty());
}

TEST_CASE("in a metric book the wood of residue is told in m3") {
  const auto book = small_book("[mill]\nunits = \"metric\"\n[[saw]]\nrole = \"head\"\nkerf = 6\n",
                               {"sheet 2026-05-04\nlog 60x4.8\n50x150 10/4.8\nresidue slabs 1 m3\n"});
  // 75 / 128 of a cubic metre
  CHECK(
      answer(book, "where-wood-went")
          .lead.at(1)
          .starts_with("What was taken away of slabs, edgings, trim and chips holds about 0.6 m3 of wood, "));
}
