// rates_test.cpp -- prices nobody would ask are warned of in a mill file, like boards nobody saws; the limits are round
// numbers of our own. And what is promised of hours.
#include "book_helpers.h"
#include "helpers.h"
#include "office/agreed_terms.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

/// What is said of the money tables of a mill file, one a line; all of it warnings.
std::string doubts(const std::string& toml) {
  std::string all;
  for (const Diagnostic& one : check_money(toml)) {
    CHECK(one.severity == Severity::warning);
    all += std::to_string(one.place.line) + ":" + std::to_string(one.place.column) + " " + one.what + "; " +
           one.instead + "\n";
  }
  return all;
}

std::string price(const std::string& basis, const std::string& rate) {
  return "[[price]]\nbasis = \"" + basis + "\"\nrate = " + rate + "\n";
}

}  // namespace

TEST_CASE(
    "a price for a thousand board feet written down for one is doubted at its place, and the other way "
    "round") {
  CHECK(doubts(price("log-scale", "310")) ==
        "3:8 310 a bf of net log scale: over 20, which such a price seldom is; a price for a thousand board "
        "feet of log "
        "scale has basis = \"log-mbf\"\n");
  CHECK(doubts(price("bf", "450")) ==
        "3:8 450 a board foot: over 20, which such a price seldom is; a price for a thousand board feet has "
        "basis = "
        "\"mbf\"\n");
  CHECK(doubts(price("mbf", "0.45")) ==
        "3:8 0.45 a thousand board feet: under 10, which such a price seldom is; a price for one board foot "
        "has basis = "
        "\"bf\"\n");
  CHECK_FALSE(doubts(price("log-mbf", "0.31")).empty());
}

TEST_CASE("every basis has its limits, and a dear price within them is let pass") {
  struct Case {
    const char* basis;
    const char* good;
    const char* low;  ///< empty = none
    const char* high;
  };
  for (const Case& one : {Case{"bf", "3.50", "0.001", "21"}, Case{"mbf", "4000", "9", "30000"},
                          Case{"log-scale", "2", "0.004", "25"}, Case{"log-mbf", "900", "3", "30000"},
                          Case{"log", "45", "0.05", "2500"}, Case{"m3-log", "220", "0.5", "6000"},
                          Case{"m3-sawn", "900", "0.9", "5001"}, Case{"piece", "120", "0.005", "3000"},
                          Case{"lineal-foot", "8", "0.001", "101"}, Case{"lineal-metre", "24", "0.01", "301"},
                          Case{"hour", "180", "0.80", "9500"}, Case{"day", "1400", "9", "21000"}}) {
    CAPTURE(one.basis);
    CHECK(doubts(price(one.basis, one.good)).empty());
    CHECK_FALSE(doubts(price(one.basis, one.low)).empty());
    CHECK_FALSE(doubts(price(one.basis, one.high)).empty());
    CHECK(doubts(price(one.basis, "0")).empty());
  }
}

TEST_CASE("a log's unit decides what its price may be: 310 a cubic metre is none to doubt") {
  CHECK(doubts("[mill]\nunits = \"metric\"\n[scale]\nrule = \"smalian\"\n" + price("log-scale", "310"))
            .empty());
  CHECK_FALSE(doubts("[scale]\nrule = \"doyle\"\n" + price("log-scale", "310")).empty());
  CHECK(doubts("[[price]]\nbasis = \"log-scale\"\nrate = 60\nrule = \"hoppus\"\n").empty());
}

TEST_CASE("a currency of small units has wider limits") {
  CHECK(doubts("[mill]\ncurrency = \"kr\"\n" + price("bf", "21")).empty());
  CHECK_FALSE(doubts("[mill]\ncurrency = \"kr\"\n" + price("bf", "450")).empty());
  CHECK(doubts("[mill]\ncurrency = { sign = \"¥\", places = 0 }\n" + price("hour", "12000")).empty());
}

TEST_CASE("charges, taxes, shares and sums have limits of their own") {
  const auto charge = [](const std::string& lines) { return doubts("[[charge]]\nname = \"a\"\n" + lines); };
  CHECK(charge("flat = 150\n").empty());
  CHECK_FALSE(charge("flat = 25000\n").empty());
  CHECK_FALSE(charge("rate = 4500\nper = \"hour\"\n").empty());
  CHECK_FALSE(charge("rate = 450\nper = \"mile\"\n").empty());
  CHECK(charge("rate = 9\nper = \"tooth\"\n").empty());
  CHECK(charge("rate = 1.50\nper = \"day\"\n").empty());  // storage
  CHECK(charge("rate = -5\nper = \"percent\"\nunasked = true\n").empty());
  CHECK_FALSE(charge("rate = 0.05\nper = \"percent\"\nunasked = true\n").empty());
  const auto tax = [](const std::string& rate) {
    return doubts("[[tax]]\nname = \"T\"\nrate = " + rate + "\non = [\"lumber\"]\n");
  };
  CHECK(tax("5").empty());
  CHECK(tax("0.05") ==
        "3:8 0.05 percent: under 0.1, which such a price seldom is; a tax of 5 % is written rate = 5\n");
  CHECK_FALSE(tax("500").empty());
  CHECK_FALSE(doubts("[[share]]\npercent = 0.5\n").empty());
  CHECK(doubts("[[share]]\npercent = 50\n").empty());
  CHECK_FALSE(doubts("[[agreement]]\njob = \"A\"\ndeposit = 400000\n").empty());
}

TEST_CASE("the demo's prices and costs are doubted in nothing; a cost a hundred times too high is") {
  CHECK(doubts(demo("hargan.toml")).empty());
  CHECK(book::read_mill(demo("hargan.toml")).found.empty());
  const auto found = book::read_mill("[[cost]]\nname = \"Bess\"\nrate = 2400\nper = \"crew-hour\"\n").found;
  REQUIRE(found.size() == 1);
  CHECK(found[0].severity == Severity::warning);
  CHECK(found[0].place == Place{3, 8});
}

TEST_CASE("posting a mill file says what is doubted in it, and posts it") {
  DemoBook demo_book(demo("hargan.toml"), false);
  const auto posted = demo_book.book->post_mill(demo("hargan.toml") + price("log-scale", "310"), "");
  REQUIRE(posted.found.size() == 1);
  CHECK(posted.found[0].what == "310 a bf of net log scale: over 20, which such a price seldom is");
}

TEST_CASE("a number too large to be counted exactly is refused at its place in the mill file") {
  const auto found = check_money(price("bf", "99999999999999999"));
  REQUIRE(found.size() == 1);
  CHECK(found[0].severity == Severity::error);
  CHECK(found[0].place == Place{3, 8});
  CHECK(found[0].what == "'99999999999999999' is more than any mill's");
  CHECK(
      has_error(book::read_mill("[[cost]]\nname = \"a\"\nrate = 99999999999999999\nper = \"day\"\n").found));
  CHECK(has_error(book::read_mill("[[service]]\nname = \"oil\"\nevery = 99999999999999999\n").found));
  CHECK(has_error(book::read_mill("[recovery]\ntaper = 99999999\n").found));
}

TEST_CASE("a frozen number of more digits than can be counted exactly is told, not counted wrong") {
  DemoBook demo_book;
  PaymentAsk deposit;
  deposit.job = "TER";
  deposit.amount = {40000};
  const Paper paper = take_payment(*demo_book.book, deposit, kFriday);
  const std::string body = demo_book.book->journal().back().body;
  REQUIRE(read_paper(body).amount == paper.amount);
  const auto with_amount = [&](const std::string& digits) {
    std::string changed = body;
    const std::string amount = "\"amount\": 40000";
    const std::size_t at = changed.find(amount);
    REQUIRE(at != std::string::npos);
    return changed.replace(at, amount.size(), "\"amount\": " + digits);
  };
  CHECK(read_paper(with_amount("999999999999999999")).amount.minor == 999'999'999'999'999'999);
  for (const char* digits :
       {"9999999999999999999", "99999999999999999999999999999999999999999999", "-9999999999999999999"}) {
    CAPTURE(digits);
    CHECK_THROWS_AS(read_paper(with_amount(digits)), const Failed&);
  }
}

TEST_CASE(
    "an agreement by the hour says what an hour is, and that a stop within the sawing times is not taken "
    "off") {
  const std::string mill =
      "[[customer]]\ncode = \"A\"\nname = \"Ada\"\n[[job]]\ncode = \"HR\"\ncustomer = \"A\"\n[[job]]\ncode = "
      "\"BF\"\n"
      "customer = \"A\"\n[[price]]\nbasis = \"hour\"\nrate = 60\njob = \"HR\"\n" +
      price("bf", "0.5");
  DemoBook demo_book(mill, false);
  const auto says_so = [&](const char* job) {
    const auto document = agreement_document(deal_of(*demo_book.book, job), kFriday);
    for (const auto& table : document.tables)
      for (const auto& row : table.rows)
        for (const auto& cell : row.cells)
          if (const auto* text = std::get_if<std::string>(&cell);
              text != nullptr && text->find("a stop within them is not taken off") != std::string::npos)
            return true;
    return false;
  };
  CHECK(says_so("HR"));
  CHECK_FALSE(says_so("BF"));
}
