#include "book/under.h"

#include <algorithm>

#include "base/text.h"
#include "book/tally_item.h"

namespace kerfbook::book {
namespace {

void add(Under& to, const sheet::DatedFact& fact, measure::System book) {
  const sheet::Fact& line = fact.line->fact;
  if (const auto* sawing = std::get_if<sheet::Sawing>(&line)) {
    for (const Span& span : sawing->spans) to.sawing_minutes += span.minutes();
  } else if (const auto item = tally_item(fact)) {
    to.pieces += item->sign() * item->pieces;
    to.lumber.count += lumber_of(*item, book).count;
  } else if (std::holds_alternative<sheet::LogLine>(line)) {
    if (sheet::could_be_charged(line)) ++to.logs;
  } else if (std::holds_alternative<sheet::Move>(line)) {
    ++to.moves;
  } else if (std::holds_alternative<sheet::Stop>(line) && !sheet::could_be_charged(line)) {
    ++to.stops;
  } else if (sheet::could_be_charged(line)) {
    ++to.charges;
  }
}

bool is_somebodys(const sheet::Fact& fact) {
  return sheet::is_work(fact) || sheet::could_be_charged(fact) || std::holds_alternative<sheet::Stop>(fact) ||
         std::holds_alternative<sheet::Teeth>(fact);
}

}  // namespace

std::vector<Under> put_under(const sheet::Sheet& sheet, measure::System book) {
  std::vector<Under> all;
  for (const sheet::DatedFact& fact : sheet::facts(sheet)) {
    if (!is_somebodys(fact.line->fact)) continue;
    auto at = std::find_if(all.begin(), all.end(), [&](const Under& one) {
      return same_word(one.job, fact.context.job) && same_word(one.site, fact.context.site);
    });
    if (at == all.end()) {
      Under made;
      made.job = fact.context.job;
      made.site = fact.context.site;
      made.lumber.system = book;
      at = all.insert(all.end(), std::move(made));
    }
    add(*at, fact, book);
    const int line = fact.line->place.line;
    if (at->lines.empty() || at->lines.back() != line) at->lines.push_back(line);
  }
  return all;
}

std::string line_ranges(const std::vector<int>& lines) {
  std::string out;
  for (std::size_t i = 0; i < lines.size();) {
    std::size_t last = i;
    while (last + 1 < lines.size() && lines[last + 1] == lines[last] + 1) ++last;
    out += (out.empty() ? "" : ", ") + std::to_string(lines[i]);
    if (last > i) out += "-" + std::to_string(lines[last]);
    i = last + 1;
  }
  return out;
}

}  // namespace kerfbook::book
