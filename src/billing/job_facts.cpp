// job_facts.cpp -- reading a job's facts through the book's views.
#include "billing/job_facts.h"

#include <algorithm>
#include <map>

#include "base/error.h"
#include "base/text.h"
#include "book/log_spec.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

using book::Row;
using book::Store;

/// The long tables are looked into only where the job has a run: they have no order by job.
constexpr std::string_view kOnItsSheets =
    "(day, shift) IN (SELECT day, shift FROM run WHERE job = (SELECT id FROM job WHERE code = ?1))";

using SheetKey = std::pair<std::int64_t, std::int64_t>;

/// Reads the facts of one job, or of one buyer's sales, up to a day.
class Loader {
 public:
  Loader(const book::Book& book, const std::string& job, Day to)
      : store_(book.database()), job_(job), to_(to) {
    load_sheets();
  }

  JobFacts job() {
    tally();
    logs();
    sawing();
    stops();
    teeth();
    charges();
    moves();
    if (!out_.facts.empty()) once();
    return std::move(out_);
  }

  JobFacts sales() {
    static constexpr std::string_view kSql =
        "SELECT day, shift, species, grade, bundle, size, metric, length, pieces, rate_micro FROM v_sold "
        "WHERE buyer = ? COLLATE NOCASE AND day <= ? ORDER BY day, shift, number";
    store_.each(
        kSql,
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::sold);
          lumber(fact, row, 2);
          fact.count = row.number(8);
          if (const auto rate = row.maybe(9)) fact.agreed = Rational(*rate, 1'000'000);
        },
        job_, to_);
    return std::move(out_);
  }

 private:
  void load_sheets() {
    // only a revised sheet has a reason to be looked up
    store_.each(
        "SELECT s.day, s.shift, s.revision, CASE WHEN s.revision > 1 THEN (SELECT e.why FROM v_entry e "
        "WHERE e.kind = 'sheet' AND e.revision = s.revision AND e.subject = date(s.day * 86400, 'unixepoch') "
        "|| "
        "CASE WHEN s.shift > 1 THEN ' shift ' || s.shift ELSE '' END) ELSE '' END "
        "FROM sheet s WHERE s.day <= ? ORDER BY s.day, s.shift",
        [&](const Row& row) {
          SheetRef sheet{Day{static_cast<std::int32_t>(row.number(0))}, static_cast<int>(row.number(1)),
                         static_cast<int>(row.number(2)), row.text(3)};
          sheets_[{row.number(0), row.number(1)}] = sheet;
          out_.sheets.push_back(std::move(sheet));
        },
        to_);
  }

  /// A fact of the sheet in the row's first two columns.
  Fact& add(const Row& row, FactKind kind) {
    Fact fact;
    fact.kind = kind;
    fact.sheet = sheets_.at({row.number(0), row.number(1)});
    out_.facts.push_back(std::move(fact));
    return out_.facts.back();
  }

  /// species, grade, bundle, size, metric, length from column `first` on.
  static void lumber(Fact& fact, const Row& row, int first) {
    fact.species = row.text(first);
    fact.grade = row.text(first + 1);
    fact.bundle = row.text(first + 2);
    const bool metric = row.number(first + 4) != 0;
    const auto size = measure::read_size(row.text(first + 3), metric);
    if (!size)
      throw Failed("the book has a size '" + row.text(first + 3) + "' that cannot be read; run verify");
    fact.size = *size;
    fact.length = {row.number(first + 5), metric ? measure::System::metric : measure::System::inch};
  }

  void tally() {
    store_.each(
        "SELECT day, shift, species, grade, bundle, size, metric, length, pieces, form, sense, site FROM "
        "v_tally WHERE job = ?1 COLLATE NOCASE AND day <= ?2 AND " +
            std::string(kOnItsSheets) + " ORDER BY day, shift, number",
        [&](const Row& row) {
          const bool lineal = row.text(9) == "lineal";
          Fact& fact = add(row, lineal ? FactKind::lineal : FactKind::pieces);
          lumber(fact, row, 2);
          fact.site = row.text(11);
          fact.count = lineal ? fact.length.count * (row.text(10) == "sawn" ? 1 : -1) : row.number(8);
          if (lineal) fact.length.count = 0;
        },
        job_, to_);
  }

  void logs() {
    store_.each(
        "SELECT day, shift, species, tag, spec, metric, length, content, site FROM v_log WHERE state = "
        "'sawn' AND job = ?1 COLLATE NOCASE AND day <= ?2 AND " +
            std::string(kOnItsSheets) + " ORDER BY day, shift, number",
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::log);
          fact.species = row.text(2);
          fact.name = row.text(3);
          fact.site = row.text(8);
          if (row.is_null(4)) return;
          const auto spec = book::read_spec(row.text(4), row.number(5) != 0);
          if (!spec) return;
          fact.measured = true;
          fact.log = spec->measure;
          fact.defects = spec->defects;
          fact.length = spec->measure.length;
          fact.content = row.maybe(7).value_or(0);
        },
        job_, to_);
  }

  /// One fact a sheet: the spans of a day are billed as their sum.
  void sawing() {
    store_.each(
        "SELECT day, shift, sum(minutes) FROM v_sawing WHERE job = ? COLLATE NOCASE AND day <= ? "
        "GROUP BY day, shift ORDER BY day, shift",
        [&](const Row& row) { add(row, FactKind::sawing).count = row.number(2); }, job_, to_);
  }

  void stops() {
    store_.each(
        "SELECT day, shift, cause, minutes, text, charge FROM v_stop WHERE job = ? COLLATE NOCASE AND day <= "
        "? "
        "ORDER BY day, shift, number",
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::stop);
          fact.name = row.text(2);
          fact.minutes = static_cast<int>(row.number(3));
          fact.text = row.text(4);
          fact.chargeable = row.number(5) != 0;
        },
        job_, to_);
  }

  void teeth() {
    store_.each(
        "SELECT day, shift, saw, cause, log_tag, teeth, text FROM v_tooth_work WHERE job = ? COLLATE NOCASE "
        "AND day <= ? ORDER BY day, shift, number",
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::teeth);
          fact.name = row.text(2);
          fact.cause = row.text(3);
          fact.log_tag = row.text(4);
          fact.quantity = row.maybe(5).value_or(0);
          fact.text = row.text(6);
        },
        job_, to_);
  }

  void charges() {
    store_.each(
        "SELECT day, shift, name, quantity_micro, text FROM v_charge WHERE job = ? COLLATE NOCASE AND day <= "
        "? "
        "ORDER BY day, shift, number",
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::charge);
          fact.name = row.text(2);
          fact.quantity = Rational(row.number(3), 1'000'000);
          fact.text = row.text(4);
        },
        job_, to_);
  }

  void moves() {
    store_.each(
        "SELECT day, shift, from_site, to_site, distance_micro, unit, minutes FROM v_move WHERE job = ? "
        "COLLATE "
        "NOCASE AND day <= ? ORDER BY day, shift, number",
        [&](const Row& row) {
          Fact& fact = add(row, FactKind::move);
          fact.name = row.text(2);
          fact.text = row.text(3);
          fact.quantity = Rational(row.number(4), 1'000'000);
          fact.kilometres = row.text(5) == "km";
          fact.minutes = static_cast<int>(row.number(6));
        },
        job_, to_);
  }

  void once() {
    Fact fact;
    fact.kind = FactKind::once;
    fact.sheet = {Day{}, 0, 0, ""};
    out_.facts.push_back(std::move(fact));
  }

  Store store_;
  std::string job_;
  Day to_;
  std::map<SheetKey, SheetRef> sheets_;
  JobFacts out_;
};

void add_mill(const book::Mill& mill, JobTerms& terms) {
  terms.convention = mill.convention;
  terms.practices = mill.practices;
  terms.system = mill.units;
  terms.money_places = mill.currency.places;
}

}  // namespace

JobFacts job_facts(const book::Book& book, const std::string& job, Day to) {
  return Loader(book, job, to).job();
}

JobFacts sale_facts(const book::Book& book, const std::string& buyer, Day to) {
  return Loader(book, buyer, to).sales();
}

std::vector<std::string> buyers(const book::Book& book) {
  std::vector<std::string> all;
  Store store(book.database());
  store.each("SELECT buyer FROM v_sold ORDER BY day, shift, number", [&](const Row& row) {
    const std::string name = row.text(0);
    const bool met =
        std::any_of(all.begin(), all.end(), [&](const std::string& one) { return same_word(one, name); });
    if (!met) all.push_back(name);
  });
  return all;
}

JobTerms job_terms(const book::Mill& mill, const std::string& job) {
  JobTerms terms;
  add_mill(mill, terms);
  terms.job = job;
  terms.customer = job;
  terms.practice = practice_for(mill, job);
  if (const book::JobEntry* entry = find_job(mill, job)) {
    terms.job = entry->code;
    if (!entry->customer.empty()) terms.customer = entry->customer;
    if (entry->convention) terms.convention = *entry->convention;
  }
  if (const book::Customer* customer = find_customer(mill, terms.customer))
    terms.certificate = customer->tax_certificate;
  return terms;
}

JobTerms sale_terms(const book::Mill& mill, const std::string& buyer) {
  JobTerms terms;
  add_mill(mill, terms);
  terms.customer = buyer;
  terms.practice = practice_for(mill, "");
  if (const book::Customer* customer = find_customer(mill, buyer)) {
    terms.customer = customer->code;
    terms.certificate = customer->tax_certificate;
  }
  return terms;
}

TermsOptions options_of(const book::Mill& mill) {
  return {mill.units == measure::System::metric, mill.currency.places};
}

std::vector<Diagnostic> check_money(std::string_view mill_toml) {
  return read_terms(mill_toml, options_of(book::read_mill(mill_toml).mill)).found;
}

Terms terms_of(const book::Mill& mill) {
  ReadTerms got = read_terms(mill.money.toml, options_of(mill));
  for (const Diagnostic& one : got.found)
    if (one.severity == Severity::error)
      throw Refused("the mill file, line " + std::to_string(one.place.line) + ": " + one.what +
                    (one.instead.empty() ? "" : "; " + one.instead) + "; correct it and post it again");
  return std::move(got.terms);
}

}  // namespace kerfbook::billing
