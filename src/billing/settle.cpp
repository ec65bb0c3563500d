// settle.cpp -- lumber sawn on shares is divided between the owner of the logs and the mill.
#include <map>
#include <tuple>

#include "base/error.h"
#include "base/text.h"
#include "billing/office.h"
#include "billing/office_work.h"
#include "billing/price.h"

namespace kerfbook::billing {

namespace {

/// All boards of one species, grade, size and length are one line, and so are all feet of one size.
std::vector<ShareLine> lines_of(const std::vector<Item>& items) {
  std::map<std::tuple<std::string, std::string, Size, Length>, ShareLine> lines;
  for (const Item& item : items) {
    const Fact& fact = *item.fact;
    ShareLine& line = lines[{fact.species, fact.grade, fact.size, fact.length}];
    line.species = fact.species;
    line.grade = fact.grade;
    line.size = fact.size;
    line.length = fact.length;
    line.pieces += item.count;
    if (item.count != 0) line.bf_each = item.quantity / Rational(item.count);
  }
  std::vector<ShareLine> all;
  for (const auto& [key, line] : lines)
    if (line.pieces != 0) all.push_back(line);
  return all;
}

/// What the last settlement of the job left owing.
Rational carried_into(const Work& work) {
  Rational carried;
  for (const Paper& before : work.about)
    if (before.kind == PaperKind::settlement && same_word(before.job, work.deal.job.job))
      carried = before.split->carried;
  return carried;
}

ShareTerm rule_of(const Deal& deal, Day today) {
  const Agreement* agreement = find_agreement(*deal.terms, deal.job.job);
  const Day day = agreement != nullptr && agreement->agreed ? *agreement->agreed : today;
  const ShareTerm* rule =
      find_share(*deal.terms, {deal.job.job, deal.job.customer, "", "", std::nullopt, std::nullopt, day});
  return rule == nullptr ? ShareTerm{} : *rule;
}

}  // namespace

Paper settle_shares(book::Book& book, const std::string& job, Day to, Day today) {
  const std::vector<Paper> papers = papers_of(book);
  const Work work = work_of_job(book, job, to);
  const Draft draft = draft_with(work, today, true);
  refuse_problems(draft);
  if (draft.items.empty())
    throw Refused("job " + work.deal.job.job + ": no lumber is left to divide up to " + write_day(to));
  Paper paper = begun(papers, PaperKind::settlement, today);
  take_over(draft, paper);
  paper.amount = {};
  const ShareTerm rule = rule_of(work.deal, today);
  paper.split = divide(lines_of(draft.items), rule.rule, rule.percent, carried_into(work));
  paper.document = settlement_document(*work.deal.mill, paper, rule);
  post(book, paper);
  return paper;
}

}  // namespace kerfbook::billing
