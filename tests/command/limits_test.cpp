// limits_test.cpp -- every number a person can type, made huge and tiny: it is taken, or refused with a reason, and never
// ends in a failure, a wrong figure or "this should not have happened".
#include <doctest/doctest.h>

#include <sstream>

#include "book/book.h"
#include "command/command.h"
#include "command/program.h"
#include "sheet/read.h"

using namespace kerfbook;
using kerfbook::tests::kRoot;
using kerfbook::tests::Scratch;
using kerfbook::tests::slurp;
using kerfbook::tests::spill;

namespace {

struct Answer {
  int code = -1;
  std::string out;
  std::string err;
};

/// The whole program in this process, which is quick enough for thousands of runs.
Answer run(const std::vector<std::string>& arguments, const std::string& input = "") {
  std::istringstream in(input);
  std::ostringstream out;
  std::ostringstream err;
  command::Context context{.in = in,
                           .out = out,
                           .err = err,
                           .today = [] { return make_day(2026, 5, 9); },
                           .time_of_day = [] { return std::string("20:00:00"); },
                           .environment = [](const std::string&) { return std::optional<std::string>(); }};
  Answer answer;
  answer.code = command::run(arguments, context);
  answer.out = out.str();
  answer.err = err.str();
  return answer;
}

const std::vector<std::string> kNumbers{"0",
                                        "1",
                                        "9",
                                        "99",
                                        "999",
                                        "9999",
                                        "99999",
                                        "999999",
                                        "9999999",
                                        "99999999",
                                        "999999999",
                                        "9999999999",
                                        "99999999999999999",
                                        "999999999999999999",
                                        "9223372036854775807",
                                        "9223372036854775808",
                                        "99999999999999999999999",
                                        "999999999999999999999999999999999999999999999",
                                        "0.000001",
                                        "0.0000000000000001",
                                        "999999.999999",
                                        "1e400",
                                        "-1",
                                        "-99999999999999999"};

/// Each run of digits (with its point) in the text replaced by each number, one at a time.
std::vector<std::string> with_other_numbers(const std::string& text, std::size_t from = 0) {
  std::vector<std::string> all;
  for (std::size_t at = from; at < text.size();) {
    if (text[at] < '0' || text[at] > '9') {
      ++at;
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && ((text[end] >= '0' && text[end] <= '9') || text[end] == '.')) ++end;
    for (const auto& number : kNumbers) all.push_back(text.substr(0, at) + number + text.substr(end));
    at = end;
  }
  return all;
}

void is_answered(const Answer& answer, const std::string& typed) {
  CAPTURE(typed);
  CAPTURE(answer.err);
  CHECK((answer.code == 0 || answer.code == 1 || answer.code == 2));
  CHECK(answer.err.find("should not have happened") == std::string::npos);
  CHECK(answer.err.find("overflow") == std::string::npos);
  CHECK((answer.code == 0 || answer.err.find("kerfbook: ") != std::string::npos));
}

/// A book with the demo's mill file in it, and the demo's Monday.
std::string demo_book(const Scratch& scratch) {
  const std::string book = (scratch / "mill.book").string();
  REQUIRE(run({"new", book, "--mill", (kRoot / "demo_data" / "hargan.toml").string()}).code == 0);
  REQUIRE(run({"-b", book, "post", (kRoot / "demo_data" / "2026-05-04.sheet").string()}).code == 0);
  return book;
}

}  // namespace

TEST_CASE("whatever number stands in a line of a sheet, it is posted or refused at its line, with a reason") {
  const Scratch scratch;
  const std::string book = demo_book(scratch);
  std::vector<std::string> lines;
  for (const auto& kind : sheet::kinds_of_line()) {
    if (kind.word == "sheet") continue;
    for (const auto& form : kind.forms) lines.emplace_back(form.example);
  }
  REQUIRE(lines.size() > 20);
  for (const char* more :
       {"log T1 12/13-15x16'6\" mid 13 girth 48 segments 12,14 defect 10% rot defect 2ft defect 1in defect "
        "7x7x16 defect "
        "90degx8 defect 3ft3",
        "log 13-22", "log 15 1/2x12", "2x6x16 4", "2x6 212lf", "5/4 rw fas 7-1/2x8 6x8*3", "50x150 4/4.8",
        "sold cash 2x6 6/16 at 1.05 each", "sold cash 2x6 100lf at 1.05 lf", "sold cash bundle B7 at 240",
        "fuel 27.6 l 41.40", "charge TER metal-strike 2.5", "crew Quill 7:00-12:00, Bess 9.5",
        "stop 14:05-14:35 belt", "teeth edger full-set 22 wear", "thick 2x6 2.02 2.00 1.98"}) {
    lines.emplace_back(more);
  }
  std::vector<book::Document> taken;
  std::size_t refused = 0;
  for (const auto& line : lines) {
    for (const auto& other : with_other_numbers(line)) {
      CAPTURE(other);
      const auto day = write_day(make_day(2020, 1, 1) + static_cast<int>(taken.size()));
      const std::string sheet = "sheet " + day + "\njob TER\nspecies DF\n" + other + "\n2x6 1/16\n";
      const auto found = book::check_without_book(sheet);
      if (!has_error(found)) {
        taken.push_back({other, sheet});
        continue;
      }
      ++refused;
      for (const auto& one : found) {
        if (one.severity == Severity::error) CHECK((one.place.line == 4 && !one.what.empty()));
      }
    }
  }
  CHECK(taken.size() > 200);
  CHECK(refused > 300);
  book::OpenOptions options;
  options.now = [] { return std::string("2026-05-09 20:00:00"); };
  {
    book::Book open = book::Book::open(book, options);
    CHECK(open.post_all(taken, "").size() == taken.size());
    for (const auto& finding : open.verify()) FAIL_CHECK(finding.what);
  }
  for (const char* report : {"production-year", "overrun", "fuel", "stock", "earnings", "moves", "teeth"})
    is_answered(run({"-b", book, "report", report}), report);
  is_answered(run({"-b", book, "bill", "TER"}), "bill");
}

TEST_CASE("sheets of the largest numbers that are taken are posted, reported and billed without a failure") {
  const Scratch scratch;
  const std::string book = demo_book(scratch);
  const std::string sheet =
      "job TER\nspecies DF\nlog 240x200\nlog 240/240-240x200 mid 240 girth 750\nlog 12x12 defect 999999bf\n"
      "12x12 3000/20\nsold cash 12x12 1000/20 at 10000000\ncharge TER metal-strike 1000000\nmeter 1000000\n"
      "fuel 1000000 gal 10000000000\nmove A to B 1000000 mi 100:00\nteeth head replaced 500 metal\ncrew "
      "Quill 100\n";
  for (const char* day : {"2026-05-05", "2026-05-06", "2026-05-07"}) {
    const Answer posted = run({"-b", book, "post", "-"}, "sheet " + std::string(day) + "\n" + sheet);
    CAPTURE(posted.err);
    REQUIRE(posted.code == 0);
  }
  for (const char* report :
       {"day", "production", "overrun", "fuel", "cost", "earnings", "stock", "year", "moves"})
    is_answered(run({"-b", book, "report", report}), report);
  is_answered(run({"-b", book, "bill", "TER"}), "bill");
  is_answered(run({"-b", book, "bill", "--sale", "cash"}), "bill --sale");
  is_answered(run({"-b", book, "issue", "--sale", "cash"}), "issue --sale");
  CHECK(run({"-b", book, "verify"}).code == 0);
}

TEST_CASE(
    "whatever number stands in the mill file, the file is taken or refused at its line, with a reason") {
  const std::string mill = slurp(kRoot / "demo_data" / "hargan.toml");
  std::size_t refused = 0;
  const auto others = with_other_numbers(mill);
  REQUIRE(others.size() > 1000);
  for (std::size_t i = 0; i < others.size(); i += 7) {  // a part of them, every kind of number among them
    const Scratch scratch;
    spill(scratch / "m.toml", others[i]);
    const Answer checked = run({"check", (scratch / "m.toml").string()});
    is_answered(checked, "number " + std::to_string(i));
    if (checked.code == 1) ++refused;
  }
  CHECK(refused > 100);
}

TEST_CASE("whatever number stands on the command line, it is answered with a figure or a reason") {
  const Scratch scratch;
  const std::string book = demo_book(scratch);
  REQUIRE(run({"-b", book, "issue", "TER"}).code == 0);
  for (const auto& number : kNumbers) {
    const auto asked = [&](std::vector<std::string> words) {
      std::string all;
      for (const auto& word : words) all += word + " ";
      words.insert(words.begin(), {"-b", book});
      is_answered(run(words), all);
    };
    asked({"pay", number, "--customer", "TER"});
    asked({"pay", number, "--invoice", "1"});
    asked({"pay", "1", "--invoice", number});
    asked({"credit", "1", number, "--why", "x"});
    asked({"credit", number, "1", "--why", "x"});
    asked({"write-off", "1", number, "--why", "x"});
    asked({"paper", "invoice", number});
    asked({"report", "production", "--period", number});
    asked({"report", "production", "--from", number});
    asked({"scale", number + "x12"});
    asked({"scale", "12x" + number, "--rule", "doyle", "--rule", "smalian"});
    asked({"scale", "12x16 mid " + number + " girth " + number, "--every-rule"});
    asked({"scale", "12x16 defect " + number + "bf"});
    asked({"scale", "12x16 defect " + number + "ft", "--every-rule"});
    asked({"scale", "--table", "--rule", "doyle", "--diameters", number});
    asked({"scale", "--table", "--rule", "scribner-c", "--lengths", "8-" + number});
    asked({"measure", "2x6x16", number});
    asked({"measure", number + "x6x16", "4"});
    asked({"measure", "2x6x" + number, "4"});
    asked({"measure", "2x6", number + "lf"});
    asked({"waive", "TER", "2026-05-04", "waiting", "--shift", number, "--why", "x"});
  }
}

TEST_CASE("a fuel price and a payment of 99999999999999999 are refused where they stand") {
  const Scratch scratch;
  const std::string book = demo_book(scratch);
  const Answer fuel = run({"-b", book, "post", "-"}, "sheet 2026-05-05\nfuel 7.3 gal 99999999999999999\n");
  CHECK(fuel.code == 1);
  CHECK(
      fuel.err.find(
          "standard input:2:14: error: '99999999999999999' is more money than a mill's book holds; write at "
          "most 10,000,000,000") != std::string::npos);
  const Answer paid = run({"-b", book, "pay", "99999999999999999", "--customer", "TER"});
  CHECK(paid.code == 2);
  CHECK(paid.err.find("is more money than a mill's book holds") != std::string::npos);
  const Answer gallons = run({"-b", book, "post", "-"}, "sheet 2026-05-05\nfuel 7300000 gal 41\n");
  CHECK(gallons.err.find("'7300000': more than any mill's, at most 1,000,000") != std::string::npos);
}

TEST_CASE("a sum of many legal values past 63 bits is refused in words by whatever adds it") {
  const Scratch scratch;
  const std::string book = demo_book(scratch);
  spill(scratch / "sum.sql",
        "-- report:  sum\n-- title:   Sum\n-- meaning: A sum.\n-- table:   sum |\n-- shows:   all count "
        "\"All\"\n"
        "SELECT sum(9000000000000000000) AS \"all\" FROM v_tally\n");
  const Answer answer = run({"-b", book, "report", "sum", "--reports", scratch.path().string()});
  CHECK(answer.code == 1);
  CHECK(answer.err.find("larger than can be counted exactly") != std::string::npos);
}

TEST_CASE("a price nobody would ask is told by check, by post and where a book is made with the file") {
  const Scratch scratch;
  const std::string file = (scratch / "m.toml").string();
  const std::string book = (scratch / "mill.book").string();
  const std::string words = "310 a bf of net log scale: over 20, which such a price seldom is";
  spill(file, "[[price]]\nbasis = \"log-scale\"\nrate = 310\n");
  CHECK(run({"check", file}).err.find(words) != std::string::npos);
  const Answer made = run({"new", book, "--mill", file});
  CHECK(made.code == 0);
  CHECK(made.err.find(file + ":3:8: warning: " + words) != std::string::npos);
  spill(file, "[[price]]\nbasis = \"log-scale\"\nrate = 311\n");
  const Answer posted = run({"-b", book, "post", file, "--why", "dearer"});
  CHECK(posted.code == 0);
  CHECK(posted.err.find("warning: 311 a bf of net log scale") != std::string::npos);
}

TEST_CASE("a rule takes one name, and what follows it is a log") {
  const Answer one = run({"scale", "--rule", "doyle", "16x16"});
  CHECK(one.code == 0);
  CHECK(one.out.find("16x16") != std::string::npos);
  CHECK(one.out.find("144") != std::string::npos);  // ((16 - 4) / 4)^2 x 16
  const Answer two = run({"scale", "--rule", "doyle", "12.5x12 defect 10% rot", "10.5x11", "--as", "csv"});
  CHECK(two.code == 0);
  CHECK(two.out.find("-0") == std::string::npos);  // the sound log has no deduction
  CHECK(two.out.find("10.5x11") != std::string::npos);
  const Answer told = run({"scale", "1", "15/16x12"});
  CHECK(told.code == 0);
  CHECK(told.err.find("is taken as log 1 with two readings of one end") != std::string::npos);
}

TEST_CASE("asked to scale a day anew, post does, and says by which rule") {
  const Scratch scratch;
  const std::string book = (scratch / "mill.book").string();
  const std::string day = (scratch / "day.sheet").string();
  const std::string mill = (scratch / "m.toml").string();
  REQUIRE(run({"new", book}).code == 0);
  spill(day, "sheet 2026-05-05\njob BRN\nlog T1 14x12\n2x6 5/12\n");
  REQUIRE(run({"-b", book, "post", day}).code == 0);
  spill(mill, "[scale]\nrule = \"doyle\"\n");
  REQUIRE(run({"-b", book, "post", mill}).code == 0);
  spill(day, "sheet 2026-05-05\njob BRN\nlog T1 14x12\n2x6 6/12\n");
  const std::string words = "they keep the log rule they were posted under, Int. 1/4";
  CHECK(run({"-b", book, "check", day}).err.find(words) != std::string::npos);
  const Answer kept = run({"-b", book, "post", day, "--why", "one more"});
  CHECK(kept.err.find(words) != std::string::npos);
  const Answer anew = run({"-b", book, "post", day, "--rescale", "--why", "agreed"});
  CHECK(anew.code == 0);
  CHECK(anew.err.find("scaled anew by Doyle, before by Int. 1/4") != std::string::npos);
  CHECK(anew.out.find("posted as revision 3") != std::string::npos);
}
