// project_paper.cpp -- rows of one paper, and the proof that its number follows on.
#include "paper/project_paper.h"

#include <array>

#include "base/error.h"
#include "book/store.h"
#include "paper/paper.h"

namespace kerfbook::billing {

namespace {

using book::Store;

std::int64_t micro(const Rational& value) {
  return value.rounded(6);
}

void check_order(Store& store, const Paper& paper, const book::Entry& entry) {
  const std::int64_t before = store.number("SELECT count(*) FROM paper").value_or(0);
  const std::string word(word_of(paper.kind));
  const std::optional<std::int64_t> last = store.number("SELECT max(number) FROM paper WHERE kind = ?", word);
  // the mill may let its invoices begin at any number; everything else begins at 1
  const bool begins = paper.kind == PaperKind::invoice ? paper.number >= 1 : paper.number == 1;
  const bool follows = before == paper.after && (last ? paper.number == *last + 1 : begins);
  if (follows && entry.revision == 1 && entry.subject == subject_of(paper)) return;
  throw Refused(subject_of(paper) + ": another paper was issued meanwhile; nothing was changed, try again");
}

void add_lines(Store& store, const Paper& paper, std::int64_t entry) {
  static constexpr std::array<std::string_view, 6> kKinds{"sawing",  "charge",  "adjustment",
                                                          "minimum", "percent", "waived"};
  int number = 0;
  for (const BillLine& line : paper.lines) {
    store.run(
        "INSERT INTO paper_line (entry, line, kind, title, description, day, quantity_micro, unit, amount, "
        "tax) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        entry, ++number, kKinds[static_cast<std::size_t>(line.kind)], line.title, line.description, line.day,
        micro(quantity_of(line)), line.unit, line.amount.minor, line.tax);
  }
}

void add_taxes(Store& store, const Paper& paper, std::int64_t entry) {
  int number = 0;
  for (const TaxRow& tax : paper.taxes)
    store.run(
        "INSERT INTO paper_tax (entry, line, name, percent_micro, base, amount, included, excused) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        entry, ++number, tax.name, micro(tax.percent), tax.base.minor, tax.amount.minor,
        static_cast<int>(tax.included), tax.excused);
}

void add_shares(Store& store, const Paper& paper, std::int64_t entry) {
  if (!paper.split) return;
  int number = 0;
  for (const ShareLine& line : paper.split->lines)
    store.run(
        "INSERT INTO paper_share (entry, line, species, grade, size, thickness, width, length, metric, "
        "to_customer, to_mill, bundle) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        entry, ++number, line.species, line.grade, write_size(line.size), line.size.thickness.count,
        line.size.width.count, line.length.count,
        static_cast<int>(line.size.thickness.system == measure::System::metric), line.to_customer,
        line.to_mill, line.bundle);
}

void add_load(Store& store, const Paper& paper, std::int64_t entry) {
  int number = 0;
  for (const LoadLine& line : paper.load) {
    store.run(
        "INSERT INTO paper_load (entry, line, bundle, species, grade, size, thickness, width, length, "
        "metric, "
        "pieces) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        entry, ++number, line.bundle, line.species, line.grade, write_size(line.size),
        line.size.thickness.count, line.size.width.count, line.length.count,
        static_cast<int>(line.size.thickness.system == measure::System::metric), line.pieces);
  }
}

void add_sheets(Store& store, const Paper& paper, std::int64_t entry) {
  for (const SheetRef& sheet : paper.sheets)
    store.run("INSERT INTO paper_sheet (entry, day, shift, revision) VALUES (?, ?, ?, ?)", entry, sheet.day,
              sheet.shift, sheet.revision);
}

}  // namespace

void project_paper(SQLite::Database& database, const book::Entry& entry) {
  const Paper paper = read_paper(entry.body);
  Store store(database);
  check_order(store, paper, entry);
  Money subtotal;
  for (const BillLine& line : paper.lines) subtotal = subtotal + line.amount;
  const std::optional<std::int64_t> invoice =
      paper.invoice == 0 ? std::nullopt : std::optional(paper.invoice);
  const std::optional<std::int64_t> slip = paper.slip == 0 ? std::nullopt : std::optional(paper.slip);
  store.run(
      "INSERT INTO paper (entry, kind, number, called, day, due, job, customer, amount, subtotal, invoice, "
      "cancels, "
      "method, note, slip) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
      entry.number, word_of(paper.kind), paper.number, paper.called, paper.day, paper.due, paper.job,
      paper.customer, paper.amount.minor, subtotal.minor, invoice, static_cast<int>(paper.cancels),
      paper.method, paper.note, slip);
  add_lines(store, paper, entry.number);
  add_taxes(store, paper, entry.number);
  add_shares(store, paper, entry.number);
  add_load(store, paper, entry.number);
  add_sheets(store, paper, entry.number);
}

}  // namespace kerfbook::billing
