// verify.cpp -- proving a book whole: the chain of digests, SQLite's own checks, and a second book worked out from
// the journal in memory and held against this one row by row. And rebuilding, which keeps that second working-out.
#include <fmt/format.h>

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>

#include "base/count.h"
#include "base/error.h"
#include "base/text.h"
#include "book/checks.h"
#include "book/core.h"
#include "book/schema.h"
#include "book/schema_check.h"

namespace kerfbook::book {

using Findings = std::vector<Book::Finding>;

void check_chain(const Journal& journal, Findings& findings) {
  std::string before = first_digest();
  std::int64_t expected = 1;
  journal.each([&](const Entry& entry) {
    if (entry.number != expected) {
      findings.push_back({fmt::format("the journal goes from entry {} to {}; entries between are missing",
                                      expected - 1, entry.number)});
    }
    if (digest_of(before, entry) != entry.digest) {
      findings.push_back(
          {fmt::format("journal entry {} ({}, revision {}): its text or the one before it is not what was "
                       "posted; the digests do not agree",
                       entry.number, written_out(entry.subject), entry.revision)});
    }
    before = entry.digest;
    expected = number_after(entry.number);
  });
}

namespace {

/// SQLite (3.40 at least) leaves the list of free pages out of its check when it comes upon a view first, and a page that is
/// both in use and free would be written over by the next post. So a copy without views is checked, in memory.
std::unique_ptr<SQLite::Database> without_views(SQLite::Database& from) {
  auto copy = connect(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  SQLite::Backup backup(*copy, from);
  if (backup.executeStep(-1) != SQLITE_DONE) throw Failed("the book was in use all the while");
  Store store(*copy);
  drop_views(store);
  return copy;
}

}  // namespace

void check_file(Store& store, Findings& findings) {
  const auto copy = without_views(store.database());
  Store(*copy).each("PRAGMA integrity_check(20)", [&](const Row& row) {
    if (row.text(0) != "ok") findings.push_back({"the file: " + row.text(0)});
  });
  store.each("PRAGMA foreign_key_check", [&](const Row& row) {
    findings.push_back(
        {fmt::format("table {}: a row points at a row of {} that is not there", row.text(0), row.text(2))});
  });
}

namespace {

/// SQLite reads what is not there of the last page as zero bytes. The file is not opened: closing it again would let go
/// of the lock that holds the book still.
void check_length(Core& core, Findings& findings) {
  const auto pages = core.store.number("PRAGMA page_count").value_or(0);
  const auto bytes = static_cast<std::uintmax_t>(pages * core.store.number("PRAGMA page_size").value_or(0));
  std::error_code error;
  const std::uintmax_t there = std::filesystem::file_size(core.file, error);
  if (!error && there < bytes)
    findings.push_back({fmt::format("the file: it is cut short, {} of {} bytes are there", there, bytes)});
}

}  // namespace

std::vector<Book::Finding> check_journal(const Book& book) {
  Store store(book.database());
  Findings findings;
  guarded(book.file(), [&] { check_chain(Journal(store), findings); });
  return findings;
}

namespace {

/// A value as it is told of: what is no number of this kind, and no text, is no value of a book.
std::string value_text(const SQLite::Column& value) {
  constexpr int kWidth = 60;
  switch (value.getType()) {
    case SQLITE_NULL:
      return "NULL";
    case SQLITE_INTEGER:
      return value.getString();
    case SQLITE_FLOAT:
      return value.getString() + " with a fraction";
    case SQLITE_BLOB:
      return counted(value.getBytes(), "raw byte");
    default:
      return fmt::format("'{}'", clip(written_out(value.getString()), kWidth));
  }
}

std::string row_text(const SQLite::Statement& row) {
  std::string text;
  for (int i = 0; i < row.getColumnCount(); ++i) text += (i > 0 ? ", " : "") + value_text(row.getColumn(i));
  return text;
}

bool same_row(const SQLite::Statement& one, const SQLite::Statement& other) {
  for (int i = 0; i < one.getColumnCount(); ++i) {
    const auto a = one.getColumn(i);
    const auto b = other.getColumn(i);
    if (a.getType() != b.getType() || a.getString() != b.getString()) return false;
  }
  return true;
}

/// Every table has its rows in the order of its key, so two equal tables give equal texts in step.
std::string all_rows_of(const std::string& table, SQLite::Database& database) {
  std::string columns;
  SQLite::Statement info(
      database, fmt::format("SELECT name FROM pragma_table_info('{}') WHERE pk > 0 ORDER BY pk", table));
  while (info.executeStep()) columns += (columns.empty() ? "" : ", ") + info.getColumn(0).getString();
  return fmt::format("SELECT * FROM {} ORDER BY {}", table, columns);
}

void compare_table(const std::string& table, SQLite::Database& book, SQLite::Database& again,
                   Findings& findings) {
  SQLite::Statement here(book, all_rows_of(table, book));
  SQLite::Statement there(again, all_rows_of(table, again));
  for (std::int64_t number = 1;; ++number) {
    const bool has_here = here.executeStep();
    const bool has_there = there.executeStep();
    if (!has_here && !has_there) return;
    if (has_here && has_there && same_row(here, there)) continue;
    findings.push_back(
        {fmt::format("table {}, row {}: the book has {}; the journal gives {}", table, number,
                     has_here ? row_text(here) : "(no row)", has_there ? row_text(there) : "(no row)")});
    return;  // one difference moves all that follow
  }
}

void compare_with_journal(Core& core, Findings& findings) {
  auto patience = std::make_unique<Patience>();
  auto memory = connect(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, *patience);
  Core again(core.file, core.options, std::move(patience), std::move(memory));
  again.store.run("BEGIN IMMEDIATE");
  make_tables(*again.database, core.newest());
  core.journal.each([&](const Entry& entry) { again.journal.copy(entry); });
  again.projector.rebuild();
  again.store.run("COMMIT");
  for (const auto& table : projected_tables(again.store)) {
    compare_table(table, *core.database, *again.database, findings);
  }
}

}  // namespace

std::vector<Book::Finding> Book::verify() const {
  Core& core = *inside_->core;
  const Still still(*this);  // a sheet posted meanwhile is no damage
  Findings findings;
  try {
    for (const auto& what : check_schema(core.store, core.edition(), core.newest()).mendable)
      findings.push_back({"the file: " + what + "; rebuild puts it right"});
    check_length(core, findings);
    check_file(core.store, findings);
    check_chain(core.journal, findings);
    compare_with_journal(core, findings);
  } catch (const SQLite::Exception& fault) {
    findings.push_back({explained(core.file, fault).what()});
  } catch (const Error& fault) {
    findings.push_back({fault.what()});
  }
  return findings;
}

void Book::rebuild() {
  Core& core = *inside_->core;
  guarded(core.file, [&] {
    Writing writing(core);
    remake_tables(*core.database, core.newest());
    core.projector.rebuild();
    writing.commit();
  });
}

}  // namespace kerfbook::book
