#include "book/words.h"

#include <fmt/format.h>

#include "base/text.h"

namespace kerfbook::book {
namespace {

using measure::System;

struct WordTable {
  std::string_view table;
  std::string_view column;
};

constexpr WordTable kTables[] = {{"site", "name"},     {"species", "code"}, {"grade", "code"},
                                 {"customer", "code"}, {"job", "code"},     {"setup", "name"}};

const WordTable& of(WordKind kind) {
  return kTables[static_cast<std::size_t>(kind)];
}

/// `job own` is the mill's own stock in every book.
bool is_own_stock(WordKind kind, std::string_view word) {
  return kind == WordKind::job && same_word(word, "own");
}

}  // namespace

std::string_view table_of(WordKind kind) {
  return of(kind).table;
}

std::optional<Id> Words::find(WordKind kind, std::string_view word) {
  if (word.empty()) return std::nullopt;
  auto& known = known_[static_cast<std::size_t>(kind)];
  std::string key = lower(word);
  if (const auto hit = known.find(key); hit != known.end()) return hit->second;
  const auto id =
      store_.number(fmt::format("SELECT id FROM {} WHERE {} = ?", of(kind).table, of(kind).column), word);
  if (id) known.emplace(std::move(key), *id);
  return id;
}

std::optional<Id> Words::find_or_add(WordKind kind, std::string_view word) {
  if (word.empty()) return std::nullopt;
  if (const auto id = find(kind, word)) return id;
  store_.run(fmt::format("INSERT INTO {} ({}) VALUES (?)", of(kind).table, of(kind).column), word);
  const Id id = store_.last_id();
  if (is_own_stock(kind, word)) store_.run("UPDATE job SET owner = 'own' WHERE id = ?", id);
  known_[static_cast<std::size_t>(kind)].emplace(lower(word), id);
  // A set-up line makes its set-up, and own stock is in every book: no slip to look for.
  if (kind != WordKind::setup && !is_own_stock(kind, word)) {
    notes_.push_back(fmt::format("{} {} is new to the book", of(kind).table, word));
  }
  return id;
}

Id Words::find_or_add(const measure::Size& size) {
  if (const auto hit = sizes_.find(size); hit != sizes_.end()) return hit->second;
  const bool metric = size.thickness.system == System::metric;
  auto id =
      store_.number("SELECT id FROM size WHERE metric = ? AND thickness = ? AND width = ? AND quarters = ?",
                    metric, size.thickness.count, size.width.count, size.quarters);
  if (!id) {
    const std::string label = measure::write_size(size);
    store_.run("INSERT INTO size (label, thickness, width, metric, quarters) VALUES (?,?,?,?,?)", label,
               size.thickness.count, size.width.count, metric, size.quarters);
    id = store_.last_id();
    store_.run(
        "UPDATE size SET stack = (SELECT min(id) FROM size WHERE metric = ?2 AND thickness = ?3 AND width = "
        "?4) "
        "WHERE id = ?1",
        *id, metric, size.thickness.count, size.width.count);
  }
  sizes_.emplace(size, *id);
  return *id;
}

std::vector<std::string> Words::all(WordKind kind) {
  std::vector<std::string> words;
  store_.each(fmt::format("SELECT {} FROM {} ORDER BY id", of(kind).column, of(kind).table),
              [&](const Row& row) { words.push_back(row.text(0)); });
  return words;
}

std::string Words::word(WordKind kind, Id id) {
  std::string word;
  store_.each(
      fmt::format("SELECT {} FROM {} WHERE id = ?", of(kind).column, of(kind).table),
      [&](const Row& row) { word = row.text(0); }, id);
  return word;
}

std::vector<std::string> Words::take_notes() {
  return std::exchange(notes_, {});
}

void Words::forget() {
  for (auto& known : known_) known.clear();
  sizes_.clear();
  notes_.clear();
}

}  // namespace kerfbook::book
