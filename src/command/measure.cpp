// measure.cpp -- `kerfbook measure TALLY...`: board feet of what is typed, as a sheet would count it. No
// book.
#include <CLI/CLI.hpp>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "measure/convention.h"
#include "sheet/facts.h"
#include "sheet/read.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::vector<std::string> words;
  bool metric = false;
  Output output;
};

bool begins_line(const std::string& word) {
  return word.find_first_of("xX") != std::string::npos && word.find('*') == std::string::npos;
}

/// Words from the shell become tally lines: an argument with blanks is a line of its own; otherwise a line
/// begins at each size. `2x6x16` alone is one piece.
std::vector<std::string> tally_lines(const std::vector<std::string>& words) {
  std::vector<std::string> lines;
  bool random = false;
  for (const auto& word : words) {
    const bool whole = word.find(' ') != std::string::npos;
    if (same_word(word, "rw")) random = true;
    if (whole || lines.empty() || (begins_line(word) && !random)) {
      lines.push_back(word);
      random = whole;
    } else {
      lines.back() += " " + word;
    }
  }
  for (auto& line : lines) {
    if (line.find(' ') == std::string::npos) line += " 1";
  }
  return lines;
}

void add_row(render::Table& table, std::string size, measure::Length length, std::int64_t pieces,
             measure::Volume volume) {
  const bool lineal = pieces == 0;
  table.rows.push_back(
      {{std::move(size), measure::spoken_length(length), lineal ? render::Cell{} : render::Cell{pieces},
        shown(measure::board_feet(volume), 2), shown(measure::cubic_metres(volume), 4)}});
}

/// Counts one tally item into the table; returns its volume.
measure::Volume count_item(const sheet::DatedFact& fact, render::Table& table) {
  if (const auto* tally = std::get_if<sheet::Tally>(&fact.line->fact)) {
    const auto& item = tally->items[fact.item];
    const auto volume = measure::volume(tally->size, item.length, item.pieces);
    add_row(table, measure::write_size(tally->size), item.length, item.pieces, volume);
    return volume;
  }
  if (const auto* random = std::get_if<sheet::RandomTally>(&fact.line->fact)) {
    const auto& board = random->boards[fact.item];
    const measure::Size size{random->thickness, board.width, random->quarters};
    const auto volume = measure::volume(size, board.length, board.pieces);
    add_row(table, measure::write_size(size), board.length, board.pieces, volume);
    return volume;
  }
  if (const auto* lineal = std::get_if<sheet::LinealTally>(&fact.line->fact)) {
    const auto volume = measure::volume(lineal->size, lineal->total, 1);
    add_row(table, measure::write_size(lineal->size), lineal->total, 0, volume);
    return volume;
  }
  throw Refused("measure takes tally lines only; write 2x6 24/16, or 2x6x16 24");
}

render::Document count(const Asked& asked) {
  std::string text = "sheet 2000-01-01\n";
  for (const auto& line : tally_lines(asked.words)) text += line + "\n";
  const auto read = sheet::read(text, {.metric = asked.metric});
  if (has_error(read.found)) throw book::DocumentRefused("measure", text, read.found);
  render::Table table;
  table.name = "measure";
  table.columns = {
      {.name = "size", .heading = "Size"},
      {.name = "length", .heading = "Length"},
      {.name = "pieces", .heading = "Pieces", .kind = render::ColumnKind::count},
      {.name = "bf", .heading = "Board feet", .unit = "bf", .kind = render::ColumnKind::decimal, .places = 2},
      {.name = "m3", .heading = "Volume", .unit = "m3", .kind = render::ColumnKind::decimal, .places = 4}};
  Rational bf;
  Rational cubic;
  std::int64_t pieces = 0;
  for (const auto& fact : sheet::facts(read.sheet)) {
    const auto volume = count_item(fact, table);
    bf = bf + measure::board_feet(volume);
    cubic = cubic + measure::cubic_metres(volume);
    if (const auto* n = std::get_if<std::int64_t>(&table.rows.back().cells[2])) pieces += *n;
  }
  table.totals = {std::string("Total"), render::Cell{}, pieces, shown(bf, 2), shown(cubic, 4)};
  render::Document document;
  document.name = "measure";
  document.title = "Board measure";
  document.meaning =
      "Thickness x width in inches x length in feet / 12, on the sizes as written; the total is exact.";
  document.tables.push_back(std::move(table));
  return document;
}

}  // namespace

void add_measure(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("TALLY", asked->words, "tally as a sheet has it: 2x6 24/16, or 2x6x16 24")->required();
  app.add_flag("--metric", asked->metric, "plain sizes are millimetres and lengths metres");
  add_output_options(app, asked->output);
  app.footer(
      "  kerfbook measure 2x6x16 24\n"
      "  kerfbook measure \"2x6 24/16 3/12\" \"5/4 rw 7-1/2x8 6x8*3\"\n"
      "  kerfbook measure --metric 50x150x4.8 12");
  app.callback([asked, &session] {
    session.deed = [asked, &session] {
      auto document = count(*asked);
      document.style = session.style({});
      document.made_on = write_day(session.today());
      write_document(document, asked->output, session);
    };
  });
}

}  // namespace kerfbook::command
