#include "paper/load_slip.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/error.h"
#include "base/text.h"
#include "book/store.h"
#include "office/agreed_terms.h"
#include "office/draft_work.h"
#include "office/office.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"

namespace kerfbook::billing {

namespace {

/// What boards are, whatever bundle they lie in. Letters' case makes no difference. Lineal feet have no length.
using Kind = std::tuple<std::string, std::string, Size, bool, Length>;

/// The boards of a kind in one bundle (by its tag in small letters), or counts of length.
struct Stack {
  LoadLine line;  ///< as first written
  std::int64_t sawn = 0;
  std::int64_t gone = 0;
  std::int64_t mills = 0;  ///< given to the mill by divisions
  [[nodiscard]] std::int64_t here() const { return sawn - gone - mills; }
};

struct Boards {
  std::map<std::string, Stack> stacks;
  std::int64_t undivided = 0;
  /// What the customer may take, out of whatever bundles: more than lies there went with loads when a correction came
  /// after them.
  [[nodiscard]] std::int64_t free() const {
    std::int64_t here = 0;
    for (const auto& [tag, stack] : stacks) here += stack.here();
    return std::max<std::int64_t>(0, here - std::max<std::int64_t>(0, undivided));
  }
};
using Lumber = std::map<Kind, Boards>;

template <class Line>
Kind kind_of(const Line& line, bool lineal) {
  const Length none{0, line.length.system};
  return {lower(line.species), lower(line.grade), line.size, lineal, lineal ? none : line.length};
}

template <class Line>
Stack& stack_of(Lumber& lumber, const Line& line, bool lineal) {
  Stack& stack = lumber[kind_of(line, lineal)].stacks[lower(line.bundle)];
  if (stack.line.size == Size{})
    stack.line = {line.bundle, line.species, line.grade, line.size, line.length, 0};
  return stack;
}

Lumber lumber_in(const Yard& yard) {
  Lumber lumber;
  for (const Fact& fact : yard.sawn) {
    const bool lineal = fact.kind == FactKind::lineal;
    if (lineal || fact.kind == FactKind::pieces) stack_of(lumber, fact, lineal).sawn += fact.count;
  }
  for (const LoadLine& line : yard.gone)
    stack_of(lumber, line, line.lineal()).gone += line.lineal() ? line.length.count : line.pieces;
  for (const ShareLine& line : yard.divided) stack_of(lumber, line, line.lineal()).mills += line.to_mill;
  for (const Item& item : yard.undivided)
    if (item.fact) lumber[kind_of(*item.fact, item.fact->length.count == 0)].undivided += item.count;
  return lumber;
}

bool wanted(const std::vector<std::string>& bundles, const std::string& tag) {
  return bundles.empty() || std::any_of(bundles.begin(), bundles.end(),
                                        [&](const std::string& one) { return same_word(one, tag); });
}

std::string counted(std::int64_t count, const LoadLine& line, bool lineal) {
  if (!lineal)
    return std::to_string(count) + " of " + write_size(line.size) + "x" + write_feet(line.length) +
           (line.species.empty() ? "" : " " + line.species) + (line.grade.empty() ? "" : " " + line.grade);
  const bool metric = line.size.thickness.system == measure::System::metric;
  const Length along{count, line.size.thickness.system};
  return plain(shortest(metric ? in_metres(along) : in_feet(along), 0, 2)) +
         (metric ? " lm of " : " lf of ") + write_size(line.size) +
         (line.species.empty() ? "" : " " + line.species);
}

/// Why nothing of a bundle that was asked for is on the slip; empty when something is.
std::string why_not_bundle(const Lumber& lumber, const std::string& tag) {
  Stack all;
  bool undivided = false;
  for (const auto& [kind, boards] : lumber) {
    const auto at = boards.stacks.find(lower(tag));
    if (at == boards.stacks.end()) continue;
    all.sawn += at->second.sawn;
    all.gone += at->second.gone;
    all.mills += at->second.mills;
    undivided = undivided || (at->second.here() > 0 && boards.undivided > 0);
  }
  if (all.sawn <= 0) return "there is no bundle " + tag;
  if (undivided) return "bundle " + tag + " is not divided yet";
  if (all.gone > 0) return "bundle " + tag + " went with an earlier load slip";
  return all.mills > 0 ? "bundle " + tag + " is the mill's" : "";
}

/// Boards of many kinds, to be told of together.
struct Many {
  std::int64_t pieces = 0;
  std::int64_t along = 0;
  measure::System system = measure::System::inch;
  void add(std::int64_t count, bool lineal, const LoadLine& line) {
    (lineal ? along : pieces) += count;
    system = line.size.thickness.system;
  }
  /// "5 pieces and 100 lf"; empty when there are none.
  [[nodiscard]] std::string words() const {
    const bool metric = system == measure::System::metric;
    const Length length{along, system};
    std::vector<std::string> all;
    if (pieces != 0) all.push_back(std::to_string(pieces) + (pieces == 1 ? " piece" : " pieces"));
    if (along != 0)
      all.push_back(plain(shortest(metric ? in_metres(length) : in_feet(length), 0, 2)) +
                    (metric ? " lm" : " lf"));
    return join(all, " and ");
  }
};

struct LeftOut {
  Many undivided;
  Many mills;
};

/// What divisions and corrections leave to be said of a kind of boards.
void say_left_out(const Boards& boards, bool lineal, const std::vector<std::string>& bundles, LeftOut& left,
                  Loadable& all) {
  const LoadLine& line = boards.stacks.begin()->second.line;
  std::int64_t mills = 0;
  std::int64_t here = 0;
  bool asked = false;
  for (const auto& [tag, stack] : boards.stacks) {
    asked = asked || wanted(bundles, tag);
    here += stack.here();
    if (wanted(bundles, tag)) mills += stack.mills;
  }
  if (!asked) return;
  if (boards.undivided > 0 && here > 0) left.undivided.add(std::min(here, boards.undivided), lineal, line);
  left.mills.add(mills, lineal, line);
  if (here < 0)
    all.left_out.push_back(counted(-here, line, lineal) +
                           ": went with a load slip, and a correction took them off the tally");
}

}  // namespace

Loadable left_to_load(const Yard& yard, const std::vector<std::string>& bundles) {
  const Lumber lumber = lumber_in(yard);
  Loadable all;
  LeftOut left;
  for (const auto& [kind, boards] : lumber) {
    if (boards.stacks.empty()) continue;
    const bool lineal = std::get<3>(kind);
    std::int64_t free = boards.free();
    for (const auto& [tag, stack] : boards.stacks) {
      const std::int64_t some = std::min(free, stack.here());
      if (some <= 0 || !wanted(bundles, tag)) continue;
      free -= some;
      LoadLine& line = all.lines.emplace_back(stack.line);
      (lineal ? line.length.count : line.pieces) = some;
      if (lineal) line.length.system = line.size.thickness.system;
    }
    say_left_out(boards, lineal, bundles, left, all);
  }
  if (const std::string many = left.undivided.words(); !many.empty())
    all.left_out.push_back(many + " not divided yet");
  if (const std::string many = left.mills.words(); !many.empty())
    all.left_out.push_back(many + " of the mill's part");
  std::sort(all.lines.begin(), all.lines.end(), [](const LoadLine& a, const LoadLine& b) {
    return std::tuple(lower(a.bundle), lower(a.species), lower(a.grade), a.size, a.lineal(), a.length) <
           std::tuple(lower(b.bundle), lower(b.species), lower(b.grade), b.size, b.lineal(), b.length);
  });
  for (const std::string& tag : bundles) {
    const bool some = std::any_of(all.lines.begin(), all.lines.end(),
                                  [&](const LoadLine& line) { return same_word(line.bundle, tag); });
    const std::string why = some ? "" : why_not_bundle(lumber, tag);
    if (!why.empty()) all.left_out.push_back(why);
  }
  return all;
}

namespace {

/// What load slips of the job took away that were not taken back.
std::vector<LoadLine> loaded(const book::Book& book, const std::string& job) {
  std::vector<LoadLine> lines;
  book::Store store(book.database());
  store.each(
      "SELECT bundle, species, grade, size, metric, length, pieces FROM v_load WHERE job = ? COLLATE NOCASE "
      "AND taken_back IS NULL ORDER BY number, line",
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

Yard yard_of(const book::Book& book, const Work& work, Day day) {
  Yard yard{work.facts.facts, loaded(book, work.deal.job.job), {}};
  for (const Paper& paper : work.about)
    if (paper.split)
      yard.divided.insert(yard.divided.end(), paper.split->lines.begin(), paper.split->lines.end());
  yard.undivided = draft_with(work, day, true).items;
  return yard;
}

std::string counting_words(const std::vector<LoadLine>& lines) {
  const auto lineal =
      std::count_if(lines.begin(), lines.end(), [](const LoadLine& line) { return line.lineal(); });
  if (lineal == 0) return "Counted piece by piece when it was sawn.";
  if (lineal == static_cast<std::ptrdiff_t>(lines.size())) return "Measured end to end when it was sawn.";
  return "Counted piece by piece when it was sawn; a length \"in all\" was measured end to end.";
}

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
  for (const LoadLine& line : lines) {
    const Rational lumber =
        unit.of({line.size, line.length, std::max<std::int64_t>(line.pieces, 1)}, job.convention);
    const render::Cell pieces = line.lineal() ? render::Cell{} : render::Cell{line.pieces};
    table.rows.push_back(
        {{line.bundle, species_words(mill, line.species), grade_words(mill, line.grade),
          size_words(line.size, mill), length_words(line.length, mill) + (line.lineal() ? " in all" : ""),
          pieces, unit.cell(lumber)}});
  }
  foot(table, mill);
  drop_empty(table, 2);
  drop_empty(table, 0);
  table.notes.push_back(counting_words(lines));
  return table;
}

/// The day a load slip was taken back and why; nullopt: it stands.
std::optional<std::pair<Day, std::string>> taken_back(const book::Book& book, std::int64_t slip) {
  std::optional<std::pair<Day, std::string>> found;
  book::Store store(book.database());
  store.each(
      "SELECT day, note FROM paper WHERE kind = 'take-back' AND slip = ?",
      [&](const book::Row& row) {
        found.emplace(Day{static_cast<std::int32_t>(row.number(0))}, row.text(1));
      },
      slip);
  return found;
}

render::Document take_back_document(const Deal& deal, const Paper& paper, const Paper& slip) {
  const book::Mill& mill = *deal.mill;
  const std::string number = std::to_string(slip.number);
  render::Document document = letter(mill, "take-back", "Load slip " + number + " taken back", paper.day);
  add_party(document, mill, paper.customer, "Customer");
  add_head(document, "Date", paper.day, render::ColumnKind::day);
  add_head(document, "Job", job_words(mill, paper.job));
  add_head(document, "Load slip", number);
  add_head(document, "Of", slip.day, render::ColumnKind::day);
  document.lead.push_back("What was listed lies here again: " + paper.note + ".");
  document.tables.push_back(load_table(mill, deal.job, slip.load));
  return document;
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

Loading load(book::Book& book, const LoadAsk& ask, Day day) {
  book::Turn turn(book);
  const std::vector<Paper> papers = papers_of(book);
  LoadAsk known = ask;
  known.job = known_job(book, ask.job);
  const Work work = work_of_job(book, known.job, day);
  Loadable some = left_to_load(yard_of(book, work, day), ask.bundles);
  Paper paper = begun(papers, PaperKind::load, day);
  paper.job = known.job;
  paper.customer = work.deal.job.customer;
  paper.load = std::move(some.lines);
  if (paper.load.empty()) {
    const auto one = std::find_if(papers.begin(), papers.end(), [&](const Paper& before) {
      return before.kind == PaperKind::load && same_word(before.job, known.job);
    });
    if (some.left_out.empty() && one != papers.end())
      some.left_out.emplace_back("all of it went with earlier load slips");
    throw Refused("job " + known.job + ": nothing to load up to " + write_day(day) +
                  (some.left_out.empty() ? "" : "; " + join(some.left_out, "; ")));
  }
  paper.document = load_document(work.deal, known, paper.load, paper.number, day);
  post(book, paper);
  turn.commit();
  return {std::move(paper), std::move(some.left_out)};
}

Paper take_back_load(book::Book& book, std::int64_t slip, const std::string& why, Day day) {
  need_reason(why);
  book::Turn turn(book);
  const Paper before = find_paper(book, PaperKind::load, slip);
  if (const auto done = taken_back(book, slip))
    throw Refused("load slip " + std::to_string(slip) + " was taken back already on " +
                  write_day(done->first) + ": " + done->second);
  if (day < before.day)
    throw Refused("load slip " + std::to_string(slip) + " is of " + write_day(before.day) +
                  "; it cannot be taken back before that");
  Paper paper = begun(papers_of(book), PaperKind::take_back, day);
  paper.job = before.job;
  paper.customer = before.customer;
  paper.slip = slip;
  paper.note = why;
  paper.document = take_back_document(deal_of(book, before.job), paper, before);
  post(book, paper);
  turn.commit();
  return paper;
}

render::Document printed(const book::Book& book, const Paper& paper) {
  render::Document document = paper.document;
  if (paper.mark.entry != 0) document.foot.push_back(book::mark_of_paper(paper.mark));
  if (paper.kind != PaperKind::load) return document;
  if (const auto done = taken_back(book, paper.number))
    document.lead.insert(document.lead.begin(), "Taken back on " + day_words(done->first, book.mill()) +
                                                    ": " + done->second + ". This slip no longer counts.");
  return document;
}

}  // namespace kerfbook::billing
