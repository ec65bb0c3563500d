// offer_documents.cpp -- what is agreed before the first log: job agreement and quote.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/text.h"
#include "paper/documents.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"
#include "paper/tally_tables.h"
#include "price/job_terms.h"
#include "price/price.h"
#include "render/renderer.h"

namespace kerfbook::billing {

namespace {

using render::Document;
using render::Table;

bool names(const std::vector<std::string>& words, const std::string& word) {
  return words.empty() ||
         std::any_of(words.begin(), words.end(), [&](const auto& one) { return same_word(one, word); });
}

/// The prices that can come to hold for some piece of the job: a price for the whole job (or customer) leaves no room
/// for those that do not name it.
std::vector<const Price*> prices_of(const Terms& terms, const JobTerms& job, Day day) {
  std::vector<const Price*> all;
  Particular floor;
  for (const Price& price : terms.prices) {
    const Conditions& when = price.when;
    if (price.own_lumber || !names(when.job, job.job) || !names(when.customer, job.customer)) continue;
    if ((when.from && day < *when.from) || (when.until && *when.until < day)) continue;
    all.push_back(&price);
    const Particular rank = particular(when, price.line);
    if (rank.others == 0 && floor < rank) floor = rank;
  }
  std::erase_if(all, [&](const Price* price) { return particular(price->when, price->line) < floor; });
  return all;
}

std::string price_sentence(const book::Mill& mill, const Price& price) {
  std::string sentence = price_title(price) + ": ";
  if (price.basis == Basis::shares) return sentence + "paid in lumber.";
  const render::Column column = money_column("rate", "", mill);
  sentence += render::shown_cell(rate_cell(price.rate, mill), column, paper_style(mill)) + " " +
              std::string(unit_after_rate(price.basis));
  if (price.minimum_log)
    sentence += "; a log counts as at least " + diameter_words(price.minimum_log->diameter, mill) + " by " +
                length_words(price.minimum_log->length, mill);
  if (price.minimum_job) sentence += "; at least " + money_words(*price.minimum_job, mill) + " for the job";
  return sentence + ".";
}

/// The prices of a job in sentences, then how their board feet are counted: once, when all count alike.
std::vector<std::string> price_sentences(const book::Mill& mill, const Terms& terms, const JobTerms& job,
                                         Day day) {
  std::vector<std::string> said;
  std::vector<std::pair<std::string, std::string>> counted;  // convention, title of the first price with it
  for (const Price* price : prices_of(terms, job, day)) {
    said.push_back(price_sentence(mill, *price));
    if (price->basis != Basis::bf && price->basis != Basis::mbf) continue;
    const std::string by = in_words(joined(job.convention, price->count));
    const bool known =
        std::any_of(counted.begin(), counted.end(), [&](const auto& one) { return one.first == by; });
    if (!known) counted.emplace_back(by, price_title(*price));
  }
  for (const auto& [by, title] : counted)
    said.push_back((counted.size() > 1 ? title + ". " : std::string()) + "Board feet: " + by + ".");
  const auto prices = prices_of(terms, job, day);
  const auto hourly = [](const Price* price) { return price->basis == Basis::hour; };
  if (std::any_of(prices.begin(), prices.end(), hourly))
    said.emplace_back(
        "Hours are the sawing times noted each day; a stop within them is not taken off, one between them "
        "not "
        "charged.");
  return said;
}

std::string charge_sentence(const book::Mill& mill, const ChargeTerm& charge) {
  const render::Column column = money_column("rate", "", mill);
  const auto sum = [&](const Rational& rate) {
    return render::shown_cell(rate_cell(rate, mill), column, paper_style(mill));
  };
  std::string sentence = charge.title + ": ";
  if (charge.per == Per::percent)
    return sentence + percent_words(charge.rate, mill) + " of the sum for sawing.";
  if (!charge.flat.is_zero())
    sentence += sum(charge.flat) + (charge.once     ? " for the job"
                                    : charge.strike ? " a strike"
                                                    : " each time");
  if (!charge.flat.is_zero() && !charge.rate.is_zero()) sentence += " and ";
  if (!charge.rate.is_zero()) sentence += sum(charge.rate) + " per " + std::string(word_of(charge.per));
  if (charge.round_trip) sentence += ", both ways";
  if (!charge.free.is_zero())
    sentence += ", the first " +
                (charge.per == Per::hour
                     ? write_duration(static_cast<int>((charge.free * Rational(kMinutesPerHour)).rounded(0)))
                     : number_words(shortest(charge.free, 0, 3), mill)) +
                " free";
  return sentence + ".";
}

std::vector<std::string> charge_sentences(const book::Mill& mill, const Terms& terms, const JobTerms& job,
                                          Day day, bool also_once) {
  std::vector<std::string> said;
  const Question asked{job.job, job.customer, "", "", std::nullopt, std::nullopt, day};
  for (const ChargeTerm& charge : terms.charges)
    if ((also_once || !charge.once) && find_charge(terms, charge.name, asked) == &charge)
      said.push_back(charge_sentence(mill, charge));
  return said;
}

Table sentences_table(const std::string& name, const std::string& heading,
                      const std::vector<std::string>& sentences) {
  Table table;
  table.name = name;
  table.columns = {text_column(name, heading)};
  for (const std::string& one : sentences) table.rows.push_back({{one}});
  return table;
}

Day agreed_day(const Terms& terms, const std::string& job, Day today) {
  const Agreement* agreement = find_agreement(terms, job);
  return agreement != nullptr && agreement->agreed ? *agreement->agreed : today;
}

Table cut_list_table(const book::Mill& mill, const book::JobEntry& entry, const measure::Convention& by) {
  const LumberUnit unit(mill);
  Table table;
  table.name = "cut_list";
  table.title = "Cut list";
  table.columns = {text_column("size", "Size"),
                   text_column("cut_to", "Cut to"),
                   text_column("grade", "Grade"),
                   text_column("length", "Length"),
                   summed(count_column("pieces", "Pieces")),
                   summed(unit.column())};
  for (const book::CutLine& line : entry.cut_list) {
    const std::optional<Size> target = target_for(mill, entry.code, line.size);
    table.rows.push_back({{size_words(line.size, mill), target ? size_words(*target, mill) : std::string(),
                           grade_words(mill, line.grade), length_words(line.length, mill), line.pieces,
                           unit.cell(unit.of({line.size, line.length, line.pieces}, by))}});
  }
  foot(table, mill);
  drop_empty(table, 2);
  drop_empty(table, 1);
  return table;
}

}  // namespace

Document agreement_document(const Deal& deal, Day today) {
  const book::Mill& mill = *deal.mill;
  const Terms& terms = *deal.terms;
  const JobTerms& job = deal.job;
  const Day day = agreed_day(terms, job.job, today);
  Document paper = letter(mill, "agreement", "Job agreement", today);
  add_party(paper, mill, job.customer, "Customer");
  add_head(paper, "Job", job_words(mill, job.job));
  add_head(paper, "Agreed", day, render::ColumnKind::day);
  std::vector<std::string> prices = price_sentences(mill, terms, job, day);
  const ShareTerm* share =
      find_share(terms, {job.job, job.customer, "", "", std::nullopt, std::nullopt, day});
  const book::JobEntry* entry = find_job(mill, job.job);
  if (share != nullptr && entry != nullptr && entry->owner == "shares")
    prices.push_back("The lumber is divided " + share_words(share->rule, share->percent) + ".");
  const std::vector<std::string> charges = charge_sentences(mill, terms, job, day, true);
  if (!prices.empty()) paper.tables.push_back(sentences_table("prices", "Prices", prices));
  if (!charges.empty()) paper.tables.push_back(sentences_table("charges", "Charges", charges));
  std::vector<std::string> more;
  if (scale_is_shown(mill, job))
    more.push_back("Logs are scaled by " + rule_words(job.practice.name, mill) + ".");
  const Agreement* agreement = find_agreement(terms, job.job);
  if (agreement != nullptr) {
    more.insert(more.end(), agreement->say.begin(), agreement->say.end());
    if (agreement->deposit) more.push_back("Deposit: " + money_words(*agreement->deposit, mill) + ".");
  }
  const auto sold_by_time = [](const std::vector<std::string>& said) {
    return std::any_of(said.begin(), said.end(), [](const std::string& one) {
      return one.find(" an hour") != std::string::npos || one.find(" per hour") != std::string::npos;
    });
  };
  if (sold_by_time(prices) || sold_by_time(charges)) more.emplace_back("Time is billed to the minute.");
  const int due = agreement != nullptr && agreement->due_days ? *agreement->due_days : terms.invoice.due_days;
  more.push_back(due == 0 ? "Pay on receipt of the invoice."
                          : "Pay within " + std::to_string(due) + (due == 1 ? " day" : " days") +
                                " of the date of the invoice.");
  if (agreement != nullptr && agreement->agreed)
    more.emplace_back("These prices hold for the whole job, also when the price list changes.");
  paper.tables.push_back(sentences_table("also", "Also agreed", more));
  if (entry != nullptr && !entry->cut_list.empty())
    paper.tables.push_back(cut_list_table(mill, *entry, job.convention));
  if (scale_is_shown(mill, job)) paper.foot.emplace_back(kScaleCaution);
  paper.foot.emplace_back("One copy each.");
  paper.signatures = {"Customer", signer(mill)};
  return paper;
}

Document quote_document(const book::Mill& mill, const Terms& terms, const std::string& job_code, Day today) {
  const JobTerms job = job_terms(mill, job_code);
  const book::JobEntry* entry = find_job(mill, job.job);
  JobFacts facts;
  const SheetRef sheet{today, 1, 1, ""};
  facts.sheets = std::make_shared<Sheets>(Sheets{{key_of(sheet), sheet}});
  if (entry != nullptr) {
    for (const book::CutLine& line : entry->cut_list) {
      Fact fact;
      fact.sheet = sheet;
      fact.size = line.size;
      fact.length = line.length;
      fact.grade = line.grade;
      fact.count = line.pieces;
      facts.facts.push_back(fact);
    }
  }
  Fact once;
  once.kind = FactKind::once;
  once.sheet = {Day{}, 0, 0, ""};
  facts.facts.push_back(once);
  const Draft draft = make_draft(terms, job, facts, {}, {}, today);
  InvoiceHead head;
  head.day = today;
  Document paper = invoice_document(mill, terms, draft, head);
  paper.name = "quote";
  paper.title = "Quote";
  paper.lead = {"For the cut list below, at today's prices. What is really cut is what is billed."};
  std::erase_if(paper.head, [](const render::HeadFact& fact) { return fact.label == "Work of"; });
  paper.parties.back().heading = "For";
  paper.tables.front().title = "Estimate";
  std::erase(paper.tables.front().notes, kTaxCaution);  // the mill reads it on its drafts
  drop_empty(paper.tables.front(), 0);
  std::vector<std::string> charges =
      charge_sentences(mill, terms, job, agreed_day(terms, job.job, today), false);
  if (!charges.empty())
    paper.tables.push_back(sentences_table("charges", "Charged when they come up", charges));
  if (entry != nullptr) paper.tables.push_back(cut_list_table(mill, *entry, job.convention));
  return paper;
}

}  // namespace kerfbook::billing
