// struck_rows.cpp -- the lines of earlier revisions that the next revision no longer had: they stay in sight.
#include <algorithm>

#include "book/log_rows.h"
#include "book/sheet_rows.h"
#include "book/tally_item.h"
#include "sheet/write.h"

namespace kerfbook::book {
namespace {

/// A line that can be struck. Two lines are the same to the trade when all but their place is the same, so a line
/// moved up or down the sheet is not struck.
struct StruckLine {
  bool log = false;
  std::optional<Id> job;
  std::optional<Id> species;
  std::optional<Id> size;
  std::optional<Id> grade;
  std::optional<measure::Length> length;
  std::int64_t pieces = 0;
  std::string text;  ///< the line alone, as a sheet would have it; tells sense, form and a log's measure
  bool operator==(const StruckLine&) const = default;
};

struct NumberedLine {
  StruckLine line;
  int number = 0;
  std::optional<std::int64_t> lumber;
};

StruckLine log_line(const sheet::DatedFact& fact, const sheet::LogLine& log) {
  sheet::LogLine alone = log;
  const auto tags = sheet::spread(log);
  if (fact.item < tags.size()) alone.tags = {tags[fact.item]};
  StruckLine line;
  line.log = true;
  line.text = sheet::write_line({alone, "", {}});
  return line;
}

std::vector<NumberedLine> lines_of(const sheet::Sheet& sheet, Words& words, const Mill& now) {
  std::vector<NumberedLine> lines;
  for (const auto& fact : sheet::facts(sheet)) {
    NumberedLine numbered;
    numbered.number = fact.number;
    if (const auto* log = std::get_if<sheet::LogLine>(&fact.line->fact)) {
      numbered.line = log_line(fact, *log);
    } else if (const auto item = tally_item(fact)) {
      numbered.line.size = words.find_or_add(item->size);
      numbered.line.grade = words.find_or_add(WordKind::grade, item->grade);
      numbered.line.length = item->length;
      numbered.line.pieces = item->sign() * item->pieces;
      numbered.line.text = written(*item);
      numbered.lumber = lumber_of(*item, now.units).count;
    } else {
      continue;
    }
    numbered.line.job = words.find_or_add(WordKind::job, fact.context.job);
    numbered.line.species = words.find_or_add(WordKind::species, fact.context.species);
    lines.push_back(std::move(numbered));
  }
  return lines;
}

/// Lines of `before` that `after` has no match for; each line of `after` matches one.
std::vector<NumberedLine> struck(const std::vector<NumberedLine>& before,
                                 const std::vector<NumberedLine>& after) {
  std::vector<NumberedLine> gone;
  std::vector<bool> matched(after.size(), false);
  for (const auto& old : before) {
    std::size_t i = 0;
    while (i < after.size() && (matched[i] || after[i].line != old.line)) ++i;
    if (i < after.size()) {
      matched[i] = true;
    } else {
      gone.push_back(old);
    }
  }
  return gone;
}

void write_row(Store& store, const SheetEntry& old, const SheetEntry& next, const NumberedLine& numbered) {
  const StruckLine& line = numbered.line;
  using measure::Length;
  store.run(
      "INSERT INTO struck (day, shift, revision, number, entry, kind, job, species, size, grade, length, "
      "metric, pieces, "
      "lumber, text, why) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
      old.key.day, old.key.shift, old.revision, numbered.number, next.entry, line.log ? "log" : "tally",
      line.job, line.species, line.size, line.grade,
      line.length ? std::optional(line.length->count) : std::nullopt,
      line.length ? std::optional(line.length->system == measure::System::metric) : std::nullopt,
      line.log ? std::nullopt : std::optional(line.pieces), numbered.lumber, line.text, next.why);
}

}  // namespace

void write_struck_rows(Store& store, Words& words, const std::vector<SheetEntry>& revisions,
                       const Mill& now) {
  if (revisions.size() < 2) return;
  auto before = lines_of(revisions.front().sheet, words, now);
  for (std::size_t i = 1; i < revisions.size(); ++i) {
    auto after = lines_of(revisions[i].sheet, words, now);
    for (const auto& line : struck(before, after)) write_row(store, revisions[i - 1], revisions[i], line);
    before = std::move(after);
  }
}

}  // namespace kerfbook::book
