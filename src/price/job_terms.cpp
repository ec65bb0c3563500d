#include "price/job_terms.h"

#include "base/error.h"
#include "sheet/raw_log.h"

namespace kerfbook::billing {
namespace {

void add_mill(const book::Mill& mill, JobTerms& terms) {
  terms.convention = mill.convention;
  terms.practices = mill.practices;
  terms.taper = mill.taper;
  terms.system = mill.units;
  terms.money_places = mill.currency.places;
}

}  // namespace

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
  TermsOptions options;
  options.metric = mill.units == measure::System::metric;
  options.money_places = mill.currency.places;
  options.money_scale = measure::money_scale(mill.currency);
  options.log_unit = [mill](const std::string& rule, const std::string& job) {
    const auto named = rule.empty() ? std::nullopt : practice_named(mill, rule);
    return book::unit_in(named ? *named : practice_for(mill, job), mill.units);
  };
  options.species_name = [words = mill.species](const std::string& code) { return name_of(words, code); };
  options.grade_name = [words = mill.grades](const std::string& code) { return name_of(words, code); };
  return options;
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
