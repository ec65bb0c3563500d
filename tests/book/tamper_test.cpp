// tamper_test.cpp -- whoever changes what was posted behind the book's back is found out: verify names the entry.
#include <doctest/doctest.h>

#include "book/journal.h"
#include "book/shelf.h"

using namespace kerfbook;
using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

/// Five days in the book, entries 1 to 5.
void make_book(const Shelf& shelf) {
  Book book = shelf.new_book();
  for (int day = 1; day <= 5; ++day) {
    book.post_sheet("sheet 2026-06-0" + std::to_string(day) + "\njob BRN\nspecies DF\nlog T" +
                        std::to_string(day) + " 14x12\n2x6 5/12 3/16\n",
                    "");
  }
}

void change(const Shelf& shelf, const std::string& sql) {
  SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
  database.exec(sql);
}

std::string found_in(const Shelf& shelf) {
  std::string all;
  for (const auto& finding : shelf.open(true).verify()) all += finding.what + "\n";
  return all;
}

bool names(const std::string& found, int entry) {
  return found.find("journal entry " + std::to_string(entry) + " ") != std::string::npos;
}

}  // namespace

TEST_CASE("one changed byte in any field of a journal entry is found, and that entry is the only one named") {
  for (const char* field :
       {"body = body || ' '", "body = replace(body, '5/12', '6/12')", "at = '2026-06-01 20:00:01'",
        "why = 'because'", "revision = 2", "subject = '2026-06-13'", "kind = 'paper'",
        "digest = '0' || substr(digest, 2)", "digest = 'f' || substr(digest, 2)"}) {
    const Shelf shelf;
    make_book(shelf);
    const std::string before = shelf.open(true).journal()[2].digest;
    change(shelf, std::string("UPDATE journal SET ") + field + " WHERE entry = 3");
    CAPTURE(field);
    const std::string found = found_in(shelf);
    const bool digest_changed = shelf.open(true).journal()[2].digest != before;
    // A digest changed by itself no longer fits its entry nor the next; any other field only its own.
    if (std::string(field).starts_with("digest") && !digest_changed) continue;
    CHECK(names(found, 3));
    CHECK(names(found, 4) == digest_changed);
    CHECK_FALSE(names(found, 1));
    CHECK_FALSE(names(found, 2));
    CHECK_FALSE(names(found, 5));
  }
}

TEST_CASE("every single byte of a posted text counts") {
  const Shelf shelf;
  make_book(shelf);
  const std::string body = shelf.open(true).journal()[1].body;
  for (std::size_t at = 0; at < body.size(); ++at) {
    CAPTURE(at);
    Entry entry = shelf.open(true).journal()[1];
    const std::string before = shelf.open(true).journal()[0].digest;
    REQUIRE(digest_of(before, entry) == entry.digest);
    entry.body[at] = static_cast<char>(entry.body[at] ^ 1);
    CHECK(digest_of(before, entry) != entry.digest);
  }
}

TEST_CASE("an entry whose digest was made to fit its changed text is given away by the next") {
  const Shelf shelf;
  make_book(shelf);
  auto entries = shelf.open(true).journal();
  entries[2].body = "sheet 2026-06-03\njob BRN\nspecies DF\nlog T3 14x12\n2x6 50/12 3/16\n";
  const std::string fitted = digest_of(entries[1].digest, entries[2]);
  change(shelf,
         "UPDATE journal SET body = '" + entries[2].body + "', digest = '" + fitted + "' WHERE entry = 3");
  const std::string found = found_in(shelf);
  CHECK_FALSE(names(found, 3));
  CHECK(names(found, 4));
  CHECK(found.find("table ") != std::string::npos);  // and the worked-out rows no longer follow from it
}

TEST_CASE("an entry taken out of the journal is missed") {
  for (const int entry : {1, 3, 5}) {
    CAPTURE(entry);
    const Shelf shelf;
    make_book(shelf);
    change(shelf, "PRAGMA foreign_keys = OFF; DELETE FROM journal WHERE entry = " + std::to_string(entry));
    const std::string found = found_in(shelf);
    CHECK_FALSE(found.empty());
    if (entry < 5) CHECK(names(found, entry + 1));
    if (entry < 5) CHECK(found.find("entries between are missing") != std::string::npos);
    if (entry == 5) CHECK(found.find("table sheet") != std::string::npos);  // rows of a day nobody posted
  }
}

TEST_CASE("two entries that changed places are both named") {
  const Shelf shelf;
  make_book(shelf);
  change(shelf,
         "PRAGMA foreign_keys = OFF; UPDATE journal SET entry = 99 WHERE entry = 2; UPDATE journal SET entry "
         "= 2 "
         "WHERE entry = 3; UPDATE journal SET entry = 3 WHERE entry = 99");
  const std::string found = found_in(shelf);
  CHECK(names(found, 2));
  CHECK(names(found, 3));
  CHECK(names(found, 4));
}

TEST_CASE("an entry slipped in at the end without its digest is named") {
  const Shelf shelf;
  make_book(shelf);
  change(shelf,
         "INSERT INTO journal (entry, kind, subject, revision, at, why, body, digest, keeps_rules) "
         "SELECT 6, kind, '2026-06-06', 1, at, why, replace(body, '06-05', '06-06'), digest, keeps_rules "
         "FROM journal WHERE entry = 5");
  CHECK(names(found_in(shelf), 6));
}

TEST_CASE("any worked-out table with a row changed, taken out or put in is found, and rebuild mends it") {
  for (const char* deed : {"UPDATE run SET net = net + 1 WHERE day = (SELECT min(day) FROM run)",
                           "DELETE FROM log WHERE tag = 'T3'", "UPDATE log SET tag = 't3' WHERE tag = 'T3'",
                           "INSERT INTO species (code) VALUES ('XX')", "UPDATE size SET label = '2x7'",
                           "DELETE FROM board_length",
                           "INSERT INTO note SELECT day, shift, 99000, 'not posted' FROM sheet LIMIT 1",
                           "UPDATE sheet SET sawing_minutes = 1", "DELETE FROM sheet"}) {
    CAPTURE(deed);
    const Shelf shelf;
    make_book(shelf);
    const std::string rows = Shelf::dump(shelf.open(true));
    change(shelf, std::string("PRAGMA foreign_keys = ON; ") + deed);
    REQUIRE(Shelf::dump(shelf.open(true)) != rows);
    Book book = shelf.open();
    CHECK_FALSE(book.verify().empty());
    book.rebuild();
    CHECK(book.verify().empty());
    CHECK(Shelf::dump(book) == rows);
  }
}

TEST_CASE("fields of an entry do not run into one another in its digest") {
  Entry one;
  one.number = 1;
  one.subject = "2026-06-01";
  one.why = "ab";
  one.body = "c";
  Entry other = one;
  other.why = "a";
  other.body = "bc";
  CHECK(digest_of(first_digest(), one) != digest_of(first_digest(), other));
}
