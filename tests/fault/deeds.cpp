#include "fault/deeds.h"

#include <stdexcept>

#include "command/desk.h"

namespace kerfbook::tests {
namespace {

constexpr const char* kBundles =
    "sheet 2026-05-09\nsite yard\njob QHH\nspecies WH\nsawing 8:00-9:00\nbundle B1\n2x6 5/16\nbundle B2\n2x4 "
    "9/12\n"
    "bundle -\njob own\nspecies DF\nsawing 9:00-10:00\n1x4 No2 9/12\nsold cash 1x4 No2 3/12 at 1.00\n";
/// One more sheet of that day, under no job.
constexpr const char* kNoJob =
    "sheet 2026-05-09 shift 2\nsite yard\nspecies DF\nsawing 8:00-9:00\n2x4 9/12\n";

void desk(const fs::path& folder, std::vector<std::string> words, const std::string& time = "10:00:00",
          const std::string& day = kToday) {
  if (words.front() != "new" && words.front() != "sign")
    words.insert(words.begin(), {"-b", (folder / kBook).string()});
  const Ran ran = run_at(day, time, words);
  if (ran.code != 0) throw std::runtime_error(words.front() + " " + words.back() + ": " + ran.err);
}

std::string demo(const std::string& name) {
  return (kRoot / "demo_data" / name).string();
}

void spill_demo(const fs::path& folder, const std::string& name, const std::string& as) {
  spill(folder / as, slurp(kRoot / "demo_data" / name));
}

void post_bad_day(const fs::path& folder) {
  spill(folder / "shift2.sheet", kNoJob);
  desk(folder, {"post", (folder / "shift2.sheet").string()});
}

/// Copies of two days of one week, of which the rule lets one go.
void make_old_copies(const fs::path& folder) {
  desk(folder, {"copy"}, "10:00:00", "2026-04-07");
  desk(folder, {"copy"}, "10:00:00", "2026-04-08");
}

/// A copy, and a day more in the book since.
void make_copy_and_go_on(const fs::path& folder) {
  desk(folder, {"copy", "--into", (folder / "stick").string()});
  desk(folder, {"post", demo("2026-05-08.sheet")});
}

void make_key(const fs::path& folder) {
  desk(folder, {"sign", "--new-key", (folder / "mill.key").string()});
}

/// A paper of an earlier day, whose place the new one takes.
std::function<void(const fs::path&)> with_old(const std::string& name) {
  return [name](const fs::path& folder) { spill(folder / name, "the paper of an earlier day\n"); };
}

const std::string kCopy = "mill.book.2026-05-09-121407.copy";
const std::string kFirstCopy = "stick/mill.book.2026-05-09-100000.copy";
const std::string kTwice = "less than a minute ago";

std::vector<Deed> posting_sheets() {
  return {
      {"post a day", {"post", "08.sheet"}, kBook, {"2026-05-08: posted"}, {"already in the book"}},
      {"post three days",
       {"post", "08.sheet", "10.sheet", "11.sheet"},
       kBook,
       {"2026-05-08: posted", "2026-05-10: posted"},
       {"already in the book"}},
      {"correct a day",
       {"post", "07.sheet", "--why", "bundle count: 23, not 32"},
       kBook,
       {"2026-05-07: posted as revision 2"},
       {"already in the book"}},
      {"post a mill file",
       {"post", "mill.toml", "--why", "measured again"},
       kBook,
       {"mill: posted as revision 2"},
       {"already in the book"}},
  };
}

std::vector<Deed> posting_papers() {
  return {
      {"issue",
       {"issue", "TER", "-o", "ter.html"},
       kBook,
       {"invoice 2 issued"},
       {"nothing is left"},
       with_old("ter.html")},
      {"issue a sale",
       {"issue", "--sale", "cash", "--paid", "cash"},
       kBook,
       {"invoice 2 issued"},
       {"nothing"}},
      {"pay", {"pay", "50", "--invoice", "1", "-o", "receipt.txt"}, kBook, {"receipt 2 posted"}, {kTwice}},
      {"pay, with a workbook",
       {"pay", "300", "--customer", "QHH", "-o", "receipt.xlsx"},
       kBook,
       {"receipt 2 posted"},
       {kTwice},
       with_old("receipt.xlsx")},
      {"refund", {"pay", "20", "--job", "TER", "--refund"}, kBook, {"refund 1 posted"}, {kTwice}},
      {"credit",
       {"credit", "1", "7", "--why", "a short board", "-o", "credit.csv"},
       kBook,
       {"credit note 1 posted"},
       {kTwice},
       with_old("credit.csv")},
      {"cancel", {"credit", "1", "--why", "billed twice"}, kBook, {"credit note 1 posted"}, {"invoice 1"}},
      {"write off", {"write-off", "1", "2", "--why", "small rest"}, kBook, {"write-off 1 posted"}, {kTwice}},
      {"waive",
       {"waive", "TER", "2026-05-05", "waiting", "--why", "wet"},
       kBook,
       {"waived: waiting"},
       {"waived"}},
      {"let go",
       {"waive", "no-job", "2026-05-09", "all", "--shift", "2", "--why", "a trial cut"},
       kBook,
       {"let go: "},
       {"nothing is open"},
       post_bad_day},
      {"load", {"load", "QHH", "B2", "-o", "load.html"}, kBook, {"load slip 2 issued"}, {"B2"}},
      {"take back",
       {"load", "--take-back", "1", "--why", "the truck broke down"},
       kBook,
       {"load slip 1 is taken back"},
       {"load slip 1"}},
      {"divide",
       {"divide", "MUM", "-o", "mumbrey.json"},
       kBook,
       {"division 1 issued"},
       {"no lumber is left"},
       [](const fs::path& folder) {
         desk(folder, {"post", demo("2026-05-08.sheet")});
       }},
  };
}

std::vector<Deed> keeping_books() {
  return {
      {"new",
       {"new", "new.book", "--mill", "mill.toml"},
       "new.book",
       {"new.book: a new book", "new.book: is made"},
       {"is there already"}},
      {"rebuild", {"rebuild"}, "", {"all totals worked out again"}, {}},
      {"copy", {"copy"}, kBook + ".copies/" + kCopy, {"a copy of mill.book", "is made"}, {}, make_old_copies},
      {"copy onto a stick",
       {"copy", "--into", "stick/mill"},
       "stick/mill/" + kCopy,
       {"a copy of mill.book", "is made"},
       {}},
      {"restore",
       {"restore", kFirstCopy, "--replace"},
       kBook,
       {"mill.book: is now that copy", "mill.book: is put back"},
       {},
       make_copy_and_go_on},
      {"make a key",
       {"sign", "--new-key", "mill.key"},
       "mill.key.public",
       {"mill.key: a new key"},
       {"is there already"},
       {},
       true,
       true},
      {"sign",
       {"sign", "--key", "mill.key"},
       "mill.book.entry7.signed",
       {"signed with key", "is written, but"},
       {"is there already"},
       make_key},
      {"salvage",
       {"salvage", "saved"},
       "saved/what-was-lost.txt",
       {"all of it as plain files"},
       {"is there already"},
       {},
       true,
       true,
       true},
      {"a report into a file",
       {"report", "production", "-o", "week.csv"},
       "week.csv",
       {"written: week.csv"},
       {},
       {},
       false},
      {"verify", {"verify"}, "", {"no damage found"}, {}, {}, false},
  };
}

std::vector<Deed> all_deeds() {
  std::vector<Deed> all = posting_sheets();
  for (const auto& more : {posting_papers(), keeping_books()})
    all.insert(all.end(), more.begin(), more.end());
  return all;
}

}  // namespace

const std::vector<Deed>& deeds() {
  static const std::vector<Deed> all = all_deeds();
  return all;
}

namespace {

void make_first_folder(const fs::path& folder) {
  desk(folder, {"new", (folder / kBook).string(), "--mill", demo("hargan.toml")});
  desk(folder, {"post", demo("2026-05-05.sheet"), demo("2026-05-07.sheet")});
  spill(folder / "bundles.sheet", kBundles);
  desk(folder, {"post", (folder / "bundles.sheet").string()});
  desk(folder, {"issue", "QHH"});
  desk(folder, {"pay", "100", "--job", "TER"});
  desk(folder, {"load", "QHH", "B1"});
  spill_demo(folder, "2026-05-08.sheet", "08.sheet");
  spill_demo(folder, "corrections/2026-05-07.sheet", "07.sheet");
  spill(folder / "10.sheet",
        "sheet 2026-05-10\nsite yard\njob QHH\nspecies WH\nsawing 8:00-9:00\n2x6 5/16\n");
  spill(folder / "11.sheet",
        "sheet 2026-05-11\nsite yard\njob QHH\nspecies WH\nsawing 8:00-9:00\n2x6 6/16\n");
  spill(folder / "mill.toml",
        slurp(kRoot / "demo_data" / "hargan.toml") + "\n[[customer]]\ncode = \"BRN\"\nname = \"Brenn\"\n");
}

}  // namespace

void prepare_folder(const fs::path& folder) {
  static const Scratch first;
  if (first.names().empty()) make_first_folder(first.path());
  fs::copy(first.path(), folder, fs::copy_options::recursive);
}

}  // namespace kerfbook::tests
