// book.cpp -- posting and asking: what a Book does once it is open. Opening is in open.cpp, proving in verify.cpp.
#include "book/book.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <numeric>

#include "base/error.h"
#include "base/text.h"
#include "book/core.h"
#include "book/known.h"
#include "book/rules_kept.h"
#include "mill/mill_change.h"
#include "sheet/check.h"
#include "sheet/read.h"

namespace kerfbook::book {
namespace {

/// A document read and checked, ready to be posted.
struct Ready {
  std::string subject;
  std::vector<Diagnostic> found;
  RulesKept rules;  ///< of a sheet that is in the book already
};

Ready read_sheet(Core& core, const Document& document, bool rescale) {
  const Mill& mill = core.projector.mill();
  auto read = sheet::read(document.text, {mill.units == measure::System::metric, mill.currency.places});
  RulesKept rules;
  if (!has_error(read.found)) {
    rules = rules_kept(core, read.sheet, rescale);
    const Mill& scales = core.projector.mills().at(rules.keeps ? rules.entry : core.projector.mill_entry());
    auto doubts = sheet::check(read.sheet, known_for(core, read.sheet), practice_for(scales, ""));
    read.found.insert(read.found.end(), doubts.begin(), doubts.end());
    read.found.insert(read.found.end(), rules.found.begin(), rules.found.end());
    sort_by_place(read.found);
  }
  return {subject_of({read.sheet.day, read.sheet.shift}), std::move(read.found), std::move(rules)};
}

Ready read_document(Core& core, const Document& document, bool rescale) {
  if (document.kind != EntryKind::mill) return read_sheet(core, document, rescale);
  auto found = read_mill(document.text).found;
  if (!has_error(found) && core.options.check_money) {
    auto more = core.options.check_money(document.text);
    found.insert(found.end(), more.begin(), more.end());
    sort_by_place(found);
  }
  return {"mill", std::move(found), {}};
}

/// Mill files first, then sheets by day: so that a week can be given in any order.
std::vector<std::size_t> posting_order(const std::vector<Document>& documents) {
  const auto rank = [&](std::size_t i) {
    if (documents[i].kind == EntryKind::mill) return std::pair(0, Day{});
    return std::pair(1, sheet::peek_day(documents[i].text).value_or(Day{}));
  };
  std::vector<std::size_t> order(documents.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  return order;
}

/// What a mill file that only adds to the one before it adds. What it changes or takes away needs a reason.
std::vector<std::string> added_to_mill(const Document& document, const Entry& before, std::string_view why) {
  auto change = mill_change(before.body, document.text);
  if (!change.changed.empty() && why.empty()) {
    throw Refused(
        fmt::format("{}: the mill file in the book, posted {}, says otherwise: {}; if it is to change, post "
                    "it again with "
                    "--why \"the reason\" (what only adds to it needs none)",
                    document.name, before.at, listed(change.changed)));
  }
  return change.changed.empty() ? std::move(change.added) : std::vector<std::string>();
}

/// "2026-05-05 shift 2": the subject that one more sheet of the day would have.
std::string next_sheet_of_day(const Core& core, const std::string& subject) {
  auto key = read_subject(subject).value();
  while (core.journal.current(subject_of(key))) ++key.shift;
  return subject_of(key);
}

/// Posts one document inside a transaction. A changed text needs a reason, but for a mill file that only adds.
Posted post_one(Core& core, const Document& document, std::string_view why, bool rescale) {
  Posted posted;
  auto ready = read_document(core, document, rescale);
  if (has_error(ready.found)) throw DocumentRefused(document.name, document.text, std::move(ready.found));
  posted.subject = ready.subject;
  const auto before = core.journal.current(ready.subject);
  const bool same_text = before && before->body == document.text;
  if (same_text && !(rescale && ready.rules.differ)) {
    posted.outcome = Outcome::unchanged;
    posted.revision = before->revision;
    posted.mark = mark_of(*before);
    return posted;
  }
  std::vector<std::string> added;
  if (before && document.kind == EntryKind::mill) {
    added = added_to_mill(document, *before, trim(why));
  } else if (same_text && trim(why).empty()) {
    throw Refused(fmt::format("{}: to scale the logs of {} anew, give the reason with --why \"the reason\"",
                              document.name, ready.subject));
  } else if (before && trim(why).empty()) {
    throw Refused(
        fmt::format("{}: {} is in the book already, posted {}, and this text differs from it; to correct it, "
                    "post it again with --why \"the reason\"; if it is one more sheet of that day, begin it "
                    "'sheet {}'",
                    document.name, ready.subject, before->at, next_sheet_of_day(core, ready.subject)));
  }
  posted.found = std::move(ready.found);
  core.projector.words().take_notes();
  const auto entry = core.journal.append(document.kind, ready.subject, document.text,
                                         before ? std::string(trim(why)) : std::string(), core.options.now(),
                                         ready.rules.keeps);
  core.projector.apply(entry);
  core.projector.settle();
  posted.notes = core.projector.words().take_notes();
  if (!added.empty()) posted.notes.push_back("adds " + listed(added));
  posted.revision = entry.revision;
  posted.mark = mark_of(entry);
  posted.outcome = before ? Outcome::revised : Outcome::posted;
  return posted;
}

/// How a post is to be done.
struct HowPosted {
  std::string_view why;
  bool rescale = false;
};

/// Posts the document; once one was refused the others are only read, so that all that is wrong is told at once.
void post_or_read(Core& core, const Document& document, const HowPosted& asked, Posted& posted,
                  std::optional<DocumentRefused>& refused) {
  try {
    if (!refused) {
      posted = post_one(core, document, asked.why, asked.rescale);
      return;
    }
    auto ready = read_document(core, document, asked.rescale);
    if (has_error(ready.found)) refused->add_other({document.name, document.text, std::move(ready.found)});
  } catch (const DocumentRefused& first) {
    refused = first;
  } catch (const std::overflow_error&) {
    throw Refused(
        fmt::format("{}: a volume in it is larger than any mill's; look for a size, length or count with too "
                    "many digits",
                    document.name));
  }
}

}  // namespace

Book::Book(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

std::vector<Posted> Book::post_all(const std::vector<Document>& documents, std::string_view why,
                                   bool rescale) {
  Core& core = *inside_->core;
  return guarded(core.file, [&] {
    std::vector<Posted> posted(documents.size());
    std::optional<DocumentRefused> refused;
    Writing writing(core);
    for (const std::size_t i : posting_order(documents)) {
      post_or_read(core, documents[i], {why, rescale}, posted[i], refused);
      if (refused && documents[i].kind == EntryKind::mill)
        break;  // what a sheet means hangs on the mill file
    }
    if (refused) throw *refused;
    const bool changed = std::any_of(posted.begin(), posted.end(),
                                     [](const Posted& one) { return one.outcome != Outcome::unchanged; });
    if (changed) writing.commit();  // else the file is not touched at all
    return posted;
  });
}

Posted Book::post_sheet(std::string_view text, std::string_view why) {
  return post_all({{"the sheet", std::string(text), EntryKind::sheet}}, why).front();
}

Posted Book::post_mill(std::string_view toml, std::string_view why) {
  return post_all({{"the mill file", std::string(toml), EntryKind::mill}}, why).front();
}

std::vector<Diagnostic> Book::check_sheet(std::string_view text) const {
  Core& core = *inside_->core;
  return guarded(core.file, [&] {
    return read_sheet(core, {"the sheet", std::string(text), EntryKind::sheet}, false).found;
  });
}

Mark Book::post_paper(std::string_view subject, std::string_view body, std::string_view why) {
  Core& core = *inside_->core;
  return guarded(core.file, [&] {
    Writing writing(core);
    const Entry entry = core.journal.append(EntryKind::paper, subject, body, why, core.options.now());
    core.projector.apply(entry);
    writing.commit();
    return mark_of(entry);
  });
}

Turn::Turn(Book& book) : book_(book) {
  guarded(book.file(), [&] { writing_ = std::make_unique<Writing>(*book.inside_->core); });
}

Turn::~Turn() = default;

void Turn::commit() {
  guarded(book_.file(), [&] { writing_->commit(); });
}

std::string Book::now() const {
  return inside_->core->options.now();
}

const Mill& Book::mill() const {
  return inside_->core->projector.mill();
}

std::vector<Entry> Book::journal() const {
  const Core& core = *inside_->core;
  return guarded(core.file, [&] {
    std::vector<Entry> all;
    core.journal.each([&](const Entry& entry) { all.push_back(entry); });
    return all;
  });
}

Mark Book::newest() const {
  const Core& core = *inside_->core;
  return guarded(core.file, [&] { return core.journal.newest(); });
}

std::optional<Entry> Book::entry(std::int64_t number) const {
  const Core& core = *inside_->core;
  return guarded(core.file, [&] { return core.journal.entry(number); });
}

std::optional<Entry> Book::current(std::string_view subject) const {
  const Core& core = *inside_->core;
  return guarded(core.file, [&] { return core.journal.current(subject); });
}

std::vector<Entry> Book::revisions(std::string_view subject) const {
  const Core& core = *inside_->core;
  return guarded(core.file, [&] { return core.journal.revisions(subject, core.journal.last()); });
}

std::vector<Day> Book::days() const {
  Core& core = *inside_->core;
  return guarded(core.file, [&] {
    std::vector<Day> all;
    core.store.each("SELECT DISTINCT day FROM sheet ORDER BY day",
                    [&](const Row& row) { all.push_back({static_cast<std::int32_t>(row.number(0))}); });
    return all;
  });
}

std::optional<DayTotals> Book::day_totals(std::string_view subject) const {
  Core& core = *inside_->core;
  const auto key = read_subject(subject);
  if (!key) return std::nullopt;
  return guarded(core.file, [&] {
    std::optional<DayTotals> totals;
    core.store.each(
        "SELECT coalesce(sum(run.lines), 0), coalesce(sum(run.pieces), 0), coalesce(sum(run.logs), 0), "
        "coalesce(sum(run.lumber), 0) "
        "FROM sheet LEFT JOIN run USING (day, shift) WHERE day = ? AND shift = ? GROUP BY day, shift",
        [&](const Row& row) {
          totals = DayTotals{row.number(0), row.number(1), row.number(2), {row.number(3), mill().units}};
        },
        key->day, key->shift);
    return totals;
  });
}

SQLite::Database& Book::database() const {
  return *inside_->core->database;
}

const std::filesystem::path& Book::file() const {
  return inside_->core->file;
}

Still::Still(const Book& book) : database_(book.database()) {
  guarded(book.file(), [&] {
    database_.exec("SAVEPOINT still");
    database_.execAndGet("SELECT count(*) FROM sqlite_schema");  // the moment is that of the first read
  });
}

Still::~Still() {
  sqlite3_exec(database_.getHandle(), "RELEASE still", nullptr, nullptr, nullptr);  // nothing was written
}

std::vector<Diagnostic> check_without_book(std::string_view text) {
  auto read = sheet::read(text);
  if (!has_error(read.found)) {
    const auto doubts = sheet::check(read.sheet, {}, scaling::Practice{});
    read.found.insert(read.found.end(), doubts.begin(), doubts.end());
    sort_by_place(read.found);
  }
  return read.found;
}

}  // namespace kerfbook::book
