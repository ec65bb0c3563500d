// doctored_rows.cpp -- see doctored.h.
#include <fmt/format.h>

#include "book/doctored.h"
#include "book/journal.h"
#include "book/schema.h"

namespace kerfbook::tests {
namespace {

using Kinds = std::vector<Doctored>;

/// Journal entry 3, which is a sheet: one column set so.
void add_column(Kinds& kinds, const std::string& set) {
  kinds.push_back({"journal: " + set, Fate::told, loosely("UPDATE journal SET " + set + " WHERE entry = 3")});
}

void add_journal(Kinds& kinds, const std::string& name, const std::string& sql) {
  kinds.push_back({"journal: " + name, Fate::told, loosely(sql)});
}

void add_columns(Kinds& kinds) {
  for (const char* column : {"kind", "subject", "revision", "at", "why", "body", "keeps_rules", "digest"}) {
    for (const char* value : {"NULL", "x'00ff'", "1.5", "9223372036854775807", "-1", "'\x1b[2J'"})
      add_column(kinds, fmt::format("{} = {}", column, value));
    add_column(kinds, fmt::format("{0} = CAST({0} AS BLOB)", column));
  }
  // What these say is the same to whoever does not look closely.
  for (const char* set : {"revision = revision + 4294967296",
                          "revision = revision || 'st'",
                          "keeps_rules = 2",
                          "keeps_rules = 'no'",
                          "kind = 'SHEET'",
                          "kind = kind || ' '",
                          "kind = 'paper'",
                          "subject = subject || char(0) || 'x'",
                          "subject = ' ' || subject",
                          "digest = upper(digest)",
                          "digest = digest || char(0)",
                          "digest = digest || '0'",
                          "digest = substr(digest, 2)",
                          "body = body || char(0)",
                          "body = body || char(0) || 'note x'",
                          "body = body || CAST(x'ff' AS TEXT)",
                          "body = replace(body, char(10), char(13) || char(10))",
                          "body = char(0xfeff) || body",
                          "at = at || char(10)",
                          "why = char(0x202e)",
                          "why = why || ' '"})
    add_column(kinds, set);
}

void add_entries(Kinds& kinds) {
  const std::string kColumns = "kind, subject, revision, at, why, body, keeps_rules, digest";
  add_journal(kinds, "two entries swapped",
              "UPDATE journal SET entry = 99 WHERE entry = 2; UPDATE journal SET entry = 2 WHERE entry = 3;"
              "UPDATE journal SET entry = 3 WHERE entry = 99");
  add_journal(kinds, "the last entry is gone",
              "DELETE FROM journal WHERE entry = (SELECT max(entry) FROM journal)");
  add_journal(kinds, "the first entry is gone", "DELETE FROM journal WHERE entry = 1");
  add_journal(kinds, "an entry between is gone", "DELETE FROM journal WHERE entry = 4");
  add_journal(kinds, "every entry is gone", "DELETE FROM journal");
  add_journal(
      kinds, "an entry twice",
      fmt::format("INSERT INTO journal (entry, {0}) SELECT 20, kind, subject, revision + 1, at, why, body, "
                  "keeps_rules, digest FROM journal WHERE entry = 3",
                  kColumns));
  for (const char* number : {"0", "-1", "-9223372036854775808", "9223372036854775807", "4294967299"})
    add_journal(kinds, fmt::format("entry 3 is called {}", number),
                fmt::format("UPDATE journal SET entry = {} WHERE entry = 3", number));
  add_journal(kinds, "digests of two entries swapped",
              "UPDATE journal SET digest = (SELECT digest FROM journal WHERE entry = 7 - journal.entry) "
              "WHERE entry IN (3, 4)");
  add_journal(kinds, "a text of a million letters",
              "UPDATE journal SET body = body || 'note ' || replace(hex(zeroblob(500000)), '0', 'x') WHERE "
              "entry = 3");
}

/// Whoever can write the file can make digests that fit: such an entry must still not bring the program down.
void add_digested(Kinds& kinds, const std::string& name, Fate fate,
                  const std::function<void(book::Entry&)>& change) {
  kinds.push_back({"journal, with digests that fit: " + name, fate, [change](const Shelf& shelf) {
                     std::vector<book::Entry> entries = shelf.open(true).journal();
                     change(entries.at(2));
                     loosely("DELETE FROM journal")(shelf);
                     SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
                     database.exec("PRAGMA ignore_check_constraints = ON; BEGIN");
                     book::Store store(database);
                     std::string before = book::first_digest();
                     for (book::Entry& entry : entries) {
                       entry.digest = before = book::digest_of(before, entry);
                       book::Journal(store).copy(entry);
                     }
                     database.exec("COMMIT");
                   }});
}

void add_digested(Kinds& kinds) {
  for (const auto& [name, body] :
       {std::pair<std::string, std::string>{"a text that is none", "not a sheet at all\n"},
        {"an empty text", ""},
        {"a text of zero bytes", std::string(500, '\0')},
        {"a zero byte in the text", std::string("sheet 2026-05-05\nnote a\0b\n", 26)},
        {"no UTF-8", "sheet 2026-05-05\nnote \xff\xfe\x80\n"},
        {"a terminal's commands", "sheet 2026-05-05\nnote \x1b]0;x\x07\n"},
        {"numbers too large", "sheet 2026-05-05\n99999999999999999999x6 5/12\n"},
        {"counts too large", "sheet 2026-05-05\n2x6 9223372036854775807/12\n"},
        {"another day", "sheet 2026-06-05\nnote x\n"},
        {"a deep nest", "sheet 2026-05-05\n" + std::string(20'000, '(') + "\n"}}) {
    add_digested(kinds, name, Fate::told, [body = body](book::Entry& entry) { entry.body = body; });
  }
  add_digested(kinds, "a subject that is no day", Fate::told,
               [](book::Entry& entry) { entry.subject = "2026-13-45'; DROP TABLE journal; --"; });
  add_digested(kinds, "a mill file that is none", Fate::told, [](book::Entry& entry) {
    entry.kind = book::EntryKind::mill;
    entry.subject = "mill";
    entry.revision = 2;
    entry.body = "[[[";
  });
  add_digested(kinds, "a paper in a sheet's name", Fate::told,
               [](book::Entry& entry) { entry.kind = book::EntryKind::paper; });
  add_digested(kinds, "a revision without those before it", Fate::told,
               [](book::Entry& entry) { entry.revision = 2'000'000'000; });
}

/// A row of the table holds `value` where it never does; where the table is empty, there is such a row.
void put_in(const Shelf& shelf, const std::string& table, const std::string& value) {
  std::string column;
  std::string row;
  bool empty = false;
  {
    SQLite::Database database(shelf.file().string(), SQLite::OPEN_READONLY);
    empty = database.execAndGet("SELECT count(*) FROM " + table).getInt() == 0;
    SQLite::Statement columns(database, "SELECT name, pk FROM pragma_table_info(?) ORDER BY cid");
    columns.bind(1, table);
    int keys = 0;
    while (columns.executeStep()) {
      keys += columns.getColumn(1).getInt() > 0 ? 1 : 0;
      const bool key = columns.getColumn(1).getInt() > 0;
      if (!key || column.empty()) column = columns.getColumn(0).getString();
      row += (row.empty() ? "" : ", ") + (key ? std::to_string(keys) : value);
    }
  }
  loosely(empty ? fmt::format("INSERT INTO {} VALUES ({})", table, row)
                : fmt::format("UPDATE OR REPLACE {} SET {} = {}", table, column, value))(shelf);
}

/// Every table that is worked out, one after the other with something else.
void add_tables(Kinds& kinds) {
  const std::vector<std::string> values{"x'00'", "1.5", "'x'", "9223372036854775807", "-1", "''", "x''"};
  std::size_t turn = 0;
  for (const auto& thing : book::shipped_editions().back().things) {
    if (thing.kind != book::Thing::Kind::table || thing.name == "journal") continue;
    const std::string value = values[turn++ % values.size()];
    kinds.push_back({fmt::format("a column of {} is {}", thing.name, value), Fate::told,
                     [name = thing.name, value](const Shelf& shelf) { put_in(shelf, name, value); }, true});
  }
  for (const char* sql :
       {"UPDATE note SET text = NULL", "UPDATE log SET state = NULL, borrowed = NULL",
        "UPDATE size SET label = NULL", "UPDATE sheet SET entry = NULL",
        "UPDATE log SET spec = CAST(spec AS BLOB) WHERE spec IS NOT NULL",
        "UPDATE tally SET pieces = pieces * 1.0 + 0.5", "UPDATE run SET net = CAST(net AS TEXT) || 'x'",
        "UPDATE species SET id = id + 1000", "DELETE FROM log", "DELETE FROM sheet",
        "UPDATE size SET stack = 77"})
    kinds.push_back({sql, Fate::told, loosely(sql), true});
}

/// The table is as it was; an index lacks rows of it, has rows more, or others.
void add_indexes(Kinds& kinds) {
  const auto add_index = [&](const std::string& index, const std::string& first, const std::string& then) {
    kinds.push_back(
        {fmt::format("index {}: {}", index, first), Fate::told, behind_indexes(first, then), true});
  };
  for (const auto& [index, table, column] : {std::tuple{"run_by_job", "run", "job"},
                                             {"sqlite_autoindex_journal_1", "journal", "revision"},
                                             {"sqlite_autoindex_size_1", "size", "width"}}) {
    add_index(index, fmt::format("UPDATE {0} SET {1} = {1} + 10", table, column),
              fmt::format("UPDATE {0} SET {1} = {1} - 10", table, column));
  }
  add_index("log_by_tag", "UPDATE log SET tag = 'X' || tag", "UPDATE log SET tag = substr(tag, 2)");
  add_index("sqlite_autoindex_species_1", "UPDATE species SET code = 'X' || code",
            "UPDATE species SET code = substr(code, 2)");
  add_index("sqlite_autoindex_journal_1",
            "INSERT INTO aside SELECT * FROM journal WHERE entry > 2; DELETE FROM journal WHERE entry > 2",
            "INSERT INTO journal SELECT * FROM aside");
  add_index("sqlite_autoindex_journal_1",
            "INSERT INTO journal SELECT entry + 100, kind, subject, revision + 100, at, why, body, "
            "keeps_rules, digest "
            "FROM journal",
            "DELETE FROM journal WHERE entry > 100");
  add_index("sqlite_autoindex_journal_1",
            "UPDATE journal SET subject = subject || ' shift 2' WHERE kind = 'sheet' AND revision > 1",
            "UPDATE journal SET subject = substr(subject, 1, 10) WHERE kind = 'sheet' AND revision > 1");
  add_index("sqlite_autoindex_species_1", "INSERT INTO species (code) VALUES ('XX')",
            "DELETE FROM species WHERE code = 'XX'");
}

}  // namespace

Kinds doctored_rows() {
  Kinds kinds;
  add_columns(kinds);
  add_entries(kinds);
  add_digested(kinds);
  add_tables(kinds);
  add_indexes(kinds);
  return kinds;
}

}  // namespace kerfbook::tests
