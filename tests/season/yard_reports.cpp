// yard_reports.cpp -- what lies on the yard: logs on the deck, lumber in stock, and what cut lists still want; and the day.
#include <algorithm>
#include <tuple>

#include "measures.h"
#include "reckoning.h"

namespace reckoning {
namespace {

std::string stack_words(const Stand& at, const Section& section, const Fraction& feet, bool lineal) {
  return at.bundle + "\n" + at.species + "\n" + at.grade + "\n" + section.name + "\n" +
         (lineal ? "-" : feet.text());
}

}  // namespace

std::vector<Table> Reckoning::deck(const Period& period, const Date& today) const {
  struct Logs {
    std::int64_t received = 0, sawn = 0;
    std::optional<Fraction> received_bf, sawn_bf;
  };
  std::map<std::pair<std::string, std::string>, Logs> sums;
  struct Lying {
    const Log* log;
    Date since;
  };
  std::vector<Lying> lying;
  for (const auto& sheet : sheets_)
    for (const auto& log : sheet.logs) {
      const auto scale = scale_of(log, rule_of(log.at.job));
      std::erase_if(lying, [&](const Lying& one) { return !log.tag.empty() && one.log->tag == log.tag; });
      if (log.state != Log::State::sawn) lying.push_back({&log, sheet.day});
      if (log.state == Log::State::left || !period.has(sheet.day)) continue;
      Logs& made = sums[{log.at.job, log.at.species}];
      const bool sawn = log.state == Log::State::sawn;
      ++(sawn ? made.sawn : made.received);
      auto& bf = sawn ? made.sawn_bf : made.received_bf;
      if (scale) bf = bf.value_or(Fraction(0)) + scale->net;
    }
  Table moved;
  moved.name = "deck";
  moved.keys = {"job", "species"};
  moved.sums = {"received", "received_bf", "sawn", "sawn_bf"};
  const auto bf = [](const std::optional<Fraction>& sum) { return sum ? figure(*sum) : Cell(); };
  for (const auto& [key, made] : sums)
    moved.rows.push_back({{"job", text_or_dash(key.first)},
                          {"species", text_or_dash(key.second)},
                          {"received", figure(made.received)},
                          {"received_bf", bf(made.received_bf)},
                          {"sawn", figure(made.sawn)},
                          {"sawn_bf", bf(made.sawn_bf)}});
  Table here;
  here.name = "on-hand";
  here.keys = {"tag", "job"};
  here.sums = {"net_bf", "logs"};
  for (const auto& one : lying) {
    const auto scale = scale_of(*one.log, rule_of(one.log->at.job));
    here.rows.push_back({{"tag", text_or_dash(one.log->tag)},
                         {"job", text_or_dash(one.log->at.job)},
                         {"species", text_or_dash(one.log->at.species)},
                         {"net_bf", scale ? figure(scale->net) : Cell()},
                         {"since", text_of(one.since)},
                         {"age_days", figure(number_of(today) - number_of(one.since))},
                         {"origin", text_or_dash(one.log->origin)},
                         {"logs", figure(1)}});
  }
  return {moved, here};
}

std::vector<Table> Reckoning::stock(const Period& period) const {
  struct Stack {
    Stand at;
    Section section;
    Fraction feet, lumber, along;  ///< along: of what is counted by its length, in feet
    bool lineal = false;
    std::int64_t before = 0, cut = 0, sold = 0, pieces = 0, moves = 0;
  };
  std::map<std::string, Stack> stacks;
  const auto stack_of = [&](const Stand& at, const Section& section, const Fraction& feet,
                            bool lineal) -> Stack& {
    Stack& stack = stacks[stack_words(at, section, feet, lineal)];
    stack.at = at;
    stack.section = section;
    stack.feet = feet;
    stack.lineal = lineal;
    return stack;
  };
  struct Pile {
    std::int64_t cut = 0;
    Fraction lumber;
    bool moved = false;
  };
  std::map<std::pair<std::string, std::string>, Pile> customers;
  std::set<std::string> moved_jobs;
  for (const auto& sheet : sheets_) {
    if (period.to < sheet.day) continue;
    const bool before = sheet.day < period.from;
    for (const auto& boards : sheet.boards) {
      const std::string owner = mill_.owner_of(boards.at.job);
      if (owner != "own" && !owner.empty()) {
        Pile& pile = customers[{boards.at.job, boards.at.bundle}];
        pile.cut += boards.pieces;
        pile.lumber += lumber_of(boards);
        if (!before) moved_jobs.insert(boards.at.job);
      }
      if (owner != "own") continue;
      const Fraction feet = boards.lineal ? Fraction(0) : in_feet(boards.length, boards.section.metric);
      Stack& stack = stack_of(boards.at, boards.section, feet, boards.lineal);
      (before ? stack.before : stack.cut) += boards.pieces;
      stack.pieces += boards.pieces;
      stack.lumber += lumber_of(boards);
      if (boards.lineal) stack.along += feet_of(boards);
      if (!before) ++stack.moves;
    }
    for (const auto& sold : sheet.sold) {
      Boards as_boards;
      as_boards.section = sold.section;
      as_boards.length = sold.length;
      as_boards.pieces = sold.pieces;
      as_boards.lineal = sold.lineal;
      const Fraction feet = sold.lineal ? Fraction(0) : in_feet(sold.length, sold.section.metric);
      Stack& stack = stack_of(sold.at, sold.section, feet, sold.lineal);
      (before ? stack.before : stack.sold) += before ? -sold.pieces : sold.pieces;
      stack.pieces -= sold.pieces;
      stack.lumber = stack.lumber - lumber_of(as_boards);
      if (sold.lineal) stack.along = stack.along - feet_of(as_boards);
      if (!before) ++stack.moves;
    }
  }
  Table own;
  own.name = "own";
  own.keys = {"bundle", "species", "grade", "size", "length_ft"};
  own.sums = {"before", "cut", "sold", "pieces", "bf"};
  struct Grade {
    std::int64_t pieces = 0;
    Fraction bf;
  };
  std::map<std::pair<std::string, std::string>, Grade> by_grade;
  Fraction all;
  for (const auto& [words, stack] : stacks) {
    Grade& grade = by_grade[{stack.at.species, stack.at.grade}];
    grade.pieces += stack.pieces;
    grade.bf += stack.lumber;
    all += stack.lumber;
    if (stack.lumber.is_zero() && stack.moves == 0) continue;
    own.rows.push_back({{"bundle", text_or_dash(stack.at.bundle)},
                        {"species", text_or_dash(stack.at.species)},
                        {"grade", text_or_dash(stack.at.grade)},
                        {"size", stack.section.name},
                        {"length_ft", stack.lineal ? Cell() : figure(stack.feet)},
                        {"before", idle_or(stack.before)},
                        {"cut", idle_or(stack.cut)},
                        {"sold", idle_or(stack.sold)},
                        {"pieces", idle_or(stack.pieces)},
                        {"lineal_ft", stack.lineal ? idle_or(stack.along) : Cell()},
                        {"bf", idle_or(stack.lumber)}});
  }
  Table grades;
  grades.name = "grades";
  grades.keys = {"species", "grade"};
  grades.sums = {"pieces", "bf"};
  grades.ratios = {{"share_percent", {"bf", "all_bf", 100, 0, true}}};
  for (const auto& [key, grade] : by_grade)
    if (!grade.bf.is_zero())
      grades.rows.push_back({{"species", text_or_dash(key.first)},
                             {"grade", text_or_dash(key.second)},
                             {"pieces", idle_or(grade.pieces)},
                             {"bf", figure(grade.bf)},
                             {"all_bf", figure(all)}});
  Table piles;
  piles.name = "customers";
  piles.keys = {"job", "bundle"};
  piles.sums = {"cut", "pieces", "bf"};
  for (const auto& [key, pile] : customers) {
    if (pile.lumber.is_zero() && (moved_jobs.count(key.first) == 0 || pile.cut == 0)) continue;
    piles.rows.push_back({{"job", key.first},
                          {"bundle", text_or_dash(key.second)},
                          {"cut", figure(pile.cut)},
                          {"pieces", figure(pile.cut)},
                          {"bf", figure(pile.lumber)}});
  }
  return {own, grades, piles};
}

std::vector<Table> Reckoning::cut_list(const Period& period) const {
  Table wanted;
  wanted.name = "cut-list";
  wanted.keys = {"job", "size", "length_ft", "grade", "wanted"};
  wanted.sums = {"wanted", "cut", "short", "over"};
  Table beside;
  beside.name = "beside";
  beside.keys = {"job", "size", "length_ft", "grade", "pieces"};
  beside.sums = {"pieces", "bf"};
  for (const auto& [code, job] : mill_.jobs) {
    if (job.cut_list.empty()) continue;
    struct Pieces {
      Section section;
      Fraction length;
      std::string grade;
      bool lineal = false;
      std::int64_t pieces = 0, left = 0;
      Fraction bf;
    };
    std::map<std::string, Pieces> cuts;
    for (const Sheet* sheet : in(period))
      for (const auto& boards : sheet->boards) {
        if (boards.at.job != code) continue;
        const std::string length = boards.lineal ? "-" : boards.length.text();
        Pieces& cut = cuts[boards.section.name + "\n" + boards.at.grade + "\n" + length];
        cut.section = boards.section;
        cut.length = boards.length;
        cut.grade = boards.at.grade;
        cut.lineal = boards.lineal;
        cut.pieces += boards.pieces;
        cut.bf += lumber_of(boards);
        cut.left = cut.pieces;
      }
    // each board once: lines with a grade take theirs first, then the others in their order; what is over stays with
    // the last line it fits
    std::vector<const CutListLine*> lines;
    for (const auto& line : job.cut_list) lines.push_back(&line);
    std::stable_sort(lines.begin(), lines.end(), [](const CutListLine* a, const CutListLine* b) {
      return !a->grade.empty() && b->grade.empty();
    });
    std::map<const CutListLine*, std::int64_t> got;
    std::map<const Pieces*, const CutListLine*> last;
    for (const CutListLine* line : lines)
      for (auto& [words, cut] : cuts) {
        const bool fits = !cut.lineal && cut.section.name == line->section.name &&
                          cut.length == line->length && (line->grade.empty() || line->grade == cut.grade);
        if (!fits) continue;
        const std::int64_t some =
            std::clamp<std::int64_t>(line->pieces - got[line], 0, std::max<std::int64_t>(cut.left, 0));
        got[line] += some;
        cut.left -= some;
        last[&cut] = line;
      }
    for (const auto& [cut, line] : last) got[line] += cut->left;
    for (const auto& line : job.cut_list) {
      const std::int64_t cut = got[&line];
      wanted.rows.push_back({{"job", code},
                             {"size", line.section.name},
                             {"length_ft", figure(in_feet(line.length, line.section.metric))},
                             {"grade", text_or_dash(line.grade)},
                             {"wanted", figure(line.pieces)},
                             {"cut", figure(cut)},
                             {"short", figure(std::max<std::int64_t>(line.pieces - cut, 0))},
                             {"over", figure(std::max<std::int64_t>(cut - line.pieces, 0))}});
    }
    for (const auto& [words, cut] : cuts)
      if (last.count(&cut) == 0)
        beside.rows.push_back(
            {{"job", code},
             {"size", cut.section.name},
             {"length_ft", cut.lineal ? Cell() : figure(in_feet(cut.length, cut.section.metric))},
             {"grade", text_or_dash(cut.grade)},
             {"pieces", cut.lineal ? Cell() : figure(cut.pieces)},
             {"bf", figure(cut.bf)}});
  }
  return {wanted, beside};
}

std::vector<Table> Reckoning::day(const Date& date) const {
  const Period only{date, date};
  Table numbers = production(By::day, only);
  numbers.name = "numbers";
  numbers.keys = {};
  numbers.sums.clear();
  numbers.with_totals = false;
  for (auto& row : numbers.rows) {
    row.erase("day");
    row.erase("site");
  }
  Table runs = overrun(Cut::run, only);
  runs.name = "runs";
  runs.keys = {"job", "species", "setup", "site", "lumber_bf"};
  runs.sums = {"logs", "net_scale_bf", "lumber_bf", "pieces"};
  Table stops = downtime(only)[0];
  stops.name = "stops";
  stops.ratios.clear();
  return {numbers, runs, stops};
}

}  // namespace reckoning
