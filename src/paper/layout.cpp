#include "paper/layout.h"

#include <algorithm>

#include "base/text.h"
#include "paper/mill_words.h"
#include "render/footing.h"
#include "render/renderer.h"

namespace kerfbook::billing {

const char* const kTaxCaution = "Taxes are as entered by the mill; check with the authority.";
const char* const kBilledScaleCaution = "Where law asks for a licensed scaler or a given rule, that governs.";
const char* const kScaleCaution =
    "Log scale is shown for information. Where law asks for a licensed scaler or a given rule, that governs.";
const char* const kGradeCaution = "Grades are the mill's own yard grades, not grade stamps.";

render::Document letter(const book::Mill& mill, const std::string& name, const std::string& title, Day day) {
  render::Document paper;
  paper.name = name;
  paper.title = title;
  paper.style = paper_style(mill);
  paper.made_on = write_day(day);
  paper.logo = mill.logo;
  render::Party own{"", {mill.name}};
  if (!mill.owner.empty()) own.lines.push_back(mill.owner);
  own.lines.insert(own.lines.end(), mill.address.begin(), mill.address.end());
  if (!mill.phone.empty()) own.lines.push_back(mill.phone);
  if (!mill.email.empty()) own.lines.push_back(mill.email);
  if (!mill.tax_number.empty()) own.lines.push_back("Tax number " + mill.tax_number);
  paper.parties.push_back(std::move(own));
  return paper;
}

void add_party(render::Document& paper, const book::Mill& mill, const std::string& customer,
               const std::string& heading, bool with_certificate) {
  render::Party party{heading, {}};
  if (const book::Customer* known = find_customer(mill, customer)) {
    party.lines.push_back(known->name.empty() ? known->code : known->name);
    party.lines.insert(party.lines.end(), known->address.begin(), known->address.end());
    if (!known->phone.empty()) party.lines.push_back(known->phone);
    if (with_certificate && !known->tax_certificate.empty())
      party.lines.push_back("Exemption certificate " + known->tax_certificate);
  } else {
    party.lines.push_back(customer);
  }
  paper.parties.push_back(std::move(party));
}

void add_head(render::Document& paper, const std::string& label, render::Cell value,
              render::ColumnKind kind) {
  paper.head.push_back({label, std::move(value), kind});
}

render::Cell money_cell(Money sum, const book::Mill& mill) {
  return Decimal{sum.minor, mill.currency.places};
}

render::Cell rate_cell(const Rational& rate, const book::Mill& mill) {
  return shortest(rate, mill.currency.places, 6);
}

render::Column text_column(const std::string& name, const std::string& heading) {
  render::Column column;
  column.name = name;
  column.heading = heading;
  return column;
}

render::Column day_column(const std::string& name, const std::string& heading) {
  render::Column column = text_column(name, heading);
  column.kind = render::ColumnKind::day;
  return column;
}

render::Column count_column(const std::string& name, const std::string& heading, const std::string& unit) {
  render::Column column = text_column(name, heading);
  column.kind = render::ColumnKind::count;
  column.unit = unit;
  return column;
}

render::Column decimal_column(const std::string& name, const std::string& heading, const std::string& unit,
                              int places) {
  render::Column column = text_column(name, heading);
  column.kind = render::ColumnKind::decimal;
  column.unit = unit;
  column.places = places;
  return column;
}

render::Column money_column(const std::string& name, const std::string& heading, const book::Mill& mill) {
  render::Column column = text_column(name, heading);
  column.kind = render::ColumnKind::money;
  column.places = mill.currency.places;
  return column;
}

render::Column summed(render::Column column) {
  column.total = render::TotalKind::sum;
  return column;
}

void foot(render::Table& table, const book::Mill& mill) {
  render::total_up(table);
  render::note_rounding(table, paper_style(mill));
}

void drop_empty(render::Table& table, std::size_t column) {
  const auto blank = [&](const render::Row& row) {
    const auto* text = std::get_if<std::string>(&row.cells[column]);
    return text != nullptr && text->empty();
  };
  if (!std::all_of(table.rows.begin(), table.rows.end(), blank)) return;
  const auto at = static_cast<std::ptrdiff_t>(column);
  table.columns.erase(table.columns.begin() + at);
  for (render::Row& row : table.rows) row.cells.erase(row.cells.begin() + at);
  if (!table.totals.empty()) table.totals.erase(table.totals.begin() + at);
}

render::Table ruled_table(const std::string& name, const std::string& title,
                          const std::vector<std::string>& headings, std::size_t rows) {
  render::Table table;
  table.name = name;
  table.title = title;
  table.ruled = true;
  for (const std::string& heading : headings) {
    table.columns.push_back(text_column(lower(heading), heading));
    table.columns.back().width_hint = heading.starts_with("What") ? 36 : 9;
  }
  table.rows.assign(rows, {std::vector<render::Cell>(headings.size(), render::Cell(std::string()))});
  return table;
}

}  // namespace kerfbook::billing
