// measure.cpp -- `kerfbook measure TALLY...`: board feet of what is typed, as a sheet would count it. No
// book.
#include <algorithm>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "measure/size.h"
#include "render/footing.h"
#include "sheet/facts.h"
#include "sheet/read.h"

namespace kerfbook::command {
namespace {

struct MeasureAsk {
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
    const bool sized =
        std::count_if(line.begin(), line.end(), [](char c) { return c == 'x' || c == 'X'; }) == 2;
    if (sized && line.find(' ') == std::string::npos) line += " 1";
  }
  return lines;
}

/// One line of the answer, exact.
struct Counted {
  std::string size;
  measure::Length length;
  std::int64_t pieces = 0;  ///< 0 for lineal feet, of which pieces are not counted
  measure::Volume volume;
};

/// `less` and `resaw` are taken off, as a sheet takes them off.
std::int64_t sign_of(sheet::Sense sense) {
  return sense == sheet::Sense::sawn ? 1 : -1;
}

Counted count_item(const sheet::DatedFact& fact) {
  if (const auto* tally = std::get_if<sheet::Tally>(&fact.line->fact)) {
    const auto& item = tally->items[fact.item];
    const std::int64_t pieces = sign_of(tally->sense) * item.pieces;
    return {measure::write_size(tally->size), item.length, pieces,
            measure::volume(tally->size, item.length, pieces)};
  }
  if (const auto* random = std::get_if<sheet::RandomTally>(&fact.line->fact)) {
    const auto& board = random->boards[fact.item];
    const measure::Size size{random->thickness, board.width, random->quarters};
    const std::int64_t pieces = sign_of(random->sense) * board.pieces;
    return {measure::write_size(size), board.length, pieces, measure::volume(size, board.length, pieces)};
  }
  if (const auto* lineal = std::get_if<sheet::LinealTally>(&fact.line->fact)) {
    return {measure::write_size(lineal->size), lineal->total, 0,
            measure::volume(lineal->size, lineal->total, sign_of(lineal->sense))};
  }
  throw Refused("measure takes tally lines only; write 2x6 24/16, or 2x6x16 24");
}

render::Table table_of(const std::vector<Counted>& lines) {
  using render::ColumnKind;
  using render::TotalKind;
  render::Table table;
  table.name = "measure";
  table.columns = {
      {.name = "size", .heading = "Size"},
      {.name = "length", .heading = "Length"},
      {.name = "pieces", .heading = "Pieces", .kind = ColumnKind::count, .total = TotalKind::sum},
      {.name = "bf",
       .heading = "Lumber",
       .unit = "bf",
       .kind = ColumnKind::decimal,
       .places = 2,
       .total = TotalKind::sum},
      {.name = "m3",
       .heading = "Volume",
       .unit = "m³",
       .kind = ColumnKind::decimal,
       .places = 4,
       .total = TotalKind::sum}};
  for (const auto& line : lines) {
    table.rows.push_back({{line.size, measure::spoken_length(line.length),
                           line.pieces == 0 ? render::Cell{} : render::Cell{line.pieces},
                           render::Figure(measure::board_feet(line.volume), 2),
                           render::Figure(measure::cubic_metres(line.volume), 4)}});
  }
  render::total_up(table);
  return table;
}

render::Document count(const MeasureAsk& asked, const Session& session) {
  std::string text = "sheet 2000-01-01\n";
  for (const auto& line : tally_lines(asked.words)) text += line + "\n";
  const auto read = sheet::read(text, {.metric = asked.metric});
  if (has_error(read.found)) {
    session.err() << show_all(read.found, "measure", text);
    throw Refused("nothing was counted");
  }
  std::vector<Counted> lines;
  for (const auto& fact : sheet::facts(read.sheet)) lines.push_back(count_item(fact));
  render::Document document;
  document.name = "measure";
  document.title = "Board measure";
  document.meaning =
      "Thickness x width in inches x length in feet / 12, on the sizes as written; the total is exact.";
  document.tables.push_back(table_of(lines));
  return document;
}

}  // namespace

Form measure_form() {
  auto asked = std::make_shared<MeasureAsk>();
  return {.rows = Rows{{"TALLY...", &asked->words, "tally as a sheet has it: 2x6 24/16, or 2x6x16 24"},
                       {"--metric", &asked->metric, "plain sizes are millimetres and lengths metres"}} +
                  output_rows(asked->output),
          .footer =
              "  kerfbook measure 2x6x16 24\n"
              "  kerfbook measure \"2x6 24/16 3/12\" \"5/4 rw 7-1/2x8 6x8*3\"\n"
              "  kerfbook measure --metric 50x150x4.8 12",
          .deed = [asked](const Session& session) {
            auto document = count(*asked, session);
            document.style = session.style({});
            render::note_rounding(document.tables.front(), document.style);
            document.made_on = write_day(session.today());
            write_document(document, asked->output, session);
          }};
}

}  // namespace kerfbook::command
