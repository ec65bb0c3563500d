#include "shares.h"

#include <algorithm>

#include "measures.h"

namespace reckoning {
namespace {

Fraction bf_each(const Boards& boards) {
  Boards one = boards;
  one.sense = Sense::sawn;
  one.pieces = 1;
  return lumber_of(one);
}

bool same_kind(const Boards& a, const Boards& b) {
  return a.at.species == b.at.species && a.at.grade == b.at.grade && a.section.thick == b.section.thick &&
         a.section.wide == b.section.wide && a.length == b.length;
}

}  // namespace

std::vector<Divided> divided_on_halves(const std::string& job, const std::vector<Sheet>& sheets) {
  std::vector<Divided> lines;
  for (const auto& sheet : sheets)
    for (const auto& boards : sheet.boards) {
      if (boards.at.job != job) continue;
      const auto at = std::find_if(lines.begin(), lines.end(),
                                   [&](const Divided& line) { return same_kind(line.boards, boards); });
      if (at == lines.end())
        lines.push_back({boards, 0, 0});
      else
        at->boards.pieces += boards.pieces;
    }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const Divided& a, const Divided& b) { return bf_each(b.boards) < bf_each(a.boards); });
  Fraction customer, mill;
  for (auto& line : lines) {
    line.to_customer = line.to_mill = line.boards.pieces / 2;
    customer += bf_each(line.boards) * line.to_customer;
    mill += bf_each(line.boards) * line.to_mill;
  }
  for (auto& line : lines) {
    if (line.boards.pieces % 2 == 0) continue;
    const bool customers = !(mill < customer);
    ++(customers ? line.to_customer : line.to_mill);
    (customers ? customer : mill) += bf_each(line.boards);
  }
  return lines;
}

std::vector<Table> stock_after(const Reckoning& reckoned, const Period& period, const std::string& job,
                               const std::vector<Divided>& division, bool fetched) {
  std::vector<Table> tables = reckoned.stock(period);
  Table& own = tables.at(0);
  Table& customers = tables.at(2);
  own.sums.emplace_back("shares");
  std::int64_t mills = 0;
  Fraction mills_bf;
  for (const auto& line : division) {
    if (line.to_mill == 0) continue;
    const Fraction bf = bf_each(line.boards) * line.to_mill;
    mills += line.to_mill;
    mills_bf += bf;
    Row row{{"bundle", Cell()},
            {"species", text_or_dash(line.boards.at.species)},
            {"grade", text_or_dash(line.boards.at.grade)},
            {"size", line.boards.section.name},
            {"length_ft", figure(in_feet(line.boards.length, line.boards.section.metric))}};
    const auto known = std::find_if(own.rows.begin(), own.rows.end(), [&](const Row& one) {
      return std::all_of(row.begin(), row.end(),
                         [&](const auto& cell) { return one.at(cell.first) == cell.second; });
    });
    Row& stack = known == own.rows.end() ? own.rows.emplace_back(row) : *known;
    stack["shares"] = figure(line.to_mill);
    add_to(stack["pieces"], line.to_mill);
    add_to(stack["bf"], bf);
  }
  customers.sums.insert(customers.sums.end(), {"to_mill", "delivered"});
  for (auto& row : customers.rows) {
    if (row.at("job") != Cell(job)) continue;
    const std::int64_t cut = std::get<Fraction>(row.at("cut")).whole();
    row["to_mill"] = figure(mills);
    row["delivered"] = fetched ? figure(cut - mills) : Cell(Idle());
    row["pieces"] = fetched ? Cell(Idle()) : figure(cut - mills);
    row["bf"] = fetched ? Cell(Idle()) : figure(std::get<Fraction>(row.at("bf")) - mills_bf);
  }
  return {own, customers};
}

}  // namespace reckoning
