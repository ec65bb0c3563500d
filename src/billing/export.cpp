// export.cpp -- plain tables for the bookkeeper, one document each, so that csv has one documented header.
#include <array>
#include <map>

#include "base/error.h"
#include "base/text.h"
#include "billing/letter.h"
#include "billing/office.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Table;

Cell day_cell(const book::Row& row, int column) {
  return row.is_null(column) ? Cell() : Cell(Day{static_cast<std::int32_t>(row.number(column))});
}

struct Asked {
  const book::Book& book;
  Day from;
  Day to;
  const book::Mill& mill() const { return book.mill(); }
  Cell money(std::int64_t minor) const { return money_cell({minor}, mill()); }
};

/// number,day,due,customer,name,job,subtotal,tax,total,paid,credited,written_off,open,cancelled
Table invoices(const Asked& ask) {
  Table table;
  table.columns = {text_column("invoice", "Invoice"),
                   day_column("day", "Date"),
                   day_column("due", "Due"),
                   text_column("customer", "Customer"),
                   text_column("name", "Name"),
                   text_column("job", "Job"),
                   money_column("subtotal", "Lines", ask.mill()),
                   money_column("tax", "Tax added", ask.mill()),
                   money_column("total", "Total", ask.mill()),
                   money_column("paid", "Paid", ask.mill()),
                   money_column("credited", "Credited", ask.mill()),
                   money_column("written_off", "Written off", ask.mill()),
                   money_column("open", "Open", ask.mill()),
                   text_column("cancelled", "Cancelled")};
  const std::vector<Paper> papers = papers_of(ask.book);
  const Ledger ledger = play(papers);
  std::map<std::int64_t, std::int64_t> subtotals;
  book::Store store(ask.book.database());
  store.each("SELECT number, subtotal FROM v_paper WHERE kind = 'invoice'",
             [&](const book::Row& row) { subtotals[row.number(0)] = row.number(1); });
  for (const Paper& paper : papers) {
    if (paper.kind != PaperKind::invoice || paper.day < ask.from || ask.to < paper.day) continue;
    const InvoiceState& state = ledger.invoices.at(paper.number);
    const Money subtotal{subtotals.at(paper.number)};
    table.rows.push_back(
        {{paper.called, paper.day, paper.due ? Cell(*paper.due) : Cell(), paper.customer,
          customer_words(ask.mill(), paper.customer), paper.job, ask.money(subtotal.minor),
          ask.money((paper.amount - subtotal).minor), ask.money(paper.amount.minor),
          ask.money(state.paid.minor), ask.money(state.credited.minor), ask.money(state.written_off.minor),
          ask.money(state.open().minor), std::string(state.cancelled ? "yes" : "no")}});
  }
  return table;
}

/// Lines of the invoices of those days, cancelled ones marked: income by kind is their sum by `tax_kind`.
Table lines(const Asked& ask) {
  Table table;
  table.columns = {text_column("invoice", "Invoice"),
                   day_column("day", "Date"),
                   text_column("customer", "Customer"),
                   text_column("job", "Job"),
                   text_column("kind", "Kind"),
                   text_column("tax_kind", "Taxed as"),
                   text_column("title", "Title"),
                   text_column("description", "Description"),
                   decimal_column("quantity", "Quantity", "", 3),
                   text_column("unit", "Unit"),
                   money_column("amount", "Amount", ask.mill()),
                   text_column("cancelled", "Cancelled")};
  book::Store store(ask.book.database());
  store.each(
      "SELECT called, invoice_day, customer, job, kind, tax, title, description, quantity_micro, unit, "
      "amount, "
      "cancelled FROM v_paper_line WHERE invoice_day BETWEEN ? AND ? ORDER BY invoice, line",
      [&](const book::Row& row) {
        table.rows.push_back(
            {{row.text(0), day_cell(row, 1), row.text(2), row.text(3), row.text(4), row.text(5), row.text(6),
              row.text(7), shown(Rational(row.number(8), 1'000'000), 3), row.text(9),
              ask.money(row.number(10)), std::string(row.number(11) != 0 ? "yes" : "no")}});
      },
      ask.from, ask.to);
  return table;
}

/// kind: payment, refund, credit, write-off. `amount` as it changes what the customer owes (a payment is negative).
Table payments(const Asked& ask) {
  Table table;
  table.columns = {text_column("kind", "Kind"),        count_column("number", "Number"),
                   day_column("day", "Date"),          text_column("customer", "Customer"),
                   text_column("name", "Name"),        text_column("job", "Job"),
                   count_column("invoice", "Invoice"), text_column("method", "Method"),
                   text_column("note", "Note"),        money_column("amount", "Amount", ask.mill())};
  book::Store store(ask.book.database());
  store.each(
      "SELECT kind, number, day, customer, job, invoice, method, note, amount FROM v_paper WHERE kind IN "
      "('payment', 'refund', 'credit', 'write-off') AND day BETWEEN ? AND ? ORDER BY entry",
      [&](const book::Row& row) {
        const std::int64_t sign = row.text(0) == "refund" ? 1 : -1;
        table.rows.push_back({{row.text(0), row.number(1), day_cell(row, 2), row.text(3),
                               customer_words(ask.mill(), row.text(3)), row.text(4),
                               row.is_null(5) ? Cell() : Cell(row.number(5)), row.text(6), row.text(7),
                               ask.money(sign * row.number(8))}});
      },
      ask.from, ask.to);
  return table;
}

Table taxes(const Asked& ask) {
  Table table;
  table.columns = {text_column("tax", "Tax"), decimal_column("percent", "Rate", "%", 3),
                   text_column("excused", "Certificate"), summed(money_column("base", "On", ask.mill())),
                   summed(money_column("amount", "Collected", ask.mill()))};
  std::int64_t base = 0;
  std::int64_t amount = 0;
  book::Store store(ask.book.database());
  store.each(
      "SELECT name, percent_micro, excused, sum(base), sum(amount) FROM v_paper_tax WHERE day BETWEEN ? AND "
      "? "
      "GROUP BY name, percent_micro, excused ORDER BY name, percent_micro, excused",
      [&](const book::Row& row) {
        base += row.number(3);
        amount += row.number(4);
        table.rows.push_back({{row.text(0), shown(Rational(row.number(1), 1'000'000), 3), row.text(2),
                               ask.money(row.number(3)), ask.money(row.number(4))}});
      },
      ask.from, ask.to);
  if (!table.rows.empty()) table.totals = {std::monostate{}, {}, {}, ask.money(base), ask.money(amount)};
  table.notes.emplace_back(kTaxCaution);
  return table;
}

Table income(const Asked& ask) {
  Table table;
  table.columns = {text_column("tax_kind", "Kind"), text_column("title", "What"),
                   count_column("lines", "Lines"), summed(money_column("amount", "Billed", ask.mill()))};
  std::int64_t sum = 0;
  book::Store store(ask.book.database());
  store.each(
      "SELECT tax, title, count(*), sum(amount) FROM v_paper_line WHERE cancelled = 0 AND invoice_day "
      "BETWEEN ? AND "
      "? GROUP BY tax, title ORDER BY tax, title",
      [&](const book::Row& row) {
        sum += row.number(3);
        table.rows.push_back({{row.text(0), row.text(1), row.number(2), ask.money(row.number(3))}});
      },
      ask.from, ask.to);
  if (!table.rows.empty()) table.totals = {std::monostate{}, {}, {}, ask.money(sum)};
  table.notes.emplace_back(
      "Invoices taken back by a credit note are left out; part credits and write-offs are among the "
      "payments.");
  return table;
}

struct Export {
  std::string_view name;
  std::string_view title;
  Table (*make)(const Asked&);
};
constexpr std::array<Export, 5> kExports{{{"invoices", "Invoices", invoices},
                                          {"lines", "Lines of invoices", lines},
                                          {"payments", "Payments, refunds, credits and write-offs", payments},
                                          {"taxes", "Tax by rate", taxes},
                                          {"income", "Income by kind", income}}};

}  // namespace

const std::vector<std::string>& export_names() {
  static const std::vector<std::string> kNames = [] {
    std::vector<std::string> names;
    for (const Export& one : kExports) names.emplace_back(one.name);
    return names;
  }();
  return kNames;
}

render::Document export_document(const book::Book& book, const std::string& what, Day from, Day to,
                                 Day today) {
  for (const Export& one : kExports) {
    if (!same_word(one.name, what)) continue;
    const book::Mill& mill = book.mill();
    render::Document paper;
    paper.name = std::string(one.name);
    paper.title = std::string(one.title);
    paper.subtitle = mill.name + "; " + period_words(from, to, mill);
    paper.style = paper_style(mill);
    paper.made_on = write_day(today);
    Table table = one.make({book, from, to});
    table.name = paper.name;
    paper.tables.push_back(std::move(table));
    return paper;
  }
  const std::string near = nearest(what, export_names());
  throw WrongUsage("no export is called '" + what + "'; " +
                   (near.empty() ? "one of " + join(export_names(), ", ") : "did you mean " + near + "?"));
}

}  // namespace kerfbook::billing
