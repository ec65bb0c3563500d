#include "billing/load.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/error.h"
#include "base/settle.h"
#include "base/text.h"
#include "billing/deal.h"
#include "billing/letter.h"
#include "billing/office.h"
#include "billing/office_work.h"
#include "billing/paper_words.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

/// Bundle, species and grade as they were first written; letters' case makes no difference.
using Key = std::tuple<std::string, std::string, std::string, Size, bool, Length>;

Key key_of(const LoadLine& line, bool lineal) {
  return {lower(line.bundle),
          lower(line.species),
          lower(line.grade),
          line.size,
          lineal,
          lineal ? Length{0, line.length.system} : line.length};
}

bool wanted(const std::vector<std::string>& bundles, const std::string& bundle) {
  return bundles.empty() || std::any_of(bundles.begin(), bundles.end(),
                                        [&](const std::string& one) { return same_word(one, bundle); });
}

struct Left {
  LoadLine line;
  std::int64_t count = 0;  // pieces, or counts of length
};

/// What load slips of the job took away so far.
std::vector<LoadLine> loaded(const book::Book& book, const std::string& job) {
  std::vector<LoadLine> lines;
  book::Store store(book.database());
  store.each(
      "SELECT bundle, species, grade, size, metric, length, pieces FROM v_load WHERE job = ? COLLATE NOCASE "
      "ORDER BY number, line",
      [&](const book::Row& row) {
        const bool metric = row.number(4) != 0;
        LoadLine line{row.text(0), row.text(1), row.text(2), {}, {}, row.number(6)};
        if (const auto size = measure::read_size(row.text(3), metric)) line.size = *size;
        line.length = {row.number(5), metric ? measure::System::metric : measure::System::inch};
        lines.push_back(std::move(line));
      },
      job);
  return lines;
}

}  // namespace

std::vector<LoadLine> left_to_load(const std::vector<Fact>& facts, const std::vector<std::string>& bundles,
                                   const std::vector<LoadLine>& gone) {
  std::map<Key, Left> left;
  for (const Fact& fact : facts) {
    const bool lineal = fact.kind == FactKind::lineal;
    if ((fact.kind != FactKind::pieces && !lineal) || !wanted(bundles, fact.bundle)) continue;
    const LoadLine line{fact.bundle, fact.species, fact.grade, fact.size, fact.length, 0};
    left.emplace(key_of(line, lineal), Left{line, 0}).first->second.count += fact.count;
  }
  for (const LoadLine& line : gone) {
    const auto found = left.find(key_of(line, line.lineal()));
    if (found != left.end()) found->second.count -= line.lineal() ? line.length.count : line.pieces;
  }
  std::vector<LoadLine> lines;
  for (auto& [key, one] : left) {
    if (one.count <= 0) continue;  // gone, or corrected after it had gone
    if (std::get<4>(key)) {
      one.line.length.count = one.count;
    } else {
      one.line.pieces = one.count;
    }
    lines.push_back(std::move(one.line));
  }
  return lines;
}

namespace {

render::Table load_table(const book::Mill& mill, const JobTerms& job, const std::vector<LoadLine>& lines) {
  const LumberUnit unit(mill);
  render::Table table;
  table.name = "load";
  table.columns = {text_column("bundle", "Bundle"),
                   text_column("species", "Species"),
                   text_column("grade", "Grade"),
                   text_column("size", "Size"),
                   text_column("length", "Length"),
                   summed(count_column("pieces", "Pieces")),
                   summed(unit.column())};
  std::vector<Rational> exact;
  std::int64_t all = 0;
  for (const LoadLine& line : lines) {
    exact.push_back(
        unit.of({line.size, line.length, std::max<std::int64_t>(line.pieces, 1)}, job.convention));
    all += line.pieces;
    const render::Cell pieces = line.lineal() ? render::Cell{} : render::Cell{line.pieces};
    table.rows.push_back(
        {{line.bundle, species_words(mill, line.species), grade_words(mill, line.grade),
          size_words(line.size, mill), length_words(line.length, mill) + (line.lineal() ? " in all" : ""),
          pieces, Decimal{}}});
  }
  const std::int64_t total = rounded_total(exact, unit.places());
  const std::vector<std::int64_t> settled = settle(exact, unit.places(), total);
  for (std::size_t i = 0; i < settled.size(); ++i)
    table.rows[i].cells[6] = Decimal{settled[i], unit.places()};
  table.totals = {std::monostate{}, {}, {}, {}, {}, all, Decimal{total, unit.places()}};
  drop_empty(table, 2);
  drop_empty(table, 0);
  table.notes.emplace_back("Counted piece by piece as sawn, green.");
  return table;
}

}  // namespace

render::Document load_document(const Deal& deal, const LoadAsk& ask, const std::vector<LoadLine>& lines,
                               std::int64_t number, Day day) {
  const book::Mill& mill = *deal.mill;
  render::Document paper = letter(mill, "load-slip", "Load slip " + std::to_string(number), day);
  add_party(paper, mill, deal.job.customer, "Deliver to");
  if (!ask.consignee.empty()) paper.parties.back().lines.push_back(ask.consignee);
  add_head(paper, "Date", day, render::ColumnKind::day);
  add_head(paper, "Job", job_words(mill, deal.job.job));
  if (!ask.vehicle.empty()) add_head(paper, "Vehicle", ask.vehicle);
  if (!ask.driver.empty()) add_head(paper, "Driver", ask.driver);
  paper.tables.push_back(load_table(mill, deal.job, lines));
  paper.tables.push_back(ruled_table("shortages", "Short or damaged, to be noted before signing",
                                     {"Size", "Length", "Pieces", "What is wrong"}, 3));
  paper.signatures = {"Loaded by", "Received by"};
  return paper;
}

Paper load(book::Book& book, const LoadAsk& ask, Day day) {
  const std::vector<Paper> papers = papers_of(book);
  LoadAsk known = ask;
  known.job = known_job(book, ask.job);
  const std::vector<LoadLine> gone = loaded(book, known.job);
  const JobFacts facts = job_facts(book, known.job, day);
  Paper paper = begun(papers, PaperKind::load, day);
  paper.job = known.job;
  const Deal deal = deal_of(book, known.job);
  paper.customer = deal.job.customer;
  paper.load = left_to_load(facts.facts, ask.bundles, gone);
  if (paper.load.empty()) {
    throw Refused("job " + known.job + ": nothing to load up to " + write_day(day) +
                  (left_to_load(facts.facts, ask.bundles, {}).empty()
                       ? "; there is no such bundle"
                       : "; it went with an earlier load slip"));
  }
  paper.document = load_document(deal, known, paper.load, paper.number, day);
  post(book, paper);
  return paper;
}

}  // namespace kerfbook::billing
