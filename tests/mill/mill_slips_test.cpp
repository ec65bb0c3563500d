// mill_slips_test.cpp -- what is wrong in a mill file is found, all of it at once, each slip at its place.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <vector>

#include "mill/mill.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::book;

/// `line:column what; instead` of everything found, one a line.
std::string found_in(const std::string& toml) {
  std::string out;
  for (const auto& found : read_mill(toml).found) {
    out += std::to_string(found.place.line) + ":" + std::to_string(found.place.column) + " " + found.what;
    if (!found.instead.empty()) out += "; " + found.instead;
    out += "\n";
  }
  return out;
}

TEST_CASE("every slip is found at once, each at its line and column") {
  CHECK(found_in(R"([mill]
nmae = "Q. Hargan"
units = "inches"
season = "02-30"
[saw]
role = "head"
[[saw2]]
[capacity]
longest_log = "7-1/2"
bf_a_day = "many"
[lumber]
sizes = ["2x6", "2y6", "2x6x16"]
[count]
under_inch_as_inch = "yes"
roundig = "total-whole"
)") == "2:1 'nmae' is no key of [mill]; did you mean name?\n"
       "3:10 'inches' is not a word for this; did you mean inch?\n"
       "4:11 '02-30' is no day of every year; write month and day, as 04-01\n"
       "5:1 [[saw]] may stand more than once; write [[saw]], with double brackets\n"
       "7:3 'saw2' is no key of a mill file; did you mean saw?\n"
       "9:16 '7-1/2' could be a part of a foot or inches; write 7'6\" or 7'1/2\"\n"
       "10:13 'bf_a_day' is 'many'; write a whole number from 1 to 1000000\n"
       "12:21 '2y6' has no width; write thickness x width, as 2x6\n"
       "12:28 '2x6x16' has a length too; write only the size here, as 2x6\n"
       "14:22 'under_inch_as_inch' is yes or no; write true or false, without quotes\n"
       "15:1 'roundig' is no key of [count]; did you mean rounding?\n");
}

TEST_CASE("jobs and customers that do not fit together are found") {
  CHECK(found_in(R"([[customer]]
code = "TER"
[[customer]]
code = "ter"
[[customer]]
name = "Nobody"
[[job]]
code = "BARN"
customer = "TRE"
rule = "doile"
cut_list = ["2x6x16 12", "2x6 24", "job TER"]
[[job]]
code = "OLD BARN"
owner = "customer"
)") == "4:8 a second [[customer]] with the code 'ter'; give each a code of its own\n"
       "5:1 [[customer]] without a code; write code = \"TER\": the word a sheet calls it by\n"
       "9:12 no [[customer]] has the code 'TRE'; did you mean TER?\n"
       "10:8 'doile' is no log rule; did you mean doyle?\n"
       "11:31 '2x6 24': pieces without a length; write 24/16, or 2x6x16 24\n"
       "11:37 'job TER' is no line of a cut list; write it as \"2x6x16 12\" or \"2x6 12/16 8/12\"\n"
       "13:8 the code 'OLD BARN' has a blank in it; write one word, as \"TER\"\n"
       "14:9 wood of a customer, and no customer; write customer = \"TER\"\n");
}

TEST_CASE("rules and practices that cannot be are found") {
  CHECK(found_in(R"([[practice]]
rule = "doyle"
[[practice]]
name = "doyle"
rule = "doyle"
[[practice]]
name = "ours"
[[practice]]
name = "Ours"
rule = "doyle"
diameter = "dwn"
merchantable_percent = 120
[scale]
round_to = 3
)") == "1:1 a [[practice]] without a name; write name = \"our-scribner\"\n"
       "4:8 'doyle' is the name of a built-in practice; choose another\n"
       "6:1 a [[practice]] without a rule; write rule = \"scribner-c\", or another rule\n"
       "9:8 a second practice called 'Ours'; choose another name\n"
       "11:13 'dwn' is not a word for this; did you mean down?\n"
       "12:24 '120' is no percentage; write it as 50 or 33-1/3\n"
       "14:12 '3' is not a word for this; write one of exact, 1, 5, 10, 0.01, 0.001\n");
}

TEST_CASE("what is only doubtful is a warning: a kerf of 5 inches, a target an inch off") {
  const ReadMill read =
      read_mill("[[saw]]\nrole = \"head\"\nkerf = 5\n[lumber.target]\n\"2x6\" = \"1-5/8x3-5/8\"\n");
  REQUIRE(read.found.size() == 2);
  CHECK_FALSE(has_error(read.found));
  CHECK(read.found[0].place == Place{3, 8});
  CHECK(read.found[1].place == Place{5, 9});
}

TEST_CASE("a cost says what it goes by, and a year's cost over how many days") {
  CHECK(
      found_in(R"([[cost]]
name = "Mill"
rate = 4800
per = "year"
[[cost]]
rate = -2
per = "hour"
[[cost]]
name = "Bess"
rate = 22
per = "crew-hour"
saw = "head"
[[cost]]
name = "bess"
rate = 23
per = "m3"
[[service]]
name = "oil"
every = 0
)") ==
      R"(4:7 a year's cost without the days it is spread over; write days = 120, the days a year the mill saws
5:1 a [[cost]] without a name; write name = "Insurance"
6:8 a [[cost]] needs a rate without a minus; write rate = 24.00
7:8 'hour' is nothing a cost goes by; one of crew-hour, sawing-hour, engine-hour, day, year, MBF, m3, log, tooth, gallon, litre, mile, km
12:1 'saw' is no key of [[cost]]; its keys are name, rate, from, per, hand
14:8 a second [[cost]] called 'bess' from the same day; give it a name of its own, or a first day, as from = 2026-07-01
16:7 this mill's lumber is not counted by m3; write per = "MBF"
19:9 a [[service]] needs its engine hours, above nothing; write every = 50
)");
}

TEST_CASE("a text that is no TOML is one error with its place") {
  CHECK(found_in("[mill]\nname = Hargan\n").starts_with("2:8 this is not TOML: "));
  CHECK(found_in("[mill]\nname = 10%\"ÖST\"\n") ==
        "2:11 '\"' stands in the middle of a value; put the whole value in quotes: \"...\"\n");
  CHECK(found_in("[mill]\nname = \"a\" # \"b\" 'c'\n").empty());
  CHECK(found_in("[mill]\nname = '''it's'''\n[lumber]\nsizes = [\"2x4\",\n \"2x6\"]\n[species]\n\"DF\" = "
                 "{\"name\" = 'fir', group = \"x\"}\n")
            .empty());
  CHECK(found_in("[mill]\nname = \"Q\"\n[=\n").starts_with("3:0 this is not TOML; "));
  CHECK(found_in("[mill]\nname = \"Q\"\nsizes = [\"2x6\"").starts_with("3:15 this is not TOML: "));
  CHECK(found_in("[mill]\n[mill]\n").starts_with("2:"));
}

TEST_CASE("marks that only a word processor makes are named where they stand") {
  CHECK(found_in("[mill]\nname = “Hargan”\n[[saw]]\nkerf = ½\n") ==
        "2:8 '“' stands outside quotes; write plain quotes: \"...\"\n"
        "4:8 '½' stands outside quotes; put what is written with it in quotes: \"...\"\n");
  CHECK(found_in("[mill] # ½ “\nname = \"“½” \\\" ½\" # é\nowner = 'é\\'\nterms = [\"\"\"½\n\" é\"\"\"\"]\n")
            .empty());
  CHECK(found_in("[mill]\nname = \"\"\"a\\é\"\"\"\né = 1\n") ==
        "2:13 'é' stands outside quotes; put what is written with it in quotes: \"...\"\n"
        "3:1 'é' stands outside quotes; put what is written with it in quotes: \"...\"\n");
  CHECK(found_in("[mill]\nname = \"a\xFFz\"\n") ==
        "2:0 the text is not UTF-8 here; save the file as UTF-8\n");
}

TEST_CASE("a character past ASCII where the library looks for a blank is refused and leads it nowhere") {
  const std::string text("s=1zz)zzzzz\0\0{'u{jzzzz:\xEF\xB2\xBF\0{'", 29);
  CHECK(found_in(text).starts_with("1:"));
}

TEST_CASE("no bytes make the reader throw") {
  CHECK(rc::check("bytes", [](const std::string& bytes) { read_mill(bytes); }));
  CHECK(rc::check("pieces of a mill file", [] {
    const std::vector<std::string> pieces{"[mill]\n", "[[saw]]\n", "[[job]]\n",  "[scale]\n",  "rule",
                                          "code",     "kerf",      " = ",        "\"2x6\"",    "5",
                                          "0.28",     "\n",        "[lumber]\n", "sizes",      "[\"1x4\", 3]",
                                          "target",   "{ a = 1 }", "cut_list",   "\"",         "2026-05-04",
                                          "½",        "é\"",       "“",          "\\",         "\"\"\"",
                                          "#",        "true",      "units",      "\"metric\"", "'"};
    std::string toml;
    for (const auto& piece : *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(pieces)))
      toml += piece;
    read_mill(toml);
  }));
}

TEST_CASE("a character that cannot be printed is no part of a name, however it is written") {
  CHECK(found_in("[mill]\nname = \"a\\u001Bb\"\n") ==
        "2:8 a character that cannot be printed; leave it out\n");
  CHECK(found_in("[mill]\nname = \"a\\uFFFEb\"\n") ==
        "2:8 a character that cannot be printed; leave it out\n");
  CHECK(found_in("[mill]\naddress = [\"yard\", \"\\u202Eb\"]\n") ==
        "2:20 a character that cannot be printed; leave it out\n");
}

TEST_CASE("a line longer than any mill file has is told and not gone into") {
  std::string key = "a";
  for (int part = 0; part < 30'000; ++part) key += ".a";
  CHECK(found_in(key + " = 1\n") ==
        "1:0 a line of 60005 bytes, where 4000 is the most; write the list on several lines\n");
}

TEST_CASE("of very many unknown keys a table names two hundred") {
  std::string toml = "[mill]\n";
  for (int key = 0; key < 5'000; ++key) toml += "zzzz" + std::to_string(key) + " = 1\n";
  CHECK(read_mill(toml).found.size() == 200);
}

}  // namespace
