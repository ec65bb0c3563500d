#include "book/journal.h"

#include <fmt/format.h>

#include <limits>

#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/digest.h"

namespace kerfbook::book {
namespace {

constexpr std::string_view kColumns =
    "SELECT entry, kind, subject, revision, at, why, body, digest, keeps_rules FROM journal ";

EntryKind read_kind(const Row& row, std::int64_t entry) {
  const std::string word = row.text(1);
  for (const EntryKind kind : {EntryKind::mill, EntryKind::sheet, EntryKind::paper})
    if (word == word_of(kind)) return kind;
  throw JournalFault(fmt::format("journal entry {}: {} is not a kind of entry; {}", entry,
                                 in_quotes(written_out(word)), kGoBack));
}

int read_revision(const Row& row, std::int64_t entry) {
  const std::int64_t revision = row.number(3);
  if (revision >= 1 && revision <= std::numeric_limits<int>::max()) return static_cast<int>(revision);
  throw JournalFault(
      fmt::format("journal entry {}: {} is not the number of a revision; {}", entry, revision, kGoBack));
}

/// What an entry cannot be is not read as something near it: its digest would fit.
Entry entry_from(const Row& row) {
  Entry entry;
  entry.number = row.number(0);
  entry.kind = read_kind(row, entry.number);
  entry.subject = row.text(2);
  entry.revision = read_revision(row, entry.number);
  entry.at = row.text(4);
  entry.why = row.text(5);
  entry.body = row.text(6);
  entry.digest = row.text(7);
  entry.keeps_rules = row.number(8) != 0;
  return entry;
}

}  // namespace

std::string_view word_of(EntryKind kind) {
  switch (kind) {
    case EntryKind::mill:
      return "mill";
    case EntryKind::sheet:
      return "sheet";
    case EntryKind::paper:
      return "paper";
  }
  return "";
}

std::string subject_of(SheetKey key) {
  return key.shift == 1 ? write_day(key.day) : fmt::format("{} shift {}", write_day(key.day), key.shift);
}

std::optional<SheetKey> read_subject(std::string_view subject) {
  constexpr std::string_view kShift = " shift ";
  const auto day = read_day(subject.substr(0, 10));
  if (!day) return std::nullopt;
  if (subject.size() == 10) return SheetKey{*day, 1};
  const std::string_view rest = subject.substr(10);
  if (!rest.starts_with(kShift) || rest.size() > kShift.size() + 3) return std::nullopt;
  int shift = 0;
  for (const char c : rest.substr(kShift.size())) {
    if (c < '0' || c > '9') return std::nullopt;
    shift = shift * 10 + (c - '0');
  }
  if (shift < 2) return std::nullopt;
  return SheetKey{*day, shift};
}

EntryKind kind_of(std::string_view subject) {
  if (subject == "mill") return EntryKind::mill;
  return read_subject(subject) ? EntryKind::sheet : EntryKind::paper;
}

std::string first_digest() {
  return std::string(64, '0');
}

std::string digest_of(const std::string& before, const Entry& entry) {
  Sha256 sum;
  sum.add_field(before);
  sum.add_field(std::to_string(entry.number));
  sum.add_field(word_of(entry.kind));
  sum.add_field(entry.subject);
  sum.add_field(std::to_string(entry.revision));
  sum.add_field(entry.at);
  sum.add_field(entry.why);
  sum.add_field(entry.body);
  if (entry.keeps_rules) sum.add_field("keeps rules");  // entries without it are digested as they always were
  return sum.hex();
}

Mark mark_of(const Entry& entry) {
  return {entry.number, entry.digest};
}

Entry Journal::append(EntryKind kind, std::string_view subject, std::string_view body, std::string_view why,
                      std::string_view at, bool keeps_rules) {
  const Mark last = newest();
  const std::string before = last.entry == 0 ? first_digest() : last.digest;
  const auto revision = store_.number("SELECT max(revision) FROM journal WHERE kind = ? AND subject = ?",
                                      word_of(kind), subject);
  Entry entry{number_after(last.entry),
              kind,
              std::string(subject),
              static_cast<int>(revision.value_or(0)) + 1,
              std::string(at),
              std::string(why),
              std::string(body),
              "",
              keeps_rules};
  entry.digest = digest_of(before, entry);
  copy(entry);
  return entry;
}

void Journal::copy(const Entry& entry) {
  store_.run(
      "INSERT INTO journal (entry, kind, subject, revision, at, why, body, digest, keeps_rules) "
      "VALUES (?,?,?,?,?,?,?,?,?)",
      entry.number, word_of(entry.kind), entry.subject, entry.revision, entry.at, entry.why, entry.body,
      entry.digest, entry.keeps_rules);
}

void Journal::each(const std::function<void(const Entry&)>& take) const {
  // By number and not in one walk: `take` may run statements of its own on the journal.
  std::int64_t at = 0;
  while (const auto next = store_.number("SELECT min(entry) FROM journal WHERE entry > ?", at)) {
    at = *next;
    take(*entry(at));
  }
}

std::optional<Entry> Journal::current(std::string_view subject) const {
  std::optional<Entry> found;
  store_.each(
      std::string(kColumns) + "WHERE kind = ? AND subject = ? ORDER BY revision DESC LIMIT 1",
      [&](const Row& row) { found = entry_from(row); }, word_of(kind_of(subject)), subject);
  return found;
}

std::vector<Entry> Journal::revisions(std::string_view subject, std::int64_t upto) const {
  std::vector<Entry> all;
  store_.each(
      std::string(kColumns) + "WHERE kind = ? AND subject = ? AND entry <= ? ORDER BY revision",
      [&](const Row& row) { all.push_back(entry_from(row)); }, word_of(kind_of(subject)), subject, upto);
  return all;
}

std::optional<Entry> Journal::entry(std::int64_t number) const {
  std::optional<Entry> found;
  store_.each(
      std::string(kColumns) + "WHERE entry = ?", [&](const Row& row) { found = entry_from(row); }, number);
  return found;
}

std::int64_t Journal::mill_entry_before(std::int64_t number) const {
  return store_
      .number("SELECT max(entry) FROM journal WHERE kind = 'mill' AND subject = 'mill' AND entry < ?", number)
      .value_or(0);
}

Mark Journal::newest() const {
  Mark mark;
  store_.each("SELECT entry, digest FROM journal ORDER BY entry DESC LIMIT 1", [&](const Row& row) {
    mark = {row.number(0), row.text(1)};
  });
  return mark;
}

std::int64_t Journal::last() const {
  return store_.number("SELECT max(entry) FROM journal").value_or(0);
}

}  // namespace kerfbook::book
