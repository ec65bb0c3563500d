#include "book/salvage.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.h"
#include "book/journal.h"
#include "book/pages.h"

namespace kerfbook::book {

namespace fs = std::filesystem;

namespace {

constexpr std::int64_t kMostEntries = 10'000'000;  // a number beyond is no entry's
constexpr std::size_t kDigestDigits = 64;

std::optional<EntryKind> read_kind(const RawValue& value) {
  const auto* word = std::get_if<std::string>(&value);
  if (word == nullptr) return std::nullopt;
  for (const EntryKind kind : {EntryKind::mill, EntryKind::sheet, EntryKind::paper})
    if (*word == word_of(kind)) return kind;
  return std::nullopt;
}

/// Kind, subject and revision from column `at` on.
std::optional<EntryName> read_name(const std::vector<RawValue>& values, std::size_t at) {
  const auto kind = read_kind(values[at]);
  const auto* subject = std::get_if<std::string>(&values[at + 1]);
  const auto* revision = std::get_if<std::int64_t>(&values[at + 2]);
  if (!kind || subject == nullptr || subject->empty() || revision == nullptr || *revision < 1 ||
      *revision > kMostEntries)
    return std::nullopt;
  return EntryName{*kind, *subject, static_cast<int>(*revision)};
}

std::string text_at(const std::vector<RawValue>& values, std::size_t at) {
  const auto* text = at < values.size() ? std::get_if<std::string>(&values[at]) : nullptr;
  return text == nullptr ? std::string() : *text;
}

bool is_digest(const std::string& text) {
  return text.size() == kDigestDigits && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

/// A row of the table `journal`, by what stands in it: the text of 64 digits behind the body is its digest.
std::optional<Salvaged> as_entry(const RawRow& row) {
  constexpr std::size_t kName = 1;
  constexpr std::size_t kAt = 4;
  constexpr std::size_t kWhy = 5;
  constexpr std::size_t kBody = 6;
  if (!row.of_table || row.values.size() <= kBody + 1 || row.rowid < 1 || row.rowid > kMostEntries)
    return std::nullopt;
  const auto name = read_name(row.values, kName);
  if (!name) return std::nullopt;
  Salvaged out;
  out.entry.number = row.rowid;
  out.entry.kind = name->kind;
  out.entry.subject = name->subject;
  out.entry.revision = name->revision;
  out.entry.at = text_at(row.values, kAt);
  out.entry.why = text_at(row.values, kWhy);
  out.entry.body = text_at(row.values, kBody);
  for (std::size_t i = kBody + 1; i < row.values.size(); ++i) {
    if (const auto* keeps = std::get_if<std::int64_t>(&row.values[i])) out.entry.keeps_rules = *keeps != 0;
    if (const std::string text = text_at(row.values, i); is_digest(text)) out.entry.digest = text;
  }
  out.complete = row.complete && !out.entry.digest.empty();
  // A page that was wiped holds zero bytes; a text of a book has none.
  if (!out.complete) out.entry.body.resize(std::min(out.entry.body.find('\0'), out.entry.body.size()));
  return out;
}

/// What is read, before it is held against the chain: one number may have come up more than once.
struct Seen {
  std::map<std::int64_t, std::vector<Salvaged>> entries;
  std::map<std::int64_t, EntryName> names;
};

void look_at(const RawRow& row, Seen& seen) {
  if (row.of_table) {
    if (auto entry = as_entry(row)) seen.entries[entry->entry.number].push_back(std::move(*entry));
    return;
  }
  constexpr std::size_t kColumns = 4;  // kind, subject, revision, entry
  const auto* number = std::get_if<std::int64_t>(&row.values.back());
  if (row.values.size() != kColumns || number == nullptr || *number < 1 || *number > kMostEntries) return;
  if (const auto name = read_name(row.values, 0)) seen.names[*number] = *name;
}

/// Of several readings of one entry: the proved one, else a complete one, else the longest.
Salvaged best_of(std::vector<Salvaged>& readings, const std::string& before) {
  for (Salvaged& one : readings) {
    if (!one.complete || before.empty()) continue;
    one.proved = digest_of(before, one.entry) == one.entry.digest;
    one.denied = !one.proved;
  }
  return *std::max_element(readings.begin(), readings.end(), [](const Salvaged& a, const Salvaged& b) {
    return std::tuple(a.proved, a.complete, a.entry.body.size()) <
           std::tuple(b.proved, b.complete, b.entry.body.size());
  });
}

void hold_against_chain(Seen& seen, Salvage& out) {
  std::int64_t last = 0;
  std::string before = first_digest();  // empty where the entry before was not read
  for (auto& [number, readings] : seen.entries) {
    if (number != last + 1) before.clear();
    Salvaged best = best_of(readings, before);
    before = best.complete ? best.entry.digest : std::string();
    last = number;
    out.entries.emplace(number, std::move(best));
  }
  if (!seen.names.empty()) last = std::max(last, seen.names.rbegin()->first);
  for (std::int64_t number = 1; number <= last; ++number) {
    if (out.entries.contains(number)) continue;
    const auto name = seen.names.find(number);
    if (name == seen.names.end())
      out.lost_nameless.push_back(number);
    else
      out.lost.insert(*name);
  }
}

}  // namespace

std::int64_t Salvage::proved_to() const {
  std::int64_t last = 0;
  for (const auto& [number, one] : entries) {
    if (number != last + 1 || !one.proved) break;
    last = number;
  }
  return last;
}

std::vector<Entry> proved_entries(const Salvage& from) {
  std::vector<Entry> all;
  const std::int64_t last = from.proved_to();
  for (std::int64_t number = 1; number <= last; ++number) all.push_back(from.entries.at(number).entry);
  return all;
}

Salvage salvage(const fs::path& file) {
  Salvage out;
  Seen seen;
  constexpr std::size_t kLeastColumns = 4;
  const PageCount count = read_pages(file, kLeastColumns, [&](const RawRow& row) { look_at(row, seen); });
  out.pages = count.pages;
  out.unreadable = count.unreadable;
  out.cut_short = count.cut_short;
  hold_against_chain(seen, out);
  if (out.entries.empty()) throw Failed(file.string() + ": no entry of a book can be found in this file");
  return out;
}

}  // namespace kerfbook::book
