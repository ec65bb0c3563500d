// The money tables of the mill file: what is read, and what is said of what cannot be.
#include "helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

std::vector<Diagnostic> found_in(const std::string& toml) {
  return read_terms(toml).found;
}

Price price_of(const std::string& toml) {
  return terms_of("[[price]]\n" + toml).prices.at(0);
}

}  // namespace

TEST_CASE("rates are the digits that were typed, never a binary fraction near them") {
  CHECK(price_of("basis = \"bf\"\nrate = 0.1\n").rate == Rational(1, 10));
  CHECK(price_of("basis = \"bf\"\nrate = 0.485\n").rate == Rational(485, 1000));
  CHECK(price_of("basis = \"mbf\"\nrate = 1_480\n").rate == Rational(1480));
  CHECK(price_of("basis = \"bf\"\nrate = \"0.48\"\n").rate == Rational(48, 100));
}

TEST_CASE("every problem of the file is told at once, with line and column and what would be right") {
  const auto found = found_in(
      "[[price]]\nbasis = \"bfs\"\nrate = 0.48\n\n[[price]]\nbasis = \"bf\"\nrat = 0.5\n\n"
      "[[charge]]\nname = \"x\"\nper = \"hours\"\nrate = 1\n\n[[tax]]\nname = \"T\"\nrate = -5\non = "
      "\"lumber\"\n");
  REQUIRE(found.size() == 5);
  CHECK(found[0].place == Place{2, 10});
  CHECK(found[0].instead == "did you mean bf?");
  CHECK(found[1].place == Place{5, 1});
  CHECK(found[1].what == "a price without a rate");
  CHECK(found[2].place == Place{7, 1});
  CHECK(found[2].what == "'rat' is no key of [[price]]");
  CHECK(found[2].instead == "did you mean rate?");
  CHECK(found[3].place == Place{11, 8});
  CHECK(found[3].instead == "did you mean hour?");
  CHECK(found[4].place == Place{16, 8});
}

TEST_CASE("what makes no sense together is an error") {
  CHECK(found_in("[[price]]\nbasis = \"shares\"\nrate = 1\n").size() == 1);
  CHECK(found_in("[[price]]\nbasis = \"hour\"\nrate = 1\nown_lumber = true\n").size() == 1);
  CHECK(found_in("[[price]]\nbasis = \"bf\"\nrate = 1\nfrom = 2026-05-06\nuntil = 2026-05-05\n").size() == 1);
  CHECK(found_in("[[charge]]\nname = \"a\"\n").size() == 1);
  CHECK(found_in("[[share]]\npercent = 120\n").size() == 1);
  CHECK(found_in("[[agreement]]\njob = \"A\"\n[[agreement]]\njob = \"a\"\n").size() == 1);
  CHECK(found_in("[price]\nbasis = \"bf\"\n").size() == 1);
  CHECK(found_in("[[price]\n").size() == 1);
}

TEST_CASE("a condition that a thing never has is refused, since nothing would ever come under the price") {
  const auto refused = [](const std::string& toml) {
    const auto found = found_in(toml);
    REQUIRE_MESSAGE(found.size() == 1, toml);
    return found[0].what;
  };
  CHECK(refused("[[price]]\nbasis = \"hour\"\nrate = 90\nthickness_from = \"8\"\n") ==
        "hours and days of sawing have no thickness_from");
  CHECK(refused("[[price]]\nbasis = \"day\"\nrate = 90\nspecies = \"DF\"\n") ==
        "hours and days of sawing have no species");
  CHECK(refused("[[price]]\nbasis = \"log-scale\"\nrate = 1\ngrade = \"Sel\"\n") == "logs have no grade");
  CHECK(refused("[[price]]\nbasis = \"bf\"\nrate = 1\ndiameter_from = \"30\"\n") ==
        "boards cannot be traced to logs and have no diameter_from");
  CHECK(refused("[[price]]\nbasis = \"bf\"\nrate = 1\nminimum_log = \"12x8\"\n") ==
        "a minimum log counts only where logs are measured");
  CHECK(refused("[[price]]\nbasis = \"bf\"\nrate = 1\nrule = \"doyle\"\n") ==
        "a log rule counts only where logs are scaled");
}

TEST_CASE("a charge that could never come is refused") {
  const auto many = [](const std::string& charge) {
    return found_in("[[charge]]\nname = \"x\"\n" + charge).size();
  };
  CHECK(many("rate = 5\nper = \"percent\"\n") == 1);
  CHECK(many("rate = 5\nper = \"hour\"\nautomatic = true\n") == 1);
  CHECK(many("rate = 5\nflat = 10\nper = \"bf\"\nautomatic = true\n") == 1);
  CHECK(many("rate = 5\nonce = true\n") == 1);
  CHECK(many("rate = 5\nper = \"mile\"\nmove = true\nfree = 10\n") == 0);
  CHECK(many("rate = 5\nper = \"mile\"\nmove = true\nfree = -10\n") ==
        1);  // it would bill what was not driven
  CHECK(many("rate = 5\nper = \"log\"\nautomatic = true\ndiameter_from = \"30\"\n") == 0);
  CHECK(many("rate = 5\nper = \"bf\"\nautomatic = true\ndiameter_from = \"30\"\n") == 1);
}

TEST_CASE("a tax on a kind of line that nothing has is refused with the nearest kind") {
  const auto found = found_in(
      "[[charge]]\nname = \"planing\"\nrate = 0.05\nper = \"bf\"\ntax = \"planing\"\n"
      "[[tax]]\nname = \"A\"\nrate = 5\non = [\"sawing\", \"planing\"]\n"
      "[[tax]]\nname = \"B\"\nrate = 5\non = \"lumbr\"\n");
  REQUIRE(found.size() == 1);
  CHECK(found[0].place.line == 13);
  CHECK(found[0].instead == "did you mean 'lumber'?");
}

TEST_CASE("other tables of the mill file are left to their own reader") {
  CHECK(found_in("[mill]\nname = \"x\"\nunknown = 1\n[[customer]]\ncode = \"A\"\n").empty());
}

TEST_CASE("conditions are read as a sheet writes sizes and lengths") {
  const Price price = price_of(
      "basis = \"bf\"\nrate = 1\nspecies = [\"DF\", \"WH\"]\nthickness_from = \"5/4\"\nwidth_to = 12\n"
      "length_over = \"16'6\"\nsize = \"4x6\"\nminimum_job = 250.00\n");
  CHECK(price.when.species.size() == 2);
  CHECK(price.when.thickness_from == measure::Length{80, measure::System::inch});
  CHECK(price.when.width_to == measure::inches(12));
  CHECK(price.when.length_over == measure::Length{16 * 768 + 384, measure::System::inch});
  CHECK(price.minimum_job->minor == 25000);
  const Price logs = price_of(
      "basis = \"log-scale\"\nrate = 1\nminimum_log = \"12x8\"\ndiameter_from = \"10-1/2\"\ndiameter_to = "
      "30\nlength_to = 20\n");
  REQUIRE(logs.minimum_log);
  CHECK(logs.minimum_log->diameter == measure::inches(12));
  CHECK(logs.minimum_log->length == measure::feet(8));
  CHECK(logs.when.diameter_from == measure::Length{10 * 64 + 32, measure::System::inch});
  CHECK(logs.when.diameter_to == measure::inches(30));
}

TEST_CASE("a metric book's plain numbers are millimetres and metres") {
  const ReadTerms got = read_terms(
      "[[price]]\nbasis = \"m3-sawn\"\nrate = 180\nthickness_from = 100\nlength_over = 4.8\n", {true, 2});
  REQUIRE(got.found.empty());
  CHECK(got.terms.prices[0].when.thickness_from == measure::millimetres(100));
  CHECK(got.terms.prices[0].when.length_over == measure::centimetres(480));
}

TEST_CASE("any bytes are read without a fault") {
  std::string bytes = "[[price]]\nbasis = \"bf\"\nrate = 0.48\ncount = { rounding = \"line-whole\" }\n";
  for (std::size_t cut = 0; cut < bytes.size(); ++cut) {
    read_terms(bytes.substr(0, cut));
    std::string spoilt = bytes;
    spoilt[cut] = static_cast<char>(0x80 + cut % 64);
    read_terms(spoilt);
  }
  CHECK(read_terms(bytes).found.empty());
}
