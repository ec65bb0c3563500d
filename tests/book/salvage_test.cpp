// salvage_test.cpp -- what can be read of a damaged book is read: entries come out as they were posted or not as complete,
// what is lost is named, and the file stays as it is.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <random>

#include "base/error.h"
#include "book/salvage.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

constexpr std::size_t kPage = 4096;
constexpr int kDays = 16;

/// Short and long texts, one of them over several pages, and a paper.
std::vector<Entry> make_book(const Shelf& shelf) {
  Book book = shelf.new_book();
  for (int day = 1; day <= kDays; ++day) {
    std::string text =
        fmt::format("sheet 2026-06-{:02}\njob BRN\nspecies DF\nlog T{} 14x12\n2x6 5/12 3/16\n", day, day);
    for (int i = 0; i < day * day; ++i) text += fmt::format("note the {}th remark of this long day\n", i);
    book.post_sheet(text, "");
  }
  book.post_paper("invoice 1", "its text", "");
  return book.journal();
}

void spill(const Shelf& shelf, const std::string& bytes) {
  std::ofstream(shelf.file(), std::ios::binary | std::ios::trunc) << bytes;
}

bool same(const Entry& a, const Entry& b) {
  return std::tie(a.number, a.kind, a.subject, a.revision, a.at, a.why, a.body, a.digest, a.keeps_rules) ==
         std::tie(b.number, b.kind, b.subject, b.revision, b.at, b.why, b.body, b.digest, b.keeps_rules);
}

/// Whatever is said to be proved is what was posted; what is lost and what is found are all there was. How many were
/// proved.
int check_salvage(const Shelf& shelf, const std::vector<Entry>& truth, const std::string& hurt) {
  spill(shelf, hurt);
  std::optional<Salvage> found;
  try {
    found = salvage(shelf.file());
  } catch (const Failed& fault) {
    CHECK(std::string(fault.what()).find("no entry of a book") != std::string::npos);
  }
  CHECK(shelf.bytes() == hurt);
  if (!found) return 0;
  int proved = 0;
  for (const auto& [at, one] : found->entries) {
    const std::int64_t number = at;  // what stands in a binding cannot be captured
    CAPTURE(number);
    if (!one.proved) continue;
    ++proved;
    REQUIRE(number <= static_cast<std::int64_t>(truth.size()));
    CHECK(same(one.entry, truth[static_cast<std::size_t>(number - 1)]));
  }
  const std::int64_t last = found->entries.rbegin()->first;
  for (std::int64_t number = 1; number <= last; ++number) {
    const bool nameless = std::find(found->lost_nameless.begin(), found->lost_nameless.end(), number) !=
                          found->lost_nameless.end();
    CHECK(static_cast<int>(found->entries.contains(number)) + static_cast<int>(found->lost.contains(number)) +
              static_cast<int>(nameless) ==
          1);
  }
  for (const auto& [number, name] : found->lost) {
    if (number <= static_cast<std::int64_t>(truth.size()))
      CHECK(name.subject == truth[static_cast<std::size_t>(number - 1)].subject);
  }
  return proved;
}

}  // namespace

TEST_CASE("of a sound book every entry is read and proved, and a book made of them is the same to the row") {
  const Shelf shelf;
  const auto truth = make_book(shelf);
  CHECK(check_salvage(shelf, truth, shelf.bytes()) == static_cast<int>(truth.size()));
  const auto found = salvage(shelf.file());
  CHECK(found.proved_to() == static_cast<std::int64_t>(truth.size()));
  CHECK(found.lost.empty());
  CHECK_FALSE(found.cut_short);
  const auto made = Book::create_of(shelf.folder() / "again.book", Shelf::options(), proved_entries(found));
  CHECK(made.verify().empty());
  CHECK(made.newest().digest == truth.back().digest);
  CHECK(Shelf::dump(made) == Shelf::dump(shelf.open(true)));
}

TEST_CASE(
    "a book cut at any page, or at any byte, gives what stands before the cut and nothing that never was") {
  const Shelf shelf;
  const auto truth = make_book(shelf);
  const std::string whole = shelf.bytes();
  int most = 0;
  for (std::size_t keep = 0; keep < whole.size(); keep += kPage)
    most = std::max(most, check_salvage(shelf, truth, whole.substr(0, keep)));
  CHECK(most > 10);
  std::mt19937 random(41);
  for (int i = 0; i < 40; ++i) {
    const std::size_t keep = random() % whole.size();
    CAPTURE(keep);
    check_salvage(shelf, truth, whole.substr(0, keep));
  }
}

TEST_CASE("a book that lost any one page, its first included, gives all entries that were not on it") {
  const Shelf shelf;
  const auto truth = make_book(shelf);
  const std::string whole = shelf.bytes();
  for (std::size_t page = 0; page < whole.size() / kPage; ++page) {
    CAPTURE(page);
    std::string hurt = whole;
    std::fill_n(hurt.begin() + static_cast<std::ptrdiff_t>(page * kPage), kPage, '\0');
    check_salvage(shelf, truth, hurt);
    std::size_t as_posted = 0;
    for (const auto& [number, one] : salvage(shelf.file()).entries) {
      const bool right = same(one.entry, truth[static_cast<std::size_t>(number - 1)]);
      as_posted += right ? 1 : 0;
      const bool rightly = right || !one.proved;
      CHECK(rightly);
    }
    CHECK(as_posted >= truth.size() - 10);  // the most short entries that stand on one page
  }
}

TEST_CASE("bytes flipped anywhere never make a proved entry of what was not posted") {
  const Shelf shelf;
  const auto truth = make_book(shelf);
  const std::string whole = shelf.bytes();
  std::mt19937 random(1852);
  int damaged = 0;
  for (int i = 0; i < 150; ++i) {
    std::string hurt = whole;
    const std::size_t many = 1 + random() % 40;
    for (std::size_t k = 0; k < many; ++k) {
      char& byte = hurt[random() % hurt.size()];
      byte = static_cast<char>(byte ^ static_cast<char>(1 + random() % 255));
    }
    damaged += check_salvage(shelf, truth, hurt) < static_cast<int>(truth.size()) ? 1 : 0;
  }
  CHECK(damaged > 20);
}

TEST_CASE("an entry whose text was lost in part is told apart, with what is left of it") {
  const Shelf shelf;
  const auto truth = make_book(shelf);
  std::string hurt = shelf.bytes();
  const std::size_t in_last = hurt.find("note the 240th remark");
  REQUIRE(in_last != std::string::npos);  // on an overflow page of the last sheet, the only one as long
  const std::size_t page = in_last / kPage * kPage;
  std::fill_n(hurt.begin() + static_cast<std::ptrdiff_t>(page), kPage, '\0');
  CHECK(check_salvage(shelf, truth, hurt) ==
        kDays - 1);  // that sheet and the paper behind it cannot be proved
  const auto found = salvage(shelf.file());
  const Salvaged& cut = found.entries.at(kDays);
  CHECK_FALSE(cut.complete);
  CHECK(cut.entry.subject == fmt::format("2026-06-{}", kDays));
  CHECK(cut.entry.body.size() > 1000);
  CHECK(truth[kDays - 1].body.starts_with(cut.entry.body.substr(0, 1000)));
  CHECK(found.proved_to() == kDays - 1);
  CHECK(found.entries.at(kDays + 1).complete);
}

TEST_CASE("what is no book at all is answered so") {
  const Shelf shelf;
  CHECK_THROWS_AS(salvage(shelf.folder() / "nowhere"), const Refused&);
  CHECK_THROWS_AS(salvage(shelf.folder()), const Refused&);
  spill(shelf, "");
  CHECK_THROWS_AS(salvage(shelf.file()), const Failed&);
  std::string noise(40 * kPage, '\0');
  std::mt19937 random(7);
  for (char& byte : noise) byte = static_cast<char>(random() % 256);
  spill(shelf, noise);
  CHECK_THROWS_AS(salvage(shelf.file()), const Failed&);
}
