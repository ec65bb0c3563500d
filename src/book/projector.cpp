#include "book/projector.h"

#include <fmt/format.h>

#include <utility>

#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/deck_rows.h"
#include "book/mill_rows.h"
#include "book/sheet_rows.h"
#include "book/stock_rows.h"
#include "sheet/read.h"

namespace kerfbook::book {
namespace {

/// What a sheet lends to later ones: for each tag, the measures of its logs received or left, in one text.
std::map<std::string, std::string> lent_by(Store& store, SheetKey key) {
  std::map<std::string, std::string> lent;
  store.each(
      "SELECT tag, state, spec FROM log WHERE day = ? AND shift = ? AND tag IS NOT NULL AND state <> 'sawn' "
      "ORDER BY number",
      [&](const Row& row) { lent[lower(row.text(0))] += row.text(1) + " " + row.text(2) + "\n"; }, key.day,
      key.shift);
  return lent;
}

/// The set-ups a sheet brings in, in one text.
std::string setups_of(Store& store, SheetKey key) {
  std::string setups;
  store.each(
      "SELECT setup, over_mils, metric FROM setup_change WHERE day = ? AND shift = ? ORDER BY number",
      [&](const Row& row) { setups += row.text(0) + " " + row.text(1) + " " + row.text(2) + "\n"; }, key.day,
      key.shift);
  return setups;
}

void add_keys(std::set<SheetKey>& keys, const Row& row) {
  keys.insert({Day{static_cast<std::int32_t>(row.number(0))}, static_cast<int>(row.number(1))});
}

void mark_borrowers(Store& store, std::set<SheetKey>& stale, const std::string& tag, SheetKey lender) {
  store.each(
      "SELECT day, shift FROM log WHERE tag = ? AND (day, shift) > (?, ?) AND (borrowed = 1 OR spec IS NULL)",
      [&](const Row& row) { add_keys(stale, row); }, tag, lender.day, lender.shift);
}

}  // namespace

void Projector::apply(const Entry& entry) {
  upto_ = entry.number;
  switch (entry.kind) {
    case EntryKind::mill:
      apply_mill(entry);
      break;
    case EntryKind::sheet:
      apply_sheet(entry);
      break;
    case EntryKind::paper:
      if (papers_) papers_(store_.database(), entry);
      put_in_paper(store_, entry.number);
      break;
  }
}

void Projector::apply_mill(const Entry& entry) {
  const std::int64_t before = std::exchange(mill_entry_, entry.number);
  const std::string own_before = own_jobs(store_);
  write_mill_rows(store_, words_, {before, entry.number, mill()});
  if (own_jobs(store_) != own_before) count_all_anew(store_);
  if (MillInForce(store_, words_, mills_, before).has_volumes_of(mill())) return;
  store_.each("SELECT day, shift FROM sheet", [&](const Row& row) { add_keys(stale_, row); });
}

void Projector::apply_sheet(const Entry& entry) {
  const auto key = read_subject(entry.subject);
  if (!key || subject_of(*key) != entry.subject)
    throw JournalFault(fmt::format("journal entry {}: {} is no sheet's day; {}", entry.number,
                                   in_quotes(written_out(entry.subject)), kGoBack));
  const auto lent_before = lent_by(store_, *key);
  const auto setups_before = setups_of(store_, *key);
  project(*key);
  if (!store_.number("SELECT 1 FROM sheet WHERE (day, shift) > (?, ?) LIMIT 1", key->day, key->shift)) return;

  if (setups_of(store_, *key) != setups_before) {
    // A later sheet may name a set-up brought in here, so every later one follows from it.
    store_.each(
        "SELECT day, shift FROM sheet WHERE (day, shift) > (?, ?)",
        [&](const Row& row) { add_keys(stale_, row); }, key->day, key->shift);
    return;
  }
  auto lent = lent_by(store_, *key);
  for (const auto& [tag, specs] : lent_before) {
    if (const auto now = lent.find(tag); now != lent.end() && now->second == specs) {
      lent.erase(now);
    } else {
      lent[tag] = specs;
    }
  }
  for (const auto& [tag, specs] : lent) mark_borrowers(store_, stale_, tag, *key);
}

void Projector::settle() {
  const auto stale = std::exchange(stale_, {});
  for (const SheetKey key : stale) project(key);  // by day: a log left half-sawn is lent on from day to day
}

void Projector::project(SheetKey key) {
  const auto all = revisions(key);
  if (all.empty()) {
    throw JournalFault(
        fmt::format("journal: the entries of {} cannot be found in it; {}", subject_of(key), kGoBack));
  }
  auto tags = deck_tags(store_, key);
  auto bundles = take_out(store_, key);
  store_.run("DELETE FROM sheet WHERE day = ? AND shift = ?", key.day, key.shift);
  MillInForce then(store_, words_, mills_, all.back().rules_entry);
  MillInForce now(store_, words_, mills_, mill_entry_);
  write_sheet_rows(store_, words_, all.back(), then, now);
  write_struck_rows(store_, words_, all, mill());
  write_corrected_rows(store_, all);
  tags.merge(deck_tags(store_, key));
  write_deck_rows(store_, key, tags);
  put_in(store_, key, std::move(bundles));
}

std::vector<SheetEntry> Projector::revisions(SheetKey key) {
  std::vector<SheetEntry> all;
  for (const Entry& entry : journal_.revisions(subject_of(key), upto_)) {
    const std::int64_t rules = entry.keeps_rules && !all.empty() ? all.back().rules_entry : -1;
    all.push_back(read(entry, key));
    all.back().rules_entry = rules < 0 ? all.back().mill_entry : rules;
  }
  return all;
}

SheetEntry Projector::read(const Entry& entry, SheetKey key) {
  SheetEntry sheet;
  sheet.key = key;
  sheet.revision = entry.revision;
  sheet.entry = entry.number;
  sheet.mill_entry = journal_.mill_entry_before(entry.number);
  sheet.why = entry.why;
  const Mill& then = mills_.at(sheet.mill_entry);
  sheet.metric = then.units == measure::System::metric;
  auto text = sheet::read(entry.body, {sheet.metric, then.currency.places});
  for (const auto& found : text.found) {
    if (found.severity != Severity::error) continue;
    throw JournalFault(fmt::format("journal entry {} ({}): line {}: {}; this program cannot read it",
                                   entry.number, entry.subject, found.place.line, found.what));
  }
  sheet.sheet = std::move(text.sheet);
  return sheet;
}

void Projector::refresh() {
  words_.forget();
  stale_.clear();
  upto_ = journal_.last();
  mill_entry_ = journal_.mill_entry_before(number_after(upto_));
  begun_ = {upto_, mill_entry_};
}

void Projector::forget() {
  mills_.forget();  // a mill file of the undone transaction may have been read under its number
  words_.forget();
  stale_.clear();
  upto_ = begun_.upto;
  mill_entry_ = begun_.mill_entry;
}

void Projector::rebuild() {
  words_.forget();
  stale_.clear();
  upto_ = 0;
  mill_entry_ = 0;
  journal_.each([&](const Entry& entry) {
    apply(entry);
    settle();
  });
}

std::vector<std::string> projected_tables(Store& store) {
  std::vector<std::string> tables;
  store.each(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name <> 'journal' "
      "ORDER BY name",
      [&](const Row& row) { tables.push_back(row.text(0)); });
  return tables;
}

}  // namespace kerfbook::book
