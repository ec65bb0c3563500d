// correction_test.cpp -- a sheet that is billed and then corrected: whatever was changed of it, the next draft asks for
// exactly the difference.
#include <rapidcheck.h>

#include <map>
#include <memory>

#include "base/text.h"
#include "book_helpers.h"
#include "office/draft_work.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kBegin = *read_day("2024-01-01");
const Day kEnd = *read_day("2026-05-08");

int pick(int least, int past) {
  return *rc::gen::inRange(least, past);
}
template <class T>
const T& one_of(const std::vector<T>& all) {
  return all[static_cast<std::size_t>(pick(0, static_cast<int>(all.size())))];
}

/// What the items come to, exactly: nothing is rounded, so that nothing hides behind a rounding.
Rational worth(const std::vector<Item>& items) {
  Rational sum;
  for (const Item& item : items) {
    if (item.role == Role::share || !item.waived.empty() || item.unpriced) continue;
    sum = sum + item.quantity * item.rate.rate / Rational(item.rate.per);
  }
  return sum;
}

/// The job's days as one bill that nothing went before.
Draft afresh(const Work& work) {
  return make_draft(*work.deal.terms, work.deal.job, work.facts, {}, {}, kEnd);
}

std::string charges() {
  return "[[charge]]\nname = \"waiting\"\nrate = 75\nper = \"hour\"\nstop = \"waiting\"\n"
         "[[charge]]\nname = \"metal\"\nflat = 40\nrate = 9\nper = \"tooth\"\nstrike = true\n"
         "[[charge]]\nname = \"travel\"\nflat = 30\nrate = 2.25\nper = \"mile\"\nmove = true\nround_trip = "
         "true\n"
         "free = 10\n"
         "[[charge]]\nname = \"road\"\nrate = 48\nper = \"hour\"\nmove = true\n"
         "[[charge]]\nname = \"planing\"\nrate = 0.055\nper = \"bf\"\n"
         "[[charge]]\nname = \"big\"\nrate = 8\nper = \"log\"\nunasked = true\ndiameter_from = 16\n"
         "[[charge]]\nname = \"long\"\nrate = 0.035\nper = \"bf\"\nunasked = true\nlength_over = \"12\"\n";
}

/// A mill for each basis on which something is billed in money.
std::vector<std::string> mills() {
  std::vector<std::string> all;
  for (const char* basis :
       {"bf\"\nrate = 0.487", "mbf\"\nrate = 512.50", "log-scale\"\nrate = 0.333\nrule = \"scribner-c\"",
        "log-mbf\"\nrate = 455\nrule = \"doyle\"", "log\"\nrate = 17.35", "m3-log\"\nrate = 61.25",
        "hour\"\nrate = 83.50", "lineal-foot\"\nrate = 0.277", "lineal-metre\"\nrate = 1.1",
        "day\"\nrate = 812.50"}) {
    all.push_back("[mill]\nname = \"Mill\"\n[[price]]\nbasis = \"" + std::string(basis) +
                  "\n[[price]]\nbasis = \"bf\"\nrate = 0.61\nspecies = \"WH\"\n" + charges());
  }
  // by girth: only its own logs have one
  all.push_back(
      "[mill]\nname = \"Mill\"\n[[price]]\nbasis = \"bf\"\nrate = 0.5\n[[price]]\nbasis = \"log-scale\"\n"
      "rate = 0.92\nrule = \"hoppus\"\nspecies = \"WH\"\n" +
      charges());
  return all;
}

/// The sheets of a job's two days: received and sawn, and a second shift.
std::vector<std::string> some_days(Day day, const std::string& job, const std::string& tag) {
  const std::string next = write_day(day + 1);
  return {"sheet " + write_day(day) + "\njob " + job + "\nspecies DF\nin " + tag + "9 15x12\nin " + tag +
              "8 12x16 defect 1ft rot\n2x6 3/10\n",
          "sheet " + next + "\nmove camp to lake 46 mi 2:00\nsawing 7:00-9:00 10:00-12:30\njob " + job +
              "\nspecies DF\ngrade No2\nlog " + tag + "1 12x32 segments 12,15\nlog " + tag +
              "2 13x16 girth 48\nlog " + tag + "3 12-15x16 mid 13\nlog " + tag +
              "4 14x16 defect 10% rot defect 7x7x4\nlog 17x12\nlog " + tag + "8-" + tag +
              "9\nstop 0:36 waiting tractor, charge\nstop 0:20 metal staple\n2x6 5/10 1/12\n"
              "5/4 rw fas 7-1/2x8 6x8*3\n1x3 212lf\nless 2x6 1/10 split\nteeth head replaced 3 metal " +
              tag + "1\ncharge " + job +
              " planing 250\n2x8x16 4\nresaw 2x8 1/16\nspecies WH\nlog 14x16 mid 15 girth 52\n4x4 "
              "2/14\nsawing 13:00-14:00, job " +
              job + "\n",
          "sheet " + next + " shift 2\nsawing 18:00-19:00\njob " + job + "\nspecies DF\n50x100 8/3.6m\nlog " +
              tag + "5 16x12\n"};
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (const std::string_view line : split_lines(text)) lines.emplace_back(line);
  return lines;
}

/// One number of a word made another, or one letter.
std::string changed_word(std::string word) {
  std::vector<std::size_t> at;
  for (std::size_t i = 0; i < word.size(); ++i)
    if (is_digit(word[i])) at.push_back(i);
  if (at.empty()) {
    static const std::vector<std::string> kOthers{"WH", "DF",    "metal", "waiting", "rot", "less",  "km",
                                                  "mi", "OTHER", "in",    "log",     "No1", "teeth", "stop"};
    return one_of(kOthers);
  }
  word[one_of(at)] = static_cast<char>('0' + pick(0, 10));
  return word;
}

/// The text with one token of one line changed, taken out or put in again; or a whole line so.
std::string with_change(const std::string& text) {
  std::vector<std::string> lines = lines_of(text);
  const auto line = static_cast<std::size_t>(pick(1, static_cast<int>(lines.size())));
  std::vector<std::string> words = split_words(lines[line]);
  const auto word = static_cast<std::size_t>(pick(0, static_cast<int>(words.size())));
  switch (pick(0, 12)) {
    case 0:
      lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(line));
      return join(lines, "\n") + "\n";
    case 1:
      lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(line), lines[line]);
      return join(lines, "\n") + "\n";
    case 2:
      std::swap(lines[line], lines[static_cast<std::size_t>(pick(1, static_cast<int>(lines.size())))]);
      return join(lines, "\n") + "\n";
    case 3:
      words.erase(words.begin() + static_cast<std::ptrdiff_t>(word));
      break;
    case 4:
      words.push_back(", job OTHER");
      break;
    default:
      words[word] = changed_word(words[word]);
  }
  lines[line] = join(words, " ");
  return join(lines, "\n") + "\n";
}

/// Days billed, corrected in one of their sheets, and drafted again, each under a job of its own.
class Corrections {
 public:
  explicit Corrections(const std::string& mill) : demo_(mill, false, "2023-01-01 08:00:00") {
    *demo_.clock = "2026-05-08 19:00:00";
  }

  void bill(const std::vector<std::string>& sheets, const std::string& job) {
    for (const std::string& sheet : sheets) demo_.book->post_sheet(sheet, "");
    const Work work = work_of_job(*demo_.book, job, kEnd);
    before_ = afresh(work);
    RC_ASSERT(before_.problems.empty());
    issue_invoice(*demo_.book, job, kEnd, kEnd);
    RC_ASSERT(draft_job(*demo_.book, job, kEnd, kEnd).lines.empty());
  }
  /// False when the text can no longer be read, or says what no price is for.
  bool correct(const std::string& text, const std::string& job) {
    try {
      demo_.book->post_sheet(text, "written down wrong");
    } catch (const Refused&) {
      return false;
    }
    const Work work = work_of_job(*demo_.book, job, kEnd);
    const Draft now = afresh(work);
    const Draft next = draft_with(work, kEnd);
    if (!now.problems.empty()) return false;
    RC_ASSERT(worth(next.items) == worth(now.items) - worth(before_.items));
    if (next.lines.empty()) return true;
    if (pick(0, 6) == 0) {
      const std::vector<Waiting> all = waiting(*demo_.book, kEnd, kEnd);
      RC_ASSERT(
          std::any_of(all.begin(), all.end(), [&](const Waiting& one) { return same_word(one.job, job); }));
    }
    if (next.problems.empty() && next.total.minor > 0) {  // and when that is billed, nothing is left
      issue_invoice(*demo_.book, job, kEnd, kEnd);
      RC_ASSERT(draft_job(*demo_.book, job, kEnd, kEnd).lines.empty());
    }
    return true;
  }

 private:
  DemoBook demo_;
  Draft before_;
};

}  // namespace

TEST_CASE(
    "any token of any line of billed sheets, changed, moves the next draft by exactly what the price moved") {
  const std::vector<std::string> all = mills();
  std::map<std::string, std::unique_ptr<Corrections>> books;
  Day day = kBegin;
  int number = 0;
  int compared = 0;
  CHECK(rc::check("corrections", [&] {
    const std::string& mill = one_of(all);
    std::unique_ptr<Corrections>& corrections = books[mill];
    if (!corrections) corrections = std::make_unique<Corrections>(mill);
    day = day + 2;
    const std::string job = "J" + std::to_string(++number);
    const std::vector<std::string> sheets = some_days(day, job, "L" + std::to_string(number) + "X");
    corrections->bill(sheets, job);
    const std::string changed = with_change(one_of(sheets));
    RC_LOG() << mill << changed;
    if (corrections->correct(changed, job)) ++compared;
  }));
  CHECK(compared > 20);  // most changes can still be read and priced
}

TEST_CASE("a billed log measured anew, and a move that took longer, are asked for by their difference") {
  struct Case {
    const char* price;
    const char* was;
    const char* is;
    const char* more;
  };
  // Scribner Decimal C: 12x16 8, 15x16 14, 18x16 21 tens. 12 to 15 in at 32 ft: 220; 12 to 18: 290.
  for (const Case& one : {
           Case{"log-scale\"\nrule = \"scribner-c\"\nrate = 1", "log T1 12x32 segments 12,15",
                "log T1 12x32 segments 12,18", "70.00"},
           Case{"log-scale\"\nrule = \"hoppus\"\nrate = 1", "log T1 14x16 girth 48", "log T1 14x16 girth 60",
                "9.00"},  // (60/4)^2 - (48/4)^2 = 81 in2 of 16 ft, over 144
           Case{"bf\"\nrate = 1", "move a to b 5 mi 2:00", "move a to b 5 mi 3:00", "60.00"},
       }) {
    CAPTURE(one.was);
    DemoBook demo("[mill]\nname = \"Mill\"\n[[price]]\nbasis = \"" + std::string(one.price) +
                      "\n[[charge]]\nname = \"road\"\nrate = 60\nper = \"hour\"\nmove = true\n",
                  false);
    demo.book->post_sheet("sheet 2026-05-05\njob TER\n" + std::string(one.was) + "\nlog T2 12x16 girth 40\n",
                          "");
    issue_invoice(*demo.book, "TER", kFriday, kFriday);
    demo.book->post_sheet("sheet 2026-05-05\njob TER\n" + std::string(one.is) + "\nlog T2 12x16 girth 40\n",
                          "slip");
    CHECK(demo.draft("TER").subtotal == money(one.more));
  }
}

TEST_CASE("a log billed by its tag follows the measure of the day it was received, when that is corrected") {
  DemoBook demo(
      "[mill]\nname = \"Mill\"\n[[price]]\nbasis = \"log-scale\"\nrule = \"scribner-c\"\nrate = 1\n", false);
  demo.book->post_sheet("sheet 2026-05-04\njob TER\nin T1 12x16\nin T2 12x16\n", "");
  demo.book->post_sheet("sheet 2026-05-05\njob TER\nlog T1-T2\n", "");
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  demo.book->post_sheet("sheet 2026-05-04\njob TER\nin T1 12x16\nin T2 15x16\n", "read again");
  CHECK(demo.draft("TER").subtotal == money("60.00"));
  CHECK(waiting(*demo.book, kFriday, kFriday).size() == 1);
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  CHECK(demo.draft("TER").lines.empty());
  CHECK(waiting(*demo.book, kFriday, kFriday).empty());
}

TEST_CASE("a billed sheet that is corrected to another job waits as money due back to the first") {
  DemoBook demo("[mill]\nname = \"Mill\"\n[[price]]\nbasis = \"bf\"\nrate = 1\n", false);
  demo.book->post_sheet("sheet 2026-05-05\njob TER\n2x6 10/10\n", "");
  issue_invoice(*demo.book, "TER", kFriday, kFriday);
  demo.book->post_sheet("sheet 2026-05-05\njob QHH\n2x6 10/10\n", "it was the hall's");
  CHECK(demo.draft("TER").subtotal == money("-100.00"));
  CHECK(waiting(*demo.book, kFriday, kFriday).size() == 2);
}
