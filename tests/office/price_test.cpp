// The most particular price wins and says why; a job keeps the prices of the day it was agreed.
#include "helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const char* const kPrices =
    "[[price]]\nname = \"house\"\nbasis = \"bf\"\nrate = 0.40\n"
    "[[price]]\nname = \"fir\"\nbasis = \"bf\"\nrate = 0.45\nspecies = \"DF\"\n"
    "[[price]]\nname = \"heavy fir\"\nbasis = \"bf\"\nrate = 0.50\nspecies = \"DF\"\nthickness_from = \"4\"\n"
    "[[price]]\nname = \"long\"\nbasis = \"bf\"\nrate = 0.60\nlength_over = \"16\"\nlength_to = "
    "\"24\"\nspecies = \"DF\"\n"
    "[[price]]\nname = \"Oda\"\nbasis = \"bf\"\nrate = 0.42\ncustomer = \"ODA\"\n"
    "[[price]]\nname = \"barn\"\nbasis = \"bf\"\nrate = 0.48\njob = \"TER\"\n";

Question asked(const std::string& job, const std::string& customer, const std::string& species,
               const std::string& size, int length) {
  return {
      job, customer, species, "", *measure::read_size(size), measure::feet(length), *read_day("2026-05-04")};
}

std::string chosen(const Terms& terms, const Question& question) {
  const Choice choice = choose_price(terms, question);
  return choice.price == nullptr ? "" : choice.price->name;
}

}  // namespace

TEST_CASE("job goes before customer, customer before conditions, more conditions before fewer") {
  const Terms terms = terms_of(kPrices);
  CHECK(chosen(terms, asked("X", "Y", "WH", "1x8", 12)) == "house");
  CHECK(chosen(terms, asked("X", "Y", "DF", "1x8", 12)) == "fir");
  CHECK(chosen(terms, asked("X", "Y", "DF", "4x8", 12)) == "heavy fir");
  CHECK(chosen(terms, asked("X", "Y", "df", "4x8", 18)) == "long");
  CHECK(chosen(terms, asked("X", "Y", "DF", "4x8", 16)) == "heavy fir");
  CHECK(chosen(terms, asked("X", "ODA", "DF", "4x8", 18)) == "Oda");
  CHECK(chosen(terms, asked("TER", "ODA", "DF", "4x8", 18)) == "barn");
}

TEST_CASE("the choice says why, and explain goes through every price") {
  const Terms terms = terms_of(kPrices);
  const Choice choice = choose_price(terms, asked("TER", "ODA", "DF", "4x8", 12));
  CHECK(choice.why ==
        "'barn' (line 28, 0.48 a board foot) is used, not 'Oda' (line 23, 0.42 a board foot): it names the "
        "job");
  const auto lines = explain_price(terms, asked("X", "Y", "WH", "4x8", 12));
  REQUIRE(lines.size() == 6);
  CHECK(lines[0] == "'house' (line 1, 0.40 a board foot) is the only price that fits");
  CHECK(lines[1] == "'fir' (line 5, 0.45 a board foot) does not fit: it is for species DF");
}

TEST_CASE("of two alike the later in force wins, then the later in the file") {
  const Terms terms = terms_of(
      "[[price]]\nname = \"old\"\nbasis = \"bf\"\nrate = 0.40\nfrom = 2026-01-01\n"
      "[[price]]\nname = \"new\"\nbasis = \"bf\"\nrate = 0.44\nfrom = 2026-05-06\n");
  Question question = asked("X", "", "DF", "2x6", 12);
  CHECK(chosen(terms, question) == "old");
  question.day = *read_day("2026-05-06");
  CHECK(chosen(terms, question) == "new");
}

TEST_CASE("a price changed on Wednesday holds from Wednesday's sheet on, but not for a job agreed before") {
  const std::string prices =
      "[[price]]\nbasis = \"bf\"\nrate = 0.40\nuntil = 2026-05-05\n"
      "[[price]]\nbasis = \"bf\"\nrate = 0.50\nfrom = 2026-05-06\n";
  std::vector<Fact> facts = tally(sheet_of("2026-05-05"), "DF", "1x12: 10/10");
  append(facts, tally(sheet_of("2026-05-06"), "DF", "1x12: 10/10"));
  const Day friday = *read_day("2026-05-08");
  CHECK(make_draft(terms_of(prices), job_terms("TER"), job_facts(facts), {}, {}, friday).total.minor == 9000);
  const Terms agreed = terms_of(prices + "[[agreement]]\njob = \"TER\"\nagreed = 2026-04-20\n");
  CHECK(make_draft(agreed, job_terms("TER"), job_facts(facts), {}, {}, friday).total.minor == 8000);
}

TEST_CASE("what no price fits is a problem that names it, not a line of nothing") {
  const Draft draft = make_draft(
      terms_of("[[price]]\nbasis = \"bf\"\nrate = 1\nspecies = \"RC\"\n"), job_terms("TER"),
      job_facts(tally(sheet_of("2026-05-04"), "DF", "2x6: 12/4")), {}, {}, *read_day("2026-05-08"));
  CHECK(draft.lines.empty());
  REQUIRE(draft.problems.size() == 1);
  CHECK(draft.problems[0].find("2026-05-04, job TER: no price fits 2x6x12 DF") == 0);
}

TEST_CASE("each condition narrows, beats the house's price where it holds, and is named where it does not") {
  struct Case {
    const char* condition;
    Question fits;
    Question fails;
    const char* why_not;
  };
  const auto day = [](Question question, const char* when) {
    question.day = *read_day(when);
    return question;
  };
  const Question plain = asked("J", "C", "DF", "2x6", 12);
  Question select = plain;
  select.grade = "Sel";
  const std::vector<Case> cases{
      {"species = [\"RC\", \"WH\"]", asked("J", "C", "wh", "2x6", 12), plain, "is for species RC, WH"},
      {"grade = \"Sel\"", select, plain, "is for grade Sel"},
      {"size = [\"4x4\", \"4x6\"]", asked("J", "C", "DF", "4x6", 12), plain, "is for other sizes"},
      {"thickness_from = \"4\"", asked("J", "C", "DF", "4x6", 12), plain, "is for another thickness"},
      {"thickness_to = \"1\"", asked("J", "C", "DF", "1x6", 12), plain, "is for another thickness"},
      {"width_from = 10", asked("J", "C", "DF", "2x10", 12), plain, "is for another width"},
      {"width_to = 4", asked("J", "C", "DF", "2x4", 12), plain, "is for another width"},
      {"length_over = \"16\"", asked("J", "C", "DF", "2x6", 18), asked("J", "C", "DF", "2x6", 16),
       "is for other lengths"},
      {"length_to = \"8\"", asked("J", "C", "DF", "2x6", 8), plain, "is for other lengths"},
      {"job = \"J\"", plain, asked("K", "C", "DF", "2x6", 12), "is for job J"},
      {"customer = \"C\"", plain, asked("J", "D", "DF", "2x6", 12), "is for customer C"},
      {"from = 2026-05-06", day(plain, "2026-05-06"), day(plain, "2026-05-05"),
       "is in force from 2026-05-06"},
      {"until = 2026-05-05\nspecies = \"DF\"", day(plain, "2026-05-05"), day(plain, "2026-05-06"),
       "was in force until 2026-05-05"}};
  for (const Case& one : cases) {
    CAPTURE(one.condition);
    const Terms terms = terms_of(
        "[[price]]\nname = \"house\"\nbasis = \"bf\"\nrate = 0.40\n"
        "[[price]]\nname = \"narrow\"\nbasis = \"bf\"\nrate = 0.50\n" +
        std::string(one.condition) + "\n");
    CHECK(chosen(terms, one.fits) == "narrow");
    CHECK(chosen(terms, one.fails) == "house");
    const std::vector<std::string> lines = explain_price(terms, one.fails);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].find("'house'") == 0);
    CHECK(lines[0].find("is the only price that fits") != std::string::npos);
    CHECK(lines[1].find(std::string("does not fit: it ") + one.why_not) != std::string::npos);
    CHECK(explain_price(terms, one.fits)[0].find(
              "'narrow' (line 5, 0.50 a board foot) is used, not 'house'") == 0);
  }
}

TEST_CASE("a named size is more particular than a thickness class with a species, and the reason is told") {
  const Terms terms = terms_of(
      "[[price]]\nname = \"timbers\"\nbasis = \"bf\"\nrate = 0.54\nthickness_from = \"4\"\nspecies = \"DF\"\n"
      "[[price]]\nname = \"posts\"\nbasis = \"piece\"\nrate = 9\nsize = \"4x4\"\n");
  const Choice choice = choose_price(terms, asked("J", "C", "DF", "4x4", 8));
  CHECK(choice.price->name == "posts");
  CHECK(choice.why ==
        "'posts' (line 7, 9.00 a piece) is used, not 'timbers' (line 1, 0.54 a board foot): more conditions "
        "match");
}

TEST_CASE("a charge is explained as a price is") {
  const Terms terms = terms_of(
      "[[charge]]\nname = \"travel\"\ntitle = \"Travel\"\nflat = 20\nrate = 1.75\nper = \"mile\"\nmove = "
      "true\n"
      "[[charge]]\nname = \"travel\"\ntitle = \"Travel, as agreed\"\nflat = 60\nmove = true\ncustomer = "
      "\"C\"\n");
  const auto lines = explain_charge(terms, "travel", asked("J", "C", "", "2x6", 12));
  REQUIRE(lines.size() == 2);
  CHECK(lines[0] ==
        "'Travel, as agreed' (line 8, 60.00 flat) is used, not 'Travel' (line 1, 20.00 flat and 1.75 per "
        "mile): it "
        "names the customer");
  CHECK(explain_charge(terms, "storage", asked("J", "C", "", "2x6", 12))[0] == "no charge fits");
}
