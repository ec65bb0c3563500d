#include "book/tally_item.h"

#include "sheet/write.h"

namespace kerfbook::book {
namespace {

using measure::Length;
using measure::Size;
using measure::System;
using measure::Volume;

/// Pieces whose volume counts once for lineal feet: the length is of all of them together.
std::int64_t counted_pieces(const TallyItem& item) {
  return item.sign() * (item.form == TallyForm::lineal ? 1 : item.pieces);
}

/// A piece with its size in one system and its length in the other is counted in the size's.
Length length_for(const Size& size, Length length) {
  return length.system == size.thickness.system ? length : measure::converted(length, size.thickness.system);
}

Volume counted_in(Volume volume, System book) {
  return volume.system == book ? volume : measure::converted(volume, book);
}

/// An oversize in the unit of the size it is added to. 1 mil = 2.54 hundredths of a millimetre.
std::int64_t mils_for(const Size& size, Over over) {
  const bool metric = size.thickness.system == System::metric;
  if (metric == over.metric) return over.mils;
  return metric ? round_half_up(Wide{over.mils} * 254, 100) : round_half_up(Wide{over.mils} * 100, 254);
}

std::string grade_of(const std::string& on_line, const sheet::DatedFact& fact) {
  return on_line.empty() ? fact.context.grade : on_line;
}

}  // namespace

std::string_view word_of(TallyForm form) {
  switch (form) {
    case TallyForm::piece:
      return "piece";
    case TallyForm::lineal:
      return "lineal";
    case TallyForm::random:
      return "random";
  }
  return "";
}

std::optional<TallyItem> tally_item(const sheet::DatedFact& fact) {
  if (const auto* line = std::get_if<sheet::Tally>(&fact.line->fact)) {
    const auto& item = line->items.at(fact.item);
    return TallyItem{TallyForm::piece, line->sense, line->size,
                     item.length,      item.pieces, grade_of(line->grade, fact),
                     line->reason};
  }
  if (const auto* line = std::get_if<sheet::LinealTally>(&fact.line->fact)) {
    return TallyItem{TallyForm::lineal,           line->sense, line->size, line->total, 0,
                     grade_of(line->grade, fact), line->reason};
  }
  if (const auto* line = std::get_if<sheet::RandomTally>(&fact.line->fact)) {
    const auto& board = line->boards.at(fact.item);
    return TallyItem{TallyForm::random, line->sense,  {line->thickness, board.width, line->quarters},
                     board.length,      board.pieces, grade_of(line->grade, fact),
                     line->reason};
  }
  return std::nullopt;
}

Volume lumber_of(const TallyItem& item, System book) {
  return counted_in(measure::volume(item.size, length_for(item.size, item.length), counted_pieces(item)),
                    book);
}

Volume wood_of(const TallyItem& item, const std::optional<measure::Size>& target,
               const std::optional<Over>& over, System book) {
  if (target) {
    return counted_in(measure::volume(*target, length_for(*target, item.length), counted_pieces(item)), book);
  }
  if (!over) return lumber_of(item, book);
  return counted_in(measure::volume_over(item.size, length_for(item.size, item.length), counted_pieces(item),
                                         mils_for(item.size, *over)),
                    book);
}

std::string written(const TallyItem& item) {
  sheet::Line line;
  switch (item.form) {
    case TallyForm::piece:
      line.fact = sheet::Tally{item.sense, item.size, item.grade, {{item.pieces, item.length}}, item.reason};
      break;
    case TallyForm::lineal:
      line.fact = sheet::LinealTally{item.sense, item.size, item.grade, item.length, item.reason};
      break;
    case TallyForm::random:
      line.fact = sheet::RandomTally{item.sense,
                                     item.size.thickness,
                                     item.size.quarters,
                                     item.grade,
                                     {{item.size.width, item.length, item.pieces}},
                                     item.reason};
      break;
  }
  return sheet::write_line(line);
}

}  // namespace kerfbook::book
