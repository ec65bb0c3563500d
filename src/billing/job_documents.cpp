// job_documents.cpp -- papers about a job itself: settlement of shares, load slip, agreement, quote, blank tally sheet.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/settle.h"
#include "base/text.h"
#include "billing/documents.h"
#include "billing/job_facts.h"
#include "billing/letter.h"
#include "billing/price.h"
#include "billing/tally_tables.h"
#include "render/renderer.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Document;
using render::Table;

std::string mill_signs(const book::Mill& mill) {
  return mill.owner.empty() ? mill.name : mill.owner;
}

std::string length_words(const Length& length) {
  return measure::spoken_length(length);
}

/// The terms of a job in sentences: each price that can hold for it, its counting, its charges.
std::vector<std::string> price_sentences(const book::Mill& mill, const Terms& terms, const JobTerms& job,
                                         Day day) {
  std::vector<std::string> said;
  for (const Price& price : terms.prices) {
    const Conditions& when = price.when;
    const auto names = [](const std::vector<std::string>& words, const std::string& word) {
      return words.empty() ||
             std::any_of(words.begin(), words.end(), [&](const auto& one) { return same_word(one, word); });
    };
    if (price.sells || !names(when.job, job.job) || !names(when.customer, job.customer)) continue;
    if ((when.from && day < *when.from) || (when.until && *when.until < day)) continue;
    std::string sentence = price_title(price) + ": ";
    if (price.basis == Basis::shares) {
      sentence += "paid in lumber";
    } else {
      render::Column column = money_column("rate", "", mill);
      sentence += render::shown_cell(rate_cell(price.rate, mill), column, paper_style(mill)) + " " +
                  std::string(unit_after_rate(price.basis));
    }
    if (price.basis == Basis::bf || price.basis == Basis::mbf)
      sentence += "; " + in_words(joined(job.convention, price.count));
    if (price.minimum_log)
      sentence += "; a log counts as at least " + measure::write_inches(price.minimum_log->diameter) +
                  " by " + length_words(price.minimum_log->length);
    if (price.minimum_job) sentence += "; at least " + money_words(*price.minimum_job, mill) + " for the job";
    said.push_back(sentence + ".");
  }
  return said;
}

std::string charge_sentence(const book::Mill& mill, const ChargeTerm& charge) {
  const render::Column column = money_column("rate", "", mill);
  const auto sum = [&](const Rational& rate) {
    return render::shown_cell(rate_cell(rate, mill), column, paper_style(mill));
  };
  std::string sentence = charge.title + ": ";
  if (charge.per == Per::percent)
    return sentence + plain(shortest(charge.rate, 0, 4)) + " % of the sum for sawing.";
  if (!charge.flat.is_zero())
    sentence += sum(charge.flat) + (charge.once     ? " for the job"
                                    : charge.strike ? " a strike"
                                                    : " each time");
  if (!charge.flat.is_zero() && !charge.rate.is_zero()) sentence += " and ";
  if (!charge.rate.is_zero()) sentence += sum(charge.rate) + " per " + std::string(word_of(charge.per));
  if (charge.round_trip) sentence += ", both ways";
  if (!charge.free.is_zero()) sentence += ", the first " + plain(shortest(charge.free, 0, 3)) + " free";
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
  table.when_empty = "nothing said";
  return table;
}

Day agreed_day(const Terms& terms, const std::string& job, Day today) {
  const Agreement* agreement = find_agreement(terms, job);
  return agreement != nullptr && agreement->agreed ? *agreement->agreed : today;
}

/// A column of text in which nothing stands says nothing.
void drop_empty(Table& table, std::size_t column) {
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

Table cut_list_table(const book::Mill& mill, const book::JobEntry& entry, const measure::Convention& by) {
  Table table;
  table.name = "cut_list";
  table.title = "Cut list";
  table.columns = {text_column("size", "Size"),
                   text_column("cut_to", "Cut to"),
                   text_column("grade", "Grade"),
                   text_column("length", "Length"),
                   summed(count_column("pieces", "Pieces")),
                   summed(decimal_column("bf", "Board feet", "bf", 2))};
  std::vector<Rational> exact;
  std::int64_t pieces = 0;
  for (const book::CutLine& line : entry.cut_list) {
    const std::optional<Size> target = target_for(mill, entry.code, line.size);
    exact.push_back(counted_bf({line.size, line.length, line.pieces}, by));
    pieces += line.pieces;
    table.rows.push_back({{write_size(line.size), target ? write_size(*target) : std::string(), line.grade,
                           length_words(line.length), line.pieces, Decimal{}}});
  }
  const std::int64_t total = rounded_total(exact, 2);
  const std::vector<std::int64_t> settled = settle(exact, 2, total);
  for (std::size_t i = 0; i < settled.size(); ++i) table.rows[i].cells[5] = Decimal{settled[i], 2};
  if (!table.rows.empty()) table.totals = {std::string("Total"), {}, {}, {}, pieces, Decimal{total, 2}};
  drop_empty(table, 2);
  drop_empty(table, 1);
  return table;
}

}  // namespace

Document settlement_document(const book::Mill& mill, const Paper& settlement, const ShareTerm& rule) {
  Document paper =
      letter(mill, "settlement", "Share settlement " + std::to_string(settlement.number), settlement.day);
  add_party(paper, mill, settlement.customer, "Owner of the logs");
  add_head(paper, "Date", settlement.day, render::ColumnKind::day);
  add_head(paper, "Job", job_words(mill, settlement.job));
  if (settlement.from && settlement.to)
    add_head(paper, "Work of", period_words(*settlement.from, *settlement.to, mill));
  const Split& split = *settlement.split;
  const std::string rule_words = share_words(rule.rule, rule.percent);
  paper.lead.push_back("The lumber is divided " + rule_words + ".");
  Table table;
  table.name = "shares";
  table.columns = {text_column("species", "Species"),
                   text_column("size", "Size"),
                   text_column("grade", "Grade"),
                   text_column("length", "Length"),
                   summed(count_column("pieces", "Pieces")),
                   summed(count_column("customer", "Customer", "pc")),
                   summed(count_column("mill", "Mill", "pc"))};
  for (const ShareLine& line : split.lines)
    table.rows.push_back({{line.species, write_size(line.size), line.grade, length_words(line.length),
                           line.pieces, line.to_customer, line.to_mill}});
  const std::int64_t all = split.customer_pieces + split.mill_pieces;
  table.totals = {std::string("Total"), {}, {}, {}, all, split.customer_pieces, split.mill_pieces};
  drop_empty(table, 2);
  paper.tables.push_back(std::move(table));

  Table sides;
  sides.name = "sides";
  sides.title = "Each side";
  sides.columns = {text_column("side", ""), summed(count_column("pieces", "Pieces")),
                   summed(decimal_column("bf", "Board feet", "bf", 2))};
  const std::vector<Rational> exact{split.customer_bf, split.mill_bf};
  const std::int64_t total = rounded_total(exact, 2);
  const std::vector<std::int64_t> settled = settle(exact, 2, total);
  sides.rows.push_back({{std::string("Customer"), split.customer_pieces, Decimal{settled[0], 2}}});
  sides.rows.push_back({{std::string("Mill"), split.mill_pieces, Decimal{settled[1], 2}}});
  sides.totals = {std::string("Total"), all, Decimal{total, 2}};
  if (!split.carried_in.is_zero())
    sides.notes.push_back("Brought forward: " + plain(shown(split.carried_in, 2)) +
                          " bf owed to the customer (less than nothing: to the mill).");
  const bool to_mill = split.carried.is_negative();
  sides.notes.push_back(
      split.carried.is_zero()
          ? "Nothing is carried forward."
          : "Carried to the next settlement: " + plain(shown(to_mill ? -split.carried : split.carried, 2)) +
                " bf owed to the " + (to_mill ? "mill." : "customer."));
  paper.tables.push_back(std::move(sides));
  paper.foot.emplace_back("The mill's part goes to its own stock.");
  paper.signatures = {"Owner of the logs", mill_signs(mill)};
  return paper;
}

Document load_document(const book::Book& book, const LoadAsk& ask, const JobFacts& facts, std::int64_t number,
                       Day day) {
  const book::Mill& mill = book.mill();
  const JobTerms job = job_terms(mill, ask.job);
  Document paper = letter(mill, "load-slip", "Load slip " + std::to_string(number), day);
  add_party(paper, mill, job.customer, "Deliver to");
  if (!ask.consignee.empty()) paper.parties.back().lines.push_back(ask.consignee);
  add_head(paper, "Date", day, render::ColumnKind::day);
  add_head(paper, "Job", job_words(mill, job.job));
  if (!ask.vehicle.empty()) add_head(paper, "Vehicle", ask.vehicle);
  if (!ask.driver.empty()) add_head(paper, "Driver", ask.driver);
  const auto wanted = [&](const Fact& fact) {
    return ask.bundles.empty() ||
           std::any_of(ask.bundles.begin(), ask.bundles.end(),
                       [&](const std::string& one) { return same_word(one, fact.bundle); });
  };
  using Key = std::tuple<std::string, std::string, std::string, Size, Length>;
  std::map<Key, std::int64_t> pieces;
  for (const Fact& fact : facts.facts)
    if (fact.kind == FactKind::pieces && wanted(fact))
      pieces[{fact.bundle, fact.species, fact.grade, fact.size, fact.length}] += fact.count;
  Table table;
  table.name = "load";
  table.columns = {text_column("bundle", "Bundle"),
                   text_column("species", "Species"),
                   text_column("grade", "Grade"),
                   text_column("size", "Size"),
                   text_column("length", "Length"),
                   summed(count_column("pieces", "Pieces")),
                   summed(decimal_column("bf", "Board feet", "bf", 2))};
  std::vector<Rational> exact;
  std::int64_t all = 0;
  for (const auto& [key, count] : pieces) {
    const auto& [bundle, species, grade, size, length] = key;
    if (count == 0) continue;
    exact.push_back(counted_bf({size, length, count}, job.convention));
    all += count;
    table.rows.push_back({{bundle, species_words(mill, species), grade, write_size(size),
                           length_words(length), count, Decimal{}}});
  }
  const std::int64_t total = rounded_total(exact, 2);
  const std::vector<std::int64_t> settled = settle(exact, 2, total);
  for (std::size_t i = 0; i < settled.size(); ++i) table.rows[i].cells[6] = Decimal{settled[i], 2};
  if (!table.rows.empty()) table.totals = {std::string("Total"), {}, {}, {}, {}, all, Decimal{total, 2}};
  drop_empty(table, 2);
  table.when_empty = "no such bundle of this job";
  table.notes.emplace_back(
      "Counted piece by piece as sawn, green. Shortages are to be noted here before signing:");
  paper.tables.push_back(std::move(table));
  paper.signatures = {"Loaded by", "Received by"};
  return paper;
}

Document agreement_document(const book::Mill& mill, const Terms& terms, const std::string& job_code,
                            Day today) {
  const JobTerms job = job_terms(mill, job_code);
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
  paper.tables.push_back(sentences_table("prices", "Prices", prices));
  paper.tables.push_back(
      sentences_table("charges", "Charges", charge_sentences(mill, terms, job, day, true)));
  std::vector<std::string> more{"Logs are scaled by " + job.practice.name + "."};
  const Agreement* agreement = find_agreement(terms, job.job);
  if (agreement != nullptr) {
    more.insert(more.end(), agreement->say.begin(), agreement->say.end());
    if (agreement->deposit) more.push_back("Deposit: " + money_words(*agreement->deposit, mill) + ".");
  }
  const int due = agreement != nullptr && agreement->due_days ? *agreement->due_days : terms.invoice.due_days;
  more.push_back(due == 0 ? "Invoices are due on receipt."
                          : "Invoices are due " + std::to_string(due) + " days after their day.");
  more.emplace_back("These prices hold for the whole job, also when the price list changes.");
  paper.tables.push_back(sentences_table("also", "Also agreed", more));
  if (entry != nullptr && !entry->cut_list.empty())
    paper.tables.push_back(cut_list_table(mill, *entry, job.convention));
  paper.foot.emplace_back(kScaleCaution);
  paper.foot.emplace_back("One copy each.");
  paper.signatures = {"Customer", mill_signs(mill)};
  return paper;
}

Document quote_document(const book::Mill& mill, const Terms& terms, const std::string& job_code, Day today) {
  const JobTerms job = job_terms(mill, job_code);
  const book::JobEntry* entry = find_job(mill, job.job);
  JobFacts facts;
  const SheetRef sheet{today, 1, 1, ""};
  facts.sheets.push_back(sheet);
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
  drop_empty(paper.tables.front(), 0);
  std::vector<std::string> charges =
      charge_sentences(mill, terms, job, agreed_day(terms, job.job, today), false);
  if (!charges.empty())
    paper.tables.push_back(sentences_table("charges", "Charged when they come up", charges));
  if (entry != nullptr) paper.tables.push_back(cut_list_table(mill, *entry, job.convention));
  return paper;
}

namespace {

/// Rows and columns of a sheet to fill in: of the cut list; without one, of the mill's sizes and the usual lengths.
void sheet_rows(const book::Mill& mill, const book::JobEntry* entry, std::set<Size>& sizes,
                std::set<Length>& lengths) {
  if (entry != nullptr) {
    for (const book::CutLine& line : entry->cut_list) {
      sizes.insert(line.size);
      lengths.insert(line.length);
    }
  }
  if (sizes.empty())
    for (const book::NamedSize& size : mill.sizes) sizes.insert(size.nominal);
  if (!lengths.empty()) return;
  const bool metric = mill.units == measure::System::metric;
  // even feet from 8 to 16, or 0.6 m steps from 2.4 to 4.8 m: common practice, no source
  for (std::int64_t feet = 8; feet <= 16; feet += 2)
    lengths.insert(metric ? measure::centimetres(feet * 30) : measure::feet(feet));
}

}  // namespace

Document blank_sheet_document(const book::Mill& mill, const std::string& job_code, Day today) {
  const book::JobEntry* entry = find_job(mill, job_code);
  Document paper = letter(mill, "tally-sheet", "Tally sheet", today);
  add_head(paper, "Day", std::string());
  add_head(paper, "Job", entry == nullptr ? job_code : job_words(mill, job_code));
  add_head(paper, "Site", entry == nullptr ? std::string() : entry->site);
  add_head(paper, "Species", std::string());
  std::set<Size> sizes;
  std::set<Length> lengths;
  sheet_rows(mill, entry, sizes, lengths);
  Table tally;
  tally.name = "tally";
  tally.title = "Pieces";
  tally.ruled = true;
  tally.columns.push_back(text_column("size", "Size"));
  for (const Length& length : lengths)
    tally.columns.push_back(text_column(measure::write_feet(length), length_words(length)));
  tally.columns.push_back(text_column("sum", "Pieces"));
  const auto row = [&](const std::string& first) {
    std::vector<Cell> cells(tally.columns.size(), Cell(std::string()));
    cells.front() = first;
    tally.rows.push_back({std::move(cells)});
  };
  for (const Size& size : sizes) row(write_size(size));
  for (int spare = 0; spare < 3; ++spare) row("");
  row("Pieces");
  paper.tables.push_back(std::move(tally));

  const auto blank = [&](const std::string& name, const std::string& title,
                         const std::vector<std::string>& headings, int rows) {
    Table table;
    table.name = name;
    table.title = title;
    table.ruled = true;
    for (const std::string& heading : headings) table.columns.push_back(text_column(lower(heading), heading));
    table.rows.assign(static_cast<std::size_t>(rows),
                      {std::vector<Cell>(headings.size(), Cell(std::string()))});
    paper.tables.push_back(std::move(table));
  };
  blank("logs", "Logs", {"No", "Small end", "Length", "Defect", "No ", "Small end ", "Length ", "Defect "},
        7);
  blank("times", "Start and stop, teeth, charges", {"From", "To", "What and why", "Charge"}, 5);
  paper.signatures = {"Tallied by", "Customer"};
  return paper;
}

}  // namespace kerfbook::billing
