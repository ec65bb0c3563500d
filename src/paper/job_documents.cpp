// job_documents.cpp -- papers about a job itself: division of shares, blank tally sheet. The load slip: load.cpp.
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

using render::Cell;
using render::Document;
using render::Table;

/// What each side has, and what of it is owed over to the next division.
Table sides_table(const book::Mill& mill, const Split& split) {
  const LumberUnit unit(mill);
  const auto volume = [&](const Rational& bf) {
    return number_words(shown(unit.from_bf(bf.is_negative() ? -bf : bf), unit.places()), mill) + " " +
           unit.unit() + " owed to the " + (bf.is_negative() ? "mill." : "customer.");
  };
  Table sides;
  sides.name = "sides";
  sides.title = "Each side";
  sides.columns = {text_column("side", "Side"), summed(count_column("pieces", "Pieces")),
                   summed(unit.column())};
  const auto lumber = [&](const Rational& bf) { return unit.cell(unit.from_bf(bf)); };
  sides.rows.push_back({{std::string("Customer"), split.customer_pieces, lumber(split.customer_bf)}});
  sides.rows.push_back({{std::string("Mill"), split.mill_pieces, lumber(split.mill_bf)}});
  foot(sides, mill);
  if (!split.carried_in.is_zero()) sides.notes.push_back("Brought forward: " + volume(split.carried_in));
  sides.notes.push_back(split.carried.is_zero() ? "Nothing is carried forward."
                                                : "Carried to the next division: " + volume(split.carried));
  sides.notes.emplace_back("The mill's part goes to its own stock.");
  return sides;
}

/// Boards nobody counted: each side's part of their length.
Table lineal_shares(const book::Mill& mill, const Split& split) {
  const bool metric = mill.units == measure::System::metric;
  const std::string unit = metric ? "m" : "ft";
  const auto along = [&](std::int64_t count, const ShareLine& line) {
    const Length length{count, line.size.thickness.system};
    return render::Figure(metric ? in_metres(length) : in_feet(length), 2);
  };
  Table table;
  table.name = "lineal_shares";
  table.title = metric ? "Counted in lineal metres" : "Counted in lineal feet";
  table.columns = {text_column("bundle", "Bundle"),
                   text_column("species", "Species"),
                   text_column("size", "Size"),
                   text_column("grade", "Grade"),
                   decimal_column("length", "Length", unit, 2),
                   decimal_column("customer", "Customer", unit, 2),
                   decimal_column("mill", "Mill", unit, 2)};
  for (const ShareLine& line : split.lines)
    if (line.lineal())
      table.rows.push_back({{line.bundle, species_words(mill, line.species), size_words(line.size, mill),
                             grade_words(mill, line.grade), along(line.pieces, line),
                             along(line.to_customer, line), along(line.to_mill, line)}});
  drop_empty(table, 3);
  drop_empty(table, 0);
  table.notes.emplace_back(metric ? "Divided in the same proportion, to 0.1 m."
                                  : "Divided in the same proportion, to the foot.");
  return table;
}

}  // namespace

Document division_document(const book::Mill& mill, const Paper& division, const ShareTerm& rule) {
  Document paper =
      letter(mill, "division", "Division of lumber " + std::to_string(division.number), division.day);
  add_party(paper, mill, division.customer, "Owner of the logs");
  add_head(paper, "Date", division.day, render::ColumnKind::day);
  add_head(paper, "Job", job_words(mill, division.job));
  if (division.from && division.to)
    add_head(paper, "Work of", period_words(*division.from, *division.to, mill));
  const Split& split = *division.split;
  const std::string rule_words = share_words(rule.rule, rule.percent);
  paper.lead.push_back("The lumber is divided " + rule_words + ".");
  Table table;
  table.name = "shares";
  table.columns = {text_column("bundle", "Bundle"),
                   text_column("species", "Species"),
                   text_column("size", "Size"),
                   text_column("grade", "Grade"),
                   text_column("length", "Length"),
                   summed(count_column("pieces", "Pieces")),
                   summed(count_column("customer", "Customer")),
                   summed(count_column("mill", "Mill"))};
  for (const ShareLine& line : split.lines)
    if (!line.lineal())
      table.rows.push_back({{line.bundle, species_words(mill, line.species), size_words(line.size, mill),
                             grade_words(mill, line.grade), length_words(line.length, mill), line.pieces,
                             line.to_customer, line.to_mill}});
  const std::int64_t all = split.customer_pieces + split.mill_pieces;
  table.totals = {std::monostate{}, {}, {}, {}, {}, all, split.customer_pieces, split.mill_pieces};
  drop_empty(table, 3);
  drop_empty(table, 0);
  if (!table.rows.empty()) paper.tables.push_back(std::move(table));
  Table feet = lineal_shares(mill, split);
  if (!feet.rows.empty()) paper.tables.push_back(std::move(feet));

  paper.tables.push_back(sides_table(mill, split));
  paper.signatures = {"Owner of the logs", signer(mill)};
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

namespace {

/// Sizes down and lengths across, with room for what the list does not have.
Table pieces_table(const book::Mill& mill, const book::JobEntry* entry) {
  constexpr std::size_t kLengths = 5;  // fewer are filled up with blank columns; one is always left
  constexpr std::size_t kSizes = 7;    // fewer are filled up with blank rows
  std::set<Size> sizes;
  std::set<Length> lengths;
  sheet_rows(mill, entry, sizes, lengths);
  Table tally;
  tally.name = "tally";
  tally.title = "Pieces";
  tally.ruled = true;
  tally.columns.push_back(text_column("size", "Size"));
  for (const Length& length : lengths)
    tally.columns.push_back(text_column(measure::write_feet(length), length_words(length, mill)));
  const std::size_t spare = std::max<std::size_t>(1, kLengths - std::min(kLengths, lengths.size()));
  for (std::size_t i = 0; i < spare; ++i) {
    const std::string name = "spare_" + std::to_string(i + 1);
    tally.columns.push_back(text_column(name, " "));
  }
  tally.columns.push_back(text_column("sum", "Pieces"));
  const auto row = [&](const std::string& first) {
    std::vector<Cell> cells(tally.columns.size(), Cell(std::string()));
    cells.front() = first;
    tally.rows.push_back({std::move(cells)});
  };
  for (const Size& size : sizes) row(size_words(size, mill));
  const std::size_t blank = std::max<std::size_t>(3, kSizes - std::min(kSizes, sizes.size()));
  for (std::size_t i = 0; i < blank; ++i) row("");
  row("Pieces");
  return tally;
}

}  // namespace

Document blank_sheet_document(const book::Mill& mill, const std::string& job_code, Day today) {
  const book::JobEntry* entry = find_job(mill, job_code);
  const bool metric = mill.units == measure::System::metric;
  Document paper = letter(mill, "tally-sheet", "Tally sheet", today);
  add_head(paper, "Day", std::string());
  add_head(paper, "Job", entry == nullptr ? job_code : job_words(mill, job_code));
  add_head(paper, "Site", entry == nullptr ? std::string() : entry->site);
  add_head(paper, "Species", std::string());
  paper.tables.push_back(pieces_table(mill, entry));
  const std::string end = metric ? "Small end, cm" : "Small end, in";
  const std::string length = metric ? "Length, m" : "Length, ft";
  paper.tables.push_back(ruled_table(
      "logs", "Logs", {"No", end, length, "Defect", "No ", end + " ", length + " ", "Defect "}, 6));
  paper.tables.push_back(
      ruled_table("times", "Start and stop, teeth, charges", {"From", "To", "What and why", "Charge"}, 5));
  paper.signatures = {"Tallied by", "Customer"};
  return paper;
}

}  // namespace kerfbook::billing
