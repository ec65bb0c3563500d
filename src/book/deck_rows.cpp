#include "book/deck_rows.h"

#include "base/text.h"

namespace kerfbook::book {

std::set<std::string> deck_tags(Store& store, SheetKey key) {
  std::set<std::string> tags;
  store.each(
      "SELECT tag FROM log WHERE day = ? AND shift = ? AND tag IS NOT NULL",
      [&](const Row& row) { tags.insert(lower(row.text(0))); }, key.day, key.shift);
  return tags;
}

void write_deck_rows(Store& store, SheetKey key, const std::set<std::string>& tags) {
  for (const auto& tag : tags) {
    store.run("DELETE FROM on_deck WHERE tag = ?", tag);
    store.run(
        "INSERT INTO on_deck (day, shift, number, tag) SELECT l.day, l.shift, l.number, l.tag FROM log l "
        "WHERE l.tag = ? AND l.state <> 'sawn' AND NOT EXISTS (SELECT 1 FROM log s WHERE s.tag = l.tag "
        "AND s.state <> 'received' AND (s.day, s.shift, s.number) > (l.day, l.shift, l.number))",
        tag);
  }
  store.run(
      "INSERT INTO on_deck (day, shift, number, tag) SELECT day, shift, number, NULL FROM log "
      "WHERE day = ? AND shift = ? AND tag IS NULL AND state <> 'sawn'",
      key.day, key.shift);
}

}  // namespace kerfbook::book
