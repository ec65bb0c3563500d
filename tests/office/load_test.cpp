// Loads: what leaves the yard is there and is the customer's, and a load can be taken back.
#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <random>

#include "book/stock_held.h"
#include "book/store.h"
#include "book_helpers.h"
#include "price/share.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

/// Two jobs, one on halves and one paid for, and nothing posted.
const char* const kMill =
    "[mill]\nname = \"Yard\"\n[[customer]]\ncode = \"ORR\"\nname = \"Ann Orr\"\n"
    "[[job]]\ncode = \"HLF\"\ncustomer = \"ORR\"\nowner = \"shares\"\n"
    "[[job]]\ncode = \"PAY\"\ncustomer = \"ORR\"\n"
    "[[price]]\nbasis = \"bf\"\nrate = 0.50\n"
    "[[price]]\nbasis = \"shares\"\njob = \"HLF\"\n";

struct Boards : DemoBook {
  Boards() : DemoBook(kMill, false) {}
  void post(const std::string& lines, const std::string& day = "2026-05-08",
            const std::string& why = "") const {
    book->post_sheet("sheet " + day + "\nsite yard\n" + lines, why);
  }
  [[nodiscard]] Paper divide() const { return divide_lumber(*book, "HLF", kFriday, kFriday); }
  [[nodiscard]] Loading load_of(const std::string& job, const std::vector<std::string>& bundles = {}) const {
    return billing::load(*book, {job, bundles, "", "", ""}, kFriday);
  }
  [[nodiscard]] std::string refusal(const std::string& job,
                                    const std::vector<std::string>& bundles = {}) const {
    try {
      static_cast<void>(load_of(job, bundles));
    } catch (const Refused& no) {
      return no.what();
    }
    return "loaded";
  }
  /// "bundle: cut - to the mill - delivered = still here" of a job, as the stock report has it.
  [[nodiscard]] std::string here(const std::string& job) const {
    std::string all;
    book::Store store(book->database());
    store.each(
        "SELECT coalesce(tag, '-'), sum(cut), sum(to_mill), sum(delivered), sum(pieces) FROM v_still_here "
        "JOIN v_job j ON j.id = job_id WHERE j.code = ? GROUP BY tag ORDER BY tag",
        [&](const book::Row& row) {
          all += row.text(0) + ": " + row.text(1) + " - " + row.text(2) + " - " + row.text(3) + " = " +
                 row.text(4) + "\n";
        },
        job);
    return all;
  }
};

std::int64_t pieces_on(const Paper& slip) {
  std::int64_t all = 0;
  for (const LoadLine& line : slip.load) all += line.pieces;
  return all;
}

}  // namespace

TEST_CASE("of lumber on halves a load takes the customer's half, and the mill's stays") {
  const Boards yard;
  yard.post("job HLF\nspecies RC\n2x6 10/16\n");
  CHECK(yard.refusal("HLF") == "job HLF: nothing to load up to 2026-05-08; 10 pieces not divided yet");
  CHECK(yard.divide().split->mill_pieces == 5);
  const Loading loaded = yard.load_of("HLF");
  CHECK(pieces_on(loaded.paper) == 5);
  CHECK(loaded.left_out == std::vector<std::string>{"5 pieces of the mill's part"});
  CHECK(yard.here("HLF") == "-: 10 - 5 - 5 = 0\n");
  CHECK(yard.refusal("HLF").find("nothing to load") != std::string::npos);
  yard.whole();
}

TEST_CASE("lumber sawn since the division is not loaded before it is divided too") {
  const Boards yard;
  yard.post("job HLF\nspecies RC\n2x6 10/16\n1x3 200lf\n", "2026-05-06");
  static_cast<void>(yard.divide());
  yard.post("job HLF\nspecies RC\n2x6 4/16\n", "2026-05-07");
  const Loading loaded = yard.load_of("HLF");
  CHECK(pieces_on(loaded.paper) == 5);
  CHECK(loaded.left_out ==
        std::vector<std::string>{"4 pieces not divided yet", "5 pieces and 100 lf of the mill's part"});
  REQUIRE(loaded.paper.load.size() == 2);
  CHECK(loaded.paper.load[0].length == measure::feet(100));
  static_cast<void>(yard.divide());
  CHECK(pieces_on(yard.load_of("HLF").paper) == 2);
  CHECK(yard.here("HLF") == "-: 14 - 7 - 7 = 0\n");
  yard.whole();
}

TEST_CASE("a division says which bundle is whose, and a bundle of the mill's is not loaded") {
  const Boards yard;
  yard.post("job HLF\nspecies RC\nbundle B1\n2x6 5/16\nbundle B2\n2x6 5/16\n");
  const Paper division = yard.divide();
  REQUIRE(division.split->lines.size() == 2);
  CHECK(division.split->lines[0].bundle == "B1");
  CHECK(division.split->lines[0].to_customer == 5);
  CHECK(division.split->lines[1].bundle == "B2");
  CHECK(division.split->lines[1].to_mill == 5);
  CHECK(yard.here("HLF") == "b1: 5 - 0 - 0 = 5\nb2: 5 - 5 - 0 = 0\n");
  CHECK(yard.refusal("HLF", {"B2", "B9"}) ==
        "job HLF: nothing to load up to 2026-05-08; 5 pieces of the mill's part; bundle B2 is the mill's; "
        "there is no bundle B9");
  const Loading loaded = yard.load_of("HLF", {"b1", "B9"});
  CHECK(pieces_on(loaded.paper) == 5);
  CHECK(loaded.left_out == std::vector<std::string>{"there is no bundle B9"});
  CHECK(yard.here("HLF") == "b1: 5 - 0 - 5 = 0\nb2: 5 - 5 - 0 = 0\n");
  CHECK(yard.refusal("HLF", {"B1"}) ==
        "job HLF: nothing to load up to 2026-05-08; bundle B1 went with an earlier load slip");
  yard.whole();
}

TEST_CASE(
    "a load taken back lies here again and can be loaded again; its slip stays in sight, and it is done "
    "once") {
  const Boards yard;
  yard.post("job PAY\nspecies DF\nbundle B1\n2x6 10/16\nbundle -\n1x3 120lf\n");
  static_cast<void>(yard.load_of("PAY"));
  CHECK(yard.here("PAY") == "b1: 10 - 0 - 10 = 0\n");
  CHECK_THROWS_WITH_AS(take_back_load(*yard.book, 1, " ", kFriday),
                       "say why: a reason is kept with it and printed", Refused);
  CHECK_THROWS_WITH_AS(take_back_load(*yard.book, 2, "no such", kFriday), "there is no load 2", Refused);
  CHECK_THROWS_AS(take_back_load(*yard.book, 1, "too soon", kFriday - 1), Refused);
  const std::string slip = yard.book->current("load 1")->body;
  const Paper back = take_back_load(*yard.book, 1, "the truck broke down", kFriday + 1);
  CHECK(subject_of(back) == "take-back 1");
  CHECK(yard.book->current("take-back 1")->why == "the truck broke down");
  CHECK(yard.book->current("load 1")->body == slip);
  CHECK(text_of(printed(*yard.book, find_paper(*yard.book, PaperKind::load, 1)))
            .find("Taken back on 2026-05-09: the truck broke down.") != std::string::npos);
  CHECK(yard.here("PAY") == "-: 0 - 0 - 0 = 0\nb1: 10 - 0 - 0 = 10\n");
  CHECK_THROWS_WITH_AS(take_back_load(*yard.book, 1, "again", kFriday + 1),
                       "load slip 1 was taken back already on 2026-05-09: the truck broke down", Refused);
  const Loading again = yard.load_of("PAY");
  CHECK(again.paper.number == 2);
  CHECK(again.paper.load.size() == 2);
  yard.whole();
  yard.book->rebuild();
  CHECK(yard.here("PAY") == "b1: 10 - 0 - 10 = 0\n");
}

TEST_CASE("what a correction took off the tally after it had gone is told with the next load") {
  const Boards yard;
  yard.post("job PAY\nspecies DF\n2x6 10/16\n");
  static_cast<void>(yard.load_of("PAY"));
  yard.post("job PAY\nspecies DF\n2x6 8/16\n2x8 3/16\n", "2026-05-08", "counted again");
  const Loading loaded = yard.load_of("PAY");
  CHECK(pieces_on(loaded.paper) == 3);
  CHECK(loaded.left_out ==
        std::vector<std::string>{
            "2 of 2x6x16 DF: went with a load slip, and a correction took them off the tally"});
}

TEST_CASE("a load slip says how its lumber was counted, as it was") {
  const Boards yard;
  yard.post(
      "job PAY\nspecies DF\nbundle B1\n2x6 10/16\nbundle B2\n1x3 120lf\nbundle B3\n2x6 1/16\n1x3 10lf\n");
  const auto said = [&](const std::string& bundle) {
    return yard.load_of("PAY", {bundle}).paper.document.tables.front().notes.front();
  };
  CHECK(said("B1") == "Counted piece by piece when it was sawn.");
  CHECK(said("B2") == "Measured end to end when it was sawn.");
  CHECK(said("B3") ==
        "Counted piece by piece when it was sawn; a length \"in all\" was measured end to end.");
}

namespace {

/// Any history of a yard: sawing, corrections, divisions, loads and loads taken back.
class Yards {
 public:
  explicit Yards(unsigned seed) : random_(seed) {}

  void step() {
    try {
      switch (pick(7)) {
        case 0:
        case 1:
          return saw(++days_, "");
        case 2:
          if (days_ > 0) saw(1 + pick(days_), "again " + std::to_string(++corrections_));
          return;
        case 3:
          static_cast<void>(divide_lumber(*yard_.book, "HLF", today(), today()));
          ++done_["division"];
          return;
        case 4:
        case 5:
          return load_some();
        default:
          static_cast<void>(take_back_load(*yard_.book, 1 + pick(std::max(1, slips_)), "came back", today()));
          ++done_["taken back"];
          return;
      }
    } catch (const Refused&) {
    }
  }
  void check() {
    book::Store store(yard_.book->database());
    CHECK(store.number("SELECT " + tests::stock_wrongly_kept()) == 0);
    for (const std::string job : {"HLF", "PAY"}) {
      const auto sum = [&](const std::string& sql) {
        return store.number("SELECT coalesce(" + sql, job).value_or(0);
      };
      const std::int64_t cut = sum("sum(pieces), 0) FROM v_tally WHERE job = ?");
      const std::int64_t mills = sum("sum(to_mill), 0) FROM v_paper_share WHERE length > 0 AND job = ?");
      const std::int64_t gone = sum("sum(pieces), 0) FROM v_load WHERE taken_back IS NULL AND job = ?");
      const std::int64_t here =
          sum("sum(pieces), 0) FROM v_still_here JOIN v_job j ON j.id = job_id WHERE j.code = ?");
      CHECK(cut == mills + gone + here);
    }
  }
  std::map<std::string, int> finish() {
    yard_.whole();
    return done_;
  }

 private:
  using Stacks = std::map<std::string, std::int64_t>;
  int pick(int past) { return static_cast<int>(random_() % static_cast<unsigned>(past)); }
  [[nodiscard]] Day today() const { return kFriday + days_; }
  std::string job() { return pick(3) == 0 ? "PAY" : "HLF"; }

  void saw(int day, const std::string& why) {
    std::string text = "job " + job() + "\nspecies " + (pick(2) == 0 ? "RC" : "DF") + "\n";
    for (int lines = 1 + pick(4); lines > 0; --lines) {
      const int bundle = pick(4);
      text += bundle == 0 ? "bundle -\n" : "bundle B" + std::to_string(bundle) + "\n";
      if (pick(5) == 0)
        text += "1x3 " + std::to_string(10 + pick(90)) + "lf\n";
      else
        text += std::string(pick(2) == 0 ? "2x6" : "4x4 No2") + " " + std::to_string(1 + pick(15)) + "/" +
                (pick(2) == 0 ? "12" : "16") + "\n";
    }
    yard_.post(text, write_day(kFriday + day), why);
  }
  /// What lies of each stack of a job, and what of each kind is the customer's by the divisions and not gone.
  Stacks lying(const std::string& job) const {
    Stacks all;
    book::Store store(yard_.book->database());
    store.each(
        "SELECT coalesce(tag, ''), species_id, grade_id, size_id, length, sum(pieces + along) FROM "
        "v_stock_id "
        "WHERE owner <> 'own' AND job_id = (SELECT id FROM v_job WHERE code = ?) GROUP BY 1, 2, 3, 4, 5",
        [&](const book::Row& row) {
          all[row.text(0) + " " + row.text(1) + " " + row.text(2) + " " + row.text(3) + " " + row.text(4)] =
              row.number(5);
        },
        job);
    return all;
  }
  Stacks customers(const std::string& job) const {
    Stacks all;
    book::Store store(yard_.book->database());
    store.each(
        "SELECT species || ' ' || grade || ' ' || size || ' ' || length, sum(n) FROM ("
        "SELECT species, grade, size, length, to_customer AS n FROM v_paper_share WHERE job = ?1 UNION ALL "
        "SELECT species, grade, size, CASE pieces WHEN 0 THEN 0 ELSE length END, "
        "CASE pieces WHEN 0 THEN -length ELSE -pieces END FROM v_load WHERE job = ?1 AND taken_back IS NULL) "
        "GROUP BY 1",
        [&](const book::Row& row) { all[row.text(0)] = row.number(1); }, job);
    return all;
  }
  void load_some() {
    const std::string of = job();
    std::vector<std::string> bundles;
    if (pick(2) == 0) bundles.push_back("B" + std::to_string(1 + pick(4)));
    const Stacks before = lying(of);
    const Stacks owed = customers(of);
    const Loading loaded = billing::load(*yard_.book, {of, bundles, "", "", ""}, today());
    ++slips_;
    ++done_["load"];
    const Stacks after = lying(of);
    for (const auto& one : after) {
      const std::string& stack = one.first;
      const auto at = before.find(stack);
      CHECK_MESSAGE(one.second >= std::min<std::int64_t>(0, at == before.end() ? 0 : at->second), stack);
    }
    if (of != "HLF") return;
    for (const auto& one : customers(of)) {
      const std::string& kind = one.first;
      const auto at = owed.find(kind);
      CHECK_MESSAGE(one.second >= std::min<std::int64_t>(0, at == owed.end() ? 0 : at->second), kind);
    }
  }

  std::mt19937 random_;
  Boards yard_;
  int days_ = 0;
  int slips_ = 0;
  int corrections_ = 0;
  std::map<std::string, int> done_;
};

}  // namespace

TEST_CASE(
    "whatever is sawn, corrected, divided, loaded and taken back: no load takes a stack below nothing or of "
    "the "
    "mill's part, and cut is to the mill, delivered and still here") {
  std::map<std::string, int> done;
  for (unsigned seed = 1; seed <= 12; ++seed) {
    CAPTURE(seed);
    Yards yards(seed);
    for (int i = 0; i < 40; ++i) {
      yards.step();
      yards.check();
    }
    for (const auto& [what, many] : yards.finish()) done[what] += many;
  }
  for (const std::string what : {"division", "load", "taken back"})
    CHECK_MESSAGE(done[what] >= 15, what << ": too few to tell, " << done[what]);
}
