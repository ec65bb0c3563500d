// mill_refusals_test.cpp -- what is said of the rarer slips of a mill file, word for word, and of texts that are none.
#include <doctest/doctest.h>

#include <string>

#include "base/error.h"
#include "mill/mill.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::book;

/// `line:column what; instead` of everything found, one a line.
std::string found_in(const std::string& toml) {
  std::string out;
  for (const auto& found : read_mill(toml).found)
    out += std::to_string(found.place.line) + ":" + std::to_string(found.place.column) + " " + found.what +
           (found.instead.empty() ? "" : "; " + found.instead) + "\n";
  return out;
}

std::string repeated(const std::string& text, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

TEST_CASE("a value of the wrong kind says which kind is wanted, and a table how it is written") {
  CHECK(found_in("[mill]\nname = true\n") == "2:8 a text is wanted here; write it in quotes: \"...\"\n");
  CHECK(found_in("[mill]\nterms = [\"\"]\n") == "2:11 an empty text in a list; leave it out\n");
  CHECK(found_in("[[cost]]\nname = \"Bess\"\nrate = 22\nper = \"crew-hour\"\nfrom = \"May\"\n") ==
        "5:8 'from' is no day; write it as 2026-05-04\n");
  CHECK(found_in("[[mill]]\nname = \"Q\"\n") ==
        "1:1 [[mill]] stands once; write [mill], with single brackets\n");
  CHECK(found_in("mill = \"Q\"\n") == "1:8 'mill' is a table; write mill = { ... } or [mill]\n");
  CHECK(found_in("saw = [\"head\"]\n") == "1:8 [[saw]] is a table; write [[saw]] above its own keys\n");
  CHECK(found_in("[[cost]]\nname = \"Mill\"\nrate = 4800\nper = \"year\"\ndays = 400\n") ==
        "5:8 'days' is '400'; write a whole number from 1 to 366\n");
}

TEST_CASE("money is written with marks that can be told from each other") {
  const std::string mark = "[mill]\ncurrency = { sign = \"kr\", mark = ";
  CHECK(found_in(mark + "\";\" }\n") ==
        "2:35 ';' is not a mark between digits; write \".\", \",\", \"'\", \"blank\" or \"none\"\n");
  CHECK(found_in(mark + "\"none\" }\n") ==
        "2:34 decimals need a mark before them; write mark = \",\" with thousands = \".\" or \"blank\"\n");
  CHECK(found_in(mark + "\",\", thousands = \",\" }\n") ==
        "2:34 the mark before the decimals is the one between thousands; write mark = \",\" with thousands = "
        "\".\" or \"blank\"\n");
}

TEST_CASE("saws have a role of their own each, and a kerf a saw has") {
  CHECK(found_in("[[saw]]\nteeth = 40\n") ==
        "1:1 a [[saw]] without a role; write role = \"head\", \"edger\" or \"third\"\n");
  CHECK(found_in("[[saw]]\nrole = \"head\"\n[[saw]]\nrole = \"Head\"\n") ==
        "4:8 a second saw called 'Head'; give each saw a name of its own\n");
  CHECK(found_in("[[saw]]\nrole = \"head\"\nkerf = 5\n") ==
        "3:8 a kerf over an inch; 5/16 in is kerf = \"5/16\"\n");
  CHECK(found_in("[mill]\nunits = \"metric\"\n[[saw]]\nrole = \"head\"\nkerf = 51\n") ==
        "5:8 a kerf over 25 mm; 5 mm is kerf = 5\n");
  std::string many;
  for (int i = 1; i <= 21; ++i) many += "[[saw]]\nrole = \"s" + std::to_string(i) + "\"\n";
  CHECK(found_in(many) == "41:1 more than 20 saws; leave out those that are no longer used\n");
}

TEST_CASE("species, grades and sizes stand once, and a target near its size") {
  CHECK(found_in("[species]\nDF = \"Douglas fir\"\ndf = \"fir\"\n") ==
        "3:6 'df' stands twice; a sheet does not tell capitals from small letters\n");
  CHECK(found_in("[lumber.target]\n\"2x6\" = \"1-5/8x3-5/8\"\n") ==
        "2:9 a 2x6 cut to '1-5/8x3-5/8' is over an inch off; look at both sizes again\n");
  CHECK(found_in("[lumber.target]\n\"2y6\" = \"2x6\"\n") ==
        "2:9 2y6: '2y6' has no width; write thickness x width, as 2x6\n");
  const std::string most = "; name those that are sawn often\n";
  CHECK(found_in("[lumber]\nsizes = [" + repeated("\"2x6\",\n", 1001) + "]\n") ==
        "2:9 more than 1,000 sizes" + most);
  std::string targets = "[lumber.target]\n";
  for (int i = 1; i <= 1001; ++i) targets += "\"2x" + std::to_string(i) + "\" = \"2x6\"\n";
  CHECK(found_in(targets) == "1:1 more than 1,000 sizes" + most);
}

TEST_CASE("a taper is a log's, and a rule one that is built or the mill's own") {
  CHECK(found_in("[recovery]\ntaper = 13\n") ==
        "2:9 '13' is more taper than a log has; write inches per foot, as 1/8\n");
  CHECK(found_in("[mill]\nunits = \"metric\"\n[recovery]\ntaper = 1001\n") ==
        "4:9 '1001' is more taper than a log has; write mm per m, as 10\n");
  CHECK(found_in("[[practice]]\nname = \"ours\"\nrule = \"doyle\"\n[scale]\nrule = \"oursx\"\n") ==
        "5:9 'oursx' is no log rule here; did you mean ours?\n");
  CHECK(found_in("[scale]\nrule = \"doile\"\n") ==
        "2:9 there is no log rule 'doile'; the nearest is doyle\n");
  CHECK(found_in("[scale]\nname = \"doyle\"\n") ==
        "2:8 'doyle' is the name of a built-in practice; choose another\n");
}

TEST_CASE("a cost goes by something this mill counts, and a service has a name of its own") {
  CHECK(found_in("[[cost]]\nname = \"Bess\"\nrate = 22\n") ==
        "1:1 a [[cost]] that goes by nothing; write per = \"crew-hour\"\n");
  CHECK(found_in("[mill]\nunits = \"metric\"\n[[cost]]\nname = \"Wear\"\nrate = 22\nper = \"MBF\"\n") ==
        "6:7 this mill's lumber is not counted by MBF; write per = \"m3\"\n");
  CHECK(found_in("[[cost]]\nname = \"Bess\"\nper = \"crew-hour\"\n") ==
        "1:1 a [[cost]] needs a rate without a minus; write rate = 24.00\n");
  CHECK(found_in("[[service]]\nname = \"oil\"\nevery = 50\n[[service]]\nname = \"Oil\"\nevery = 60\n") ==
        "5:8 a second [[service]] called 'Oil'; give each a name of its own\n");
}

TEST_CASE("a job's customer that nothing is near is to be added") {
  CHECK(found_in("[[job]]\ncode = \"BARN\"\ncustomer = \"TERVANE\"\n") ==
        "3:12 no [[customer]] has the code 'TERVANE'; add one, with its name and address\n");
}

TEST_CASE("a cut list that is posted and can no longer be read is a fault of the book, and told as one") {
  const CutList posted({"2x6 24"}, false);
  CHECK_THROWS_WITH_AS(static_cast<void>(posted.size()),
                       "the cut list of the mill file in the book: '2x6 24': pieces without a length",
                       Failed);
}

TEST_CASE("a text that is no mill file is told with its first fault, and not gone into") {
  CHECK(found_in("a = " + repeated("[", 21) + "\n") ==
        "1:25 brackets within brackets, more than 20 deep; close them\n");
  CHECK(found_in("a" + repeated(".a", 20) + " = 1\n") ==
        "1:40 a key of more than 20 parts; a mill file's keys have two or three\n");
  CHECK(found_in("[mill]\nname = \"Q\"\n[=\n") ==
        "3:0 this is not TOML; write key = \"value\" lines under [table] headers\n");
  CHECK(found_in(repeated("# a line of sixty-four letters, to have a text that is too large\n", 70'000)) ==
        "0:0 longer than a mill file may be, 4 MiB; is it the right file?\n");
  CHECK(found_in(repeated("\n", 100'001)) ==
        "0:0 more lines than a mill file may have, 100,000; is it the right file?\n");
}

}  // namespace
