// divide.cpp -- lumber sawn on shares is divided between the owner of the logs and the mill.
#include <map>
#include <tuple>

#include "base/error.h"
#include "base/text.h"
#include "office/draft_work.h"
#include "office/office.h"
#include "price/price.h"

namespace kerfbook::billing {

namespace {

/// All boards of one species, grade, size and length are one line, and so are all feet of one size.
using Kind = std::tuple<std::string, std::string, Size, Length>;

template <class Lumber>
Kind kind_of(const Lumber& one) {
  return {one.species, one.grade, one.size, one.length};
}

std::vector<ShareLine> lines_of(const std::vector<Item>& items) {
  std::map<Kind, ShareLine> lines;
  for (const Item& item : items) {
    const Fact& fact = *item.fact;
    ShareLine& line = lines[kind_of(fact)];
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

/// Each line parted by the bundles its boards lie in. A tag is one bundle, whatever the case of its letters.
void part_by_bundles(const std::vector<Item>& items, Split& split) {
  std::map<Kind, InBundles> lying;
  std::map<std::string, std::string> tags;
  for (const Item& item : items) {
    const std::string& tag = tags.emplace(lower(item.fact->bundle), item.fact->bundle).first->second;
    lying[kind_of(*item.fact)][tag] += item.count;
  }
  std::vector<ShareLine> parts;
  for (const ShareLine& line : split.lines)
    for (ShareLine& part : by_bundles(line, lying.at(kind_of(line)))) parts.push_back(std::move(part));
  split.lines = std::move(parts);
}

/// What the last division of the job left owing.
Rational carried_into(const Work& work) {
  Rational carried;
  for (const Paper& before : work.about)
    if (before.kind == PaperKind::division && same_word(before.job, work.deal.job.job))
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

Paper divide_lumber(book::Book& book, const std::string& job, Day to, Day today) {
  book::Turn turn(book);
  const std::vector<Paper> papers = papers_of(book);
  const Work work = work_of_job(book, job, to);
  const Draft draft = draft_with(work, today, true);
  refuse_problems(draft);
  if (draft.items.empty())
    throw Refused("job " + work.deal.job.job + ": no lumber is left to divide up to " + write_day(to));
  Paper paper = begun(papers, PaperKind::division, today);
  take_over(draft, paper);
  paper.amount = {};
  paper.revision = work.deal.revision;
  const ShareTerm rule = rule_of(work.deal, today);
  paper.split = divide(lines_of(draft.items), rule.rule, rule.percent, carried_into(work));
  part_by_bundles(draft.items, *paper.split);
  paper.document = division_document(*work.deal.mill, paper, rule);
  post(book, paper);
  turn.commit();
  return paper;
}

}  // namespace kerfbook::billing
