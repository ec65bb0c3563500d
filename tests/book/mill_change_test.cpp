// mill_change_test.cpp -- the mill file posted anew: what only adds needs no reason, what changes does; and a job taken
// out of it keeps its old days as they were.
#include "mill/mill_change.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/error.h"
#include "book/shelf.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

using Words = std::vector<std::string>;

const std::string kMill = R"([mill]
name  = "Yard"
phone = ""
sites = ["yard"]
[scale]
rule = "doyle"
[species]
DF = "Douglas-fir"
[lumber]
sizes = ["2x4", "2x6"]
[[customer]]
code = "ABC"
name = "Abel"
[[job]]
code     = "BRN"
customer = "ABC"
cut_list = ["2x6x16 12"]
[job.target]
"2x6" = "1-5/8x5-5/8"
[[price]]
basis = "bf"
rate  = 0.40
[[price]]
job   = "BRN"
basis = "bf"
rate  = 0.48
)";

std::string with(const std::string& old, const std::string& now) {
  std::string text = kMill;
  const auto at = text.find(old);
  REQUIRE_MESSAGE(at != std::string::npos, old);
  return text.replace(at, old.size(), now);
}
MillChange changed_to(const std::string& after) {
  return mill_change(kMill, after);
}
Words added_by(const std::string& old, const std::string& now) {
  const MillChange change = changed_to(with(old, now));
  CHECK_MESSAGE(change.changed.empty(), listed(change.changed));
  return change.added;
}
Words changed_by(const std::string& old, const std::string& now) {
  return changed_to(with(old, now)).changed;
}

TEST_CASE(
    "a customer, a job, a price, a saw, a species, a size, a site, a line of a cut list are additions") {
  CHECK(added_by("[[job]]", "[[customer]]\ncode = \"NEW\"\nname = \"Neva\"\n[[job]]") ==
        Words{"customer NEW"});
  CHECK(added_by("[[job]]", "[[job]]\ncode = \"TWO\"\n[[job]]") == Words{"job TWO"});
  CHECK(added_by("[[price]]", "[[price]]\nbasis = \"piece\"\nrate = 1\n[[price]]") ==
        Words{"a price (line 20)"});
  CHECK(added_by("[species]", "[[saw]]\nrole = \"head\"\n[species]") == Words{"saw head"});
  CHECK(added_by("[species]", "[species]\nLA = \"larch\"") == Words{"species LA"});
  CHECK(added_by("[lumber]", "[grade]\nNo2 = \"Number 2\"\n[lumber]") == Words{"grade No2"});
  CHECK(added_by("\"2x6\"]", "\"2x6\", \"6x6\"]") == Words{"[lumber] sizes 6x6"});
  CHECK(added_by("[\"yard\"]", "[\"Tervane farm\", \"yard\"]") == Words{"[mill] sites Tervane farm"});
  CHECK(added_by("16 12\"]", "16 12\", \"2x4x8 30\"]") == Words{"[[job]] BRN cut_list 2x4x8 30"});
  CHECK(added_by("phone = \"\"", "phone = \"555-0123\"") == Words{"[mill] phone"});
  CHECK(added_by("[species]", "[packet]\nreports = [\"production\"]\n[species]") == Words{"[packet]"});
}

TEST_CASE("remarks, blanks and the order of keys and of named entries say nothing") {
  CHECK(added_by("[scale]", "# the house rule\n\n[scale]").empty());
  CHECK(added_by("basis = \"bf\"\nrate  = 0.40", "rate = 0.40\nbasis = 'bf'").empty());
  CHECK(added_by("name = \"Abel\"\n", "name = \"Abel\"\nnote = \"\"\n").empty());
  const std::string two = kMill + "[[saw]]\nrole = \"head\"\n[[saw]]\nrole = \"edger\"\nteeth = 10\n";
  const std::string turned = kMill + "[[saw]]\nrole = \"edger\"\nteeth = 10\n[[saw]]\nrole = \"head\"\n";
  CHECK(mill_change(two, turned).changed.empty());
  CHECK(mill_change(two, turned).added.empty());
}

TEST_CASE("what is said otherwise is a change, named with its line; what is gone is named too") {
  CHECK(changed_by("\"doyle\"", "\"scribner-c\"") == Words{"[scale] rule (line 6)"});
  CHECK(changed_by("rate  = 0.48", "rate  = 0.50") ==
        Words{"the [[price]] that stood at line 23 is changed or gone"});
  CHECK(changed_by("[[price]]\nbasis = \"bf\"\nrate  = 0.40\n", "") ==
        Words{"the [[price]] that stood at line 20 is changed or gone"});
  CHECK(changed_by("\"2x4\", \"2x6\"", "\"2x6\"") == Words{"[lumber] sizes (line 10)"});
  CHECK(changed_by("DF = \"Douglas-fir\"\n", "") == Words{"[species] DF is taken out"});
  CHECK(changed_by("\"Douglas-fir\"", "\"fir\"") == Words{"[species] DF (line 8)"});
  CHECK(changed_by("\"1-5/8x5-5/8\"", "\"1-3/4x5-5/8\"") == Words{"[[job]] BRN target (line 18)"});
  CHECK(changed_by("[scale]\nrule = \"doyle\"\n", "") == Words{"[scale] is taken out"});
  CHECK(changed_by("code = \"ABC\"\nname = \"Abel\"\n[[job]]\ncode     = \"BRN\"\ncustomer = \"ABC\"\n",
                   "code = \"ABD\"\nname = \"Abel\"\n[[job]]\ncode     = \"BRN\"\ncustomer = \"ABD\"\n") ==
        Words{"[[customer]] ABC is taken out", "[[job]] BRN customer (line 16)"});
}

TEST_CASE("a setting said for the first time changes what was taken for granted without it") {
  CHECK(mill_change("", "[scale]\nrule = \"doyle\"\n").changed == Words{"[scale] rule (line 2)"});
  CHECK(changed_by("customer = \"ABC\"\n", "customer = \"ABC\"\nrule = \"vermont\"\n") ==
        Words{"[[job]] BRN rule (line 17)"});
  CHECK(changed_by("[lumber]\n", "[lumber]\ntarget = { \"2x4\" = \"2x4\" }\n") ==
        Words{"[lumber] target (line 10)"});
  CHECK(changed_by("name = \"Abel\"\n", "name = \"Abel\"\ncertificate = \"R-1\"\n") ==
        Words{"[[customer]] ABC certificate (line 14)"});
}

TEST_CASE("prices without names keep their order: the later of two that fit alike could be another one") {
  const std::string house = "[[price]]\nbasis = \"bf\"\nrate  = 0.40\n";
  const std::string job = "[[price]]\njob   = \"BRN\"\nbasis = \"bf\"\nrate  = 0.48\n";
  CHECK(changed_by(house + job, job + house).size() == 1);
}

TEST_CASE("a mill file that only adds is posted without a reason, and says what it adds") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kMill, "");
  const auto posted = book.post_mill(with("[[job]]", "[[customer]]\ncode = \"NEW\"\n[[job]]"), "");
  CHECK(posted.outcome == Outcome::revised);
  CHECK(posted.revision == 2);
  CHECK(posted.notes == Words{"adds customer NEW"});
  CHECK(find_customer(book.mill(), "NEW") != nullptr);
  CHECK(book.current("mill")->why.empty());
  CHECK(book.verify().empty());
}

TEST_CASE("a mill file that changes or drops something is refused without a reason, naming what and where") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kMill, "");
  const std::string before = shelf.bytes();
  try {
    book.post_mill(with("\"doyle\"", "\"vermont\""), " ");
    FAIL("a changed mill file was taken without a reason");
  } catch (const Refused& refused) {
    CHECK(
        std::string(refused.what()) ==
        "the mill file: the mill file in the book, posted 2026-06-01 20:00:00, says otherwise: [scale] rule "
        "(line 6); if it is to change, post it again with --why \"the reason\" (what only adds to it needs "
        "none)");
  }
  CHECK(shelf.bytes() == before);
  CHECK(book.post_mill(with("\"doyle\"", "\"vermont\""), "the county asks for it").revision == 2);
}

TEST_CASE("a long list of things is cut short") {
  CHECK(listed({"a", "b"}) == "a, b");
  CHECK(listed({"a", "b", "c", "d", "e"}) == "a, b, c, d, e");
  CHECK(listed({"a", "b", "c", "d", "e", "f"}) == "a, b, c, d and 2 more");
}

// ---- a job taken out of the mill file

const std::string kDay = "sheet 2026-06-01\njob BRN\nspecies DF\nlog T1 14x12\n2x6 5/12\n";
const std::string kBarn = R"([[customer]]
code = "ABC"
[[job]]
code     = "BRN"
customer = "ABC"
rule     = "barn-rule"
[job.target]
"2x6" = "1-5/8x5-5/8"
[[practice]]
name   = "barn-rule"
rule   = "doyle"
)";
const std::string kDone = "[[customer]]\ncode = \"ABC\"\n";

// 5 pieces of 1-5/8 x 5-5/8 x 12 ft, in cubic 64ths: 104 x 360 x 9216 x 5
constexpr std::int64_t kTargetWood = 104LL * 360 * 9216 * 5;
constexpr std::int64_t kNominalWood = 128LL * 384 * 9216 * 5;

struct Figures {
  std::int64_t wood = 0;
  std::int64_t net = 0;
  bool operator==(const Figures&) const = default;
};
Figures figures(const Book& book, const char* day = "2026-06-01") {
  const std::string of = " FROM run WHERE day = " + std::to_string(read_day(day)->number);
  return {Shelf::number(book, "SELECT wood" + of), Shelf::number(book, "SELECT net" + of)};
}
constexpr std::int64_t kDoyle = 75'000'000;  // ((14-4)/4)^2 x 12
constexpr std::int64_t kInternational = 100'000'000;

TEST_CASE("a job dropped from the mill file leaves its old days as they were, row for row") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kBarn, "");
  book.post_sheet(kDay, "");
  const auto run_rows = [&] {
    return shelf.text(book, "SELECT group_concat(wood || '/' || net || '/' || practice) FROM run");
  };
  const std::string before = run_rows();
  CHECK(figures(book) == Figures{kTargetWood, kDoyle});
  book.post_mill(kDone, "the barn is up");
  CHECK(run_rows() == before);
  CHECK(book.verify().empty());
  const std::string rows = Shelf::dump(book);
  book.rebuild();
  CHECK(Shelf::dump(book) == rows);
}

TEST_CASE(
    "a day of a dropped job that is corrected, or posted late, still goes by what was last said of the job") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kBarn, "");
  book.post_sheet(kDay, "");
  book.post_mill(kDone, "the barn is up");
  book.post_sheet(kDay + "note rain\n", "the rain was left out");
  CHECK(figures(book) == Figures{kTargetWood, kDoyle});
  book.post_sheet("sheet 2026-06-02\njob brn\nspecies DF\nlog T2 14x12\n2x6 5/12\n", "");
  CHECK(figures(book, "2026-06-02") == Figures{kTargetWood, kDoyle});
  CHECK(book.verify().empty());
}

TEST_CASE(
    "what the mill file says otherwise of a job is meant, also for its old days, and after it was dropped") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kBarn, "");
  book.post_sheet(kDay, "");
  const std::string full = "[[customer]]\ncode = \"ABC\"\n[[job]]\ncode = \"BRN\"\ncustomer = \"ABC\"\n";
  book.post_mill(full, "the barn is cut full");
  CHECK(figures(book) == Figures{kNominalWood, kDoyle});  // a log's posted scale stays
  book.post_mill(kDone, "the barn is up");
  CHECK(figures(book).wood == kNominalWood);
  book.post_mill(kBarn, "one more bay, finish size after all");
  CHECK(figures(book).wood == kTargetWood);
  CHECK(book.verify().empty());
}

TEST_CASE("a sheet posted between two times a job was in the mill file goes by the earlier of them") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kBarn, "");
  book.post_mill(kDone, "the barn is up");
  book.post_sheet(kDay, "");
  CHECK(figures(book).net == kDoyle);
  book.post_mill(
      "[[customer]]\ncode = \"ABC\"\n[[job]]\ncode = \"BRN\"\ncustomer = \"ABC\"\nrule = \"vermont\"\n",
      "the barn again, by another rule");
  CHECK(figures(book).net == kDoyle);
  CHECK(book.verify().empty());
}

TEST_CASE("a job no mill file ever had goes by the house, as before") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kDone, "");
  book.post_sheet(kDay, "");
  CHECK(figures(book) == Figures{kNominalWood, kInternational});
}

TEST_CASE("adding a job without targets works no sheet out anew") {
  const Shelf shelf;
  Book book = shelf.new_book();
  book.post_mill(kDone, "");
  book.post_sheet(kDay, "");
  book.database().exec("UPDATE run SET wood = 1");  // would come right if the sheet were worked out again
  book.post_mill(kDone + "[[job]]\ncode = \"BRN\"\ncustomer = \"ABC\"\n", "");
  CHECK(figures(book).wood == 1);
  book.post_mill(kBarn, "finish size");
  CHECK(figures(book).wood == kTargetWood);
}

}  // namespace
