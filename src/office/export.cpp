// export.cpp -- plain tables for the bookkeeper, one document each, so that csv has one documented header.
#include <array>
#include <map>
#include <utility>

#include "base/error.h"
#include "base/text.h"
#include "book/store.h"
#include "office/office.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Table;

Cell day_cell(const book::Row& row, int column) {
  return row.is_null(column) ? Cell() : Cell(Day{static_cast<std::int32_t>(row.number(column))});
}

struct ExportAsk {
  const book::Book& book;
  Day from;
  Day to;
  const book::Mill& mill() const { return book.mill(); }
  Cell money(std::int64_t minor) const { return money_cell({minor}, mill()); }
};

Table invoices(const ExportAsk& ask) {
  Table table;
  table.columns = {text_column("invoice", "Invoice"),
                   day_column("day", "Date"),
                   day_column("due_date", "Due date"),
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

Table lines(const ExportAsk& ask) {
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
              row.text(7), render::Figure(row.number(8), 1'000'000, 3), unit_words(row.text(9)),
              ask.money(row.number(10)), std::string(row.number(11) != 0 ? "yes" : "no")}});
      },
      ask.from, ask.to);
  return table;
}

Table payments(const ExportAsk& ask) {
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

Table taxes(const ExportAsk& ask) {
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

/// Income by kind and title, without tax: what was billed in those days less what credit notes of those days took back.
class Income {
 public:
  explicit Income(const ExportAsk& ask) : ask_(ask), store_(ask.book.database()) {}

  std::map<std::pair<std::string, std::string>, std::pair<std::int64_t, std::int64_t>> all() {
    // a cancelled invoice is taken back line by line, on the day of its credit note
    lines(
        "SELECT l.tax, l.title, count(*), sum(l.amount) FROM paper_line l JOIN paper p ON p.entry = l.entry "
        "WHERE p.kind = 'invoice' AND p.day BETWEEN ? AND ? GROUP BY l.tax, l.title");
    lines(
        "SELECT l.tax, l.title, count(*), -sum(l.amount) FROM paper_line l JOIN paper p ON p.entry = l.entry "
        "JOIN paper c ON c.kind = 'credit' AND c.cancels = 1 AND c.invoice = p.number "
        "WHERE p.kind = 'invoice' AND c.day BETWEEN ? AND ? GROUP BY l.tax, l.title");
    lines(
        "SELECT 'tax', t.name || ', included in prices', count(*), -sum(t.amount) FROM paper_tax t "
        "JOIN paper p ON p.entry = t.entry WHERE p.kind = 'invoice' AND t.included = 1 AND p.day BETWEEN ? "
        "AND ? "
        "GROUP BY t.name");
    lines(
        "SELECT 'tax', t.name || ', included in prices', count(*), sum(t.amount) FROM paper_tax t "
        "JOIN paper p ON p.entry = t.entry JOIN paper c ON c.kind = 'credit' AND c.cancels = 1 AND "
        "c.invoice = p.number WHERE p.kind = 'invoice' AND t.included = 1 AND c.day BETWEEN ? AND ? "
        "GROUP BY t.name");
    // a part credit is of no kind; and a cancelled invoice that was credited in part before is not taken back twice
    lines(
        "SELECT 'credit', 'Credited in part', count(*), sum(CASE c.cancels WHEN 1 THEN "
        "(SELECT i.amount - coalesce((SELECT sum(t.amount) FROM paper_tax t WHERE t.entry = i.entry AND "
        "t.excused = ''), 0) FROM paper i WHERE i.kind = 'invoice' AND i.number = c.invoice) ELSE 0 END "
        "- c.amount + coalesce((SELECT sum(t.amount) FROM paper_tax t WHERE t.entry = c.entry AND t.excused "
        "= ''), "
        "0)) FROM paper c WHERE c.kind = 'credit' AND c.day BETWEEN ? AND ?");
    std::erase_if(sums_, [](const auto& one) { return one.second.second == 0; });
    return std::move(sums_);
  }

 private:
  void lines(std::string_view sql) {
    store_.each(
        sql,
        [&](const book::Row& row) {
          auto& [many, amount] = sums_[{row.text(0), row.text(1)}];
          many += row.number(2);
          amount += row.number(3);
        },
        ask_.from, ask_.to);
  }

  const ExportAsk& ask_;
  book::Store store_;
  std::map<std::pair<std::string, std::string>, std::pair<std::int64_t, std::int64_t>> sums_;
};

Table income(const ExportAsk& ask) {
  Table table;
  table.columns = {text_column("tax_kind", "Kind"), text_column("title", "What"),
                   count_column("lines", "Lines"), summed(money_column("amount", "Billed", ask.mill()))};
  std::int64_t sum = 0;
  for (const auto& [what, figures] : Income(ask).all()) {
    sum += figures.second;
    table.rows.push_back({{what.first, what.second, figures.first, ask.money(figures.second)}});
  }
  if (!table.rows.empty()) table.totals = {std::monostate{}, {}, {}, ask.money(sum)};
  table.notes.emplace_back(
      "Without tax. What credit notes took back is taken off on their day; write-offs are among the "
      "payments.");
  return table;
}

using Header = std::vector<std::pair<std::string_view, std::string_view>>;

const Header& invoices_header() {
  static const Header kHeader{
      {"invoice", "number as printed"},
      {"day", "YYYY-MM-DD"},
      {"due_date", "day it is to be paid"},
      {"customer", "code in the mill file, or a buyer's name"},
      {"name", "the customer's"},
      {"job", "empty for own lumber sold"},
      {"subtotal", "sum of the lines"},
      {"tax", "added to the lines; less than nothing where a certificate takes an included tax off"},
      {"total", "subtotal + tax"},
      {"paid", "payments, deposits and credit on account set against it, to this day"},
      {"credited", "by credit notes"},
      {"written_off", "given up"},
      {"open", "total - paid - credited - written_off"},
      {"cancelled", "yes: a credit note took back the whole of it"}};
  return kHeader;
}
const Header& lines_header() {
  static const Header kHeader{{"invoice", "number as printed"},
                              {"day", "of the invoice"},
                              {"customer", "code or name"},
                              {"job", ""},
                              {"kind", "sawing, charge, adjustment, minimum, percent, waived"},
                              {"tax_kind", "kind of line that taxes fall on: sawing, service, lumber ..."},
                              {"title", "of the price or charge"},
                              {"description", "as printed"},
                              {"quantity", "as printed; of time, hours"},
                              {"unit", ""},
                              {"amount", "with a tax that is included in the price"},
                              {"cancelled", "yes: its invoice was taken back"}};
  return kHeader;
}
const Header& payments_header() {
  static const Header kHeader{
      {"kind", "payment, refund, credit, write-off"},
      {"number", "of its kind"},
      {"day", "YYYY-MM-DD"},
      {"customer", "code or name"},
      {"name", "the customer's"},
      {"job", "with a payment and no invoice: a deposit"},
      {"invoice", "its number without the prefix; empty: on account"},
      {"method", "cash, check 88"},
      {"note", "the reason"},
      {"amount", "as it changes what the customer owes: a payment is less than nothing"}};
  return kHeader;
}
const Header& taxes_header() {
  static const Header kHeader{{"tax", "name"},
                              {"percent", "rate"},
                              {"excused", "exemption certificate; empty = charged"},
                              {"base", "sum of the lines it falls on, less what credit notes took back"},
                              {"amount", "collected; nothing under a certificate"}};
  return kHeader;
}
const Header& income_header() {
  static const Header kHeader{
      {"tax_kind",
       "sawing, service, lumber ...; tax: included in prices, taken off; credit: credited in part"},
      {"title", "of the price or charge"},
      {"lines", "how many"},
      {"amount", "billed in those days, without tax, less what credit notes of those days took back"}};
  return kHeader;
}

struct Export {
  std::string_view name;
  std::string_view title;
  Table (*make)(const ExportAsk&);
  const Header& (*header)();
};
constexpr std::array<Export, 5> kExports{
    {{"invoices", "Invoices", invoices, invoices_header},
     {"lines", "Lines of invoices", lines, lines_header},
     {"payments", "Payments, refunds, credits and write-offs", payments, payments_header},
     {"taxes", "Tax by rate", taxes, taxes_header},
     {"income", "Income by kind", income, income_header}}};

}  // namespace

const std::vector<std::string>& export_names() {
  static const std::vector<std::string> kNames = [] {
    std::vector<std::string> names;
    for (const Export& one : kExports) names.emplace_back(one.name);
    return names;
  }();
  return kNames;
}

std::string export_header_words() {
  std::string words = "The columns of each, in order:";
  for (const Export& one : kExports) {
    words += "\n\n" + std::string(one.name) + ": " + lower(one.title);
    for (const auto& [name, meaning] : one.header())
      words += "\n  " + std::string(name) + (meaning.empty() ? "" : ": " + std::string(meaning));
  }
  return words;
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
