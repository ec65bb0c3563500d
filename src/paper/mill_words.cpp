#include "paper/mill_words.h"

#include "render/renderer.h"

namespace kerfbook::billing {

render::Style paper_style(const book::Mill& mill) {
  render::Style style;
  style.currency = mill.currency;
  style.paper = mill.a4 ? render::PaperSize::a4 : render::PaperSize::letter;
  if (mill.dates == "mdy") style.dates = render::DateOrder::month_day_year;
  if (mill.dates == "dmy") style.dates = render::DateOrder::day_month_year;
  return style;
}

std::string money_words(measure::Money sum, const book::Mill& mill) {
  return measure::write_money(sum, mill.currency);
}

std::string day_words(Day day, const book::Mill& mill) {
  render::Column column;
  column.kind = render::ColumnKind::day;
  return render::shown_cell(day, column, paper_style(mill));
}

std::string period_words(Day from, Day to, const book::Mill& mill) {
  return from == to ? day_words(from, mill) : day_words(from, mill) + " to " + day_words(to, mill);
}

std::string species_words(const book::Mill& mill, const std::string& code) {
  return name_of(mill.species, code);
}

std::string grade_words(const book::Mill& mill, const std::string& code) {
  return name_of(mill.grades, code);
}

std::string job_words(const book::Mill& mill, const std::string& job) {
  const book::JobEntry* entry = find_job(mill, job);
  if (entry == nullptr) return job;
  std::string words = entry->code;
  if (!entry->name.empty()) words += ", " + entry->name;
  if (!entry->site.empty()) words += ", at " + entry->site;
  return words;
}

std::string signer(const book::Mill& mill) {
  return mill.owner.empty() ? mill.name : mill.owner;
}

std::string customer_words(const book::Mill& mill, const std::string& customer) {
  const book::Customer* known = find_customer(mill, customer);
  return known == nullptr || known->name.empty() ? customer : known->name;
}

Decimal shortest(const Rational& value, int least, int most) {
  for (int places = least; places < most; ++places) {
    const Decimal tried = shown(value, places);
    Rational scale = 1;
    for (int i = 0; i < places; ++i) scale = scale * Rational(10);
    if (Rational(tried.units) == value * scale) return tried;
  }
  return shown(value, most);
}

}  // namespace kerfbook::billing
