// help_sheet.cpp -- the language of the day sheet on one page: all of it from the table of line kinds but for what the
// words in capitals stand for.
#include "base/text.h"
#include "command/help.h"
#include "render/text_table.h"
#include "sheet/read.h"

namespace kerfbook::command {
namespace {

constexpr int kWord = 7;   // the longest word a line begins with
constexpr int kLeft = 21;  // of what is written, before what it means
constexpr int kSetIn = 8;  // of a meaning that stands below

constexpr std::string_view kAbout =
    "One fact a line, in the order of the day. The first word says what the line is; a line that begins with "
    "a size "
    "is boards. What follows ; is a remark. Capital letters or small, blanks or tabs: all the same. Words in "
    "capitals "
    "below stand for your own; [what is in brackets] may be left out; ... means more of the same.";

constexpr std::string_view kHolds =
    "Species, grade, bundle and set-up hold until the next of their kind; a place holds from its site line, "
    "or from the "
    "move that went there. A day with one job is all that job's. With several, a job holds from its line to "
    "the next; a "
    "line that ends in , job CODE is that job's wherever it stands; and what is no job's is told by check "
    "and post.";

constexpr std::string_view kMetric =
    "In a metric book plain sizes are millimetres, lengths metres, diameters centimetres.";

constexpr std::pair<std::string_view, std::string_view> kWords[] = {
    {"TIME", "0:36, 36min or 0.6h; of a crew 9 or 8:30, or from-to"},
    {"FROM-TO", "7:15-10:20, by the clock of 24 hours; past midnight 22:00-1:30"},
    {"SIZE", "thickness by width as it is called: 2x6, 5/4x6, 1-1/4x8"},
    {"LENGTH", "in feet: 16, 16'6\", 16.5"},
    {"DIAMETER", "inside bark at the small end, in inches: 15, 12-1/2, 12.5; 12/13 is two readings of it"},
    {"ENDS",
     "-15 after the diameter is the large end (12/13-15x16); after the length mid 13.5, girth 48, or "
     "segments 12,14"},
    {"D", "a defect: 15bf, 10%, 2ft (of length), 1in (of diameter), 7x7x16 (squared) or 90degx8 (sector)"},
    {"CODE, TAG", "one word; T13-T22 is every tag of a row"},
    {"TEXT, WHY", "any words, to the end of the line"},
};

std::string headed(std::string_view word, std::string_view form) {
  return word.empty() ? std::string(form) : pad_right(word, kWord) + " " + std::string(form);
}

/// What is written and what it means: on one line where both have room, else the meaning below, set in.
std::string told(const std::string& written, std::string_view meaning, int left) {
  const bool room = screen_width(written) <= left && screen_width(meaning) <= kPageWidth - left - 2;
  if (meaning.empty()) return written + "\n";
  if (room) return pad_right(written, left) + "  " + std::string(meaning) + "\n";
  std::string out = written + "\n";
  const std::string below = render::wrapped(std::string(meaning), kPageWidth - kSetIn);
  for (const auto line : split_lines(below)) out += std::string(kSetIn, ' ') + std::string(line) + "\n";
  return out;
}

}  // namespace

std::string sheet_page() {
  std::string out =
      "How a day sheet is written\n\n" + render::wrapped(std::string(kAbout), kPageWidth) + "\n";
  for (const auto& [word, meaning] : kWords) out += beside("  " + std::string(word), meaning, 11);
  out += "\n" + render::wrapped(std::string(kMetric), kPageWidth);
  out += "\n" + render::wrapped(std::string(kHolds), kPageWidth) + "\n";
  for (const sheet::KindOfLine& kind : sheet::kinds_of_line()) {
    for (const sheet::LineForm& form : kind.forms) {
      const bool last = &form == &kind.forms.back();
      out += told(headed(kind.word, form.written), last ? kind.meaning : "", kLeft);
    }
  }
  return out + "\nAn example of each: kerfbook help post.\n";
}

std::string sheet_lines() {
  std::string out;
  for (const sheet::KindOfLine& kind : sheet::kinds_of_line()) {
    for (const sheet::LineForm& form : kind.forms) {
      const bool last = &form == &kind.forms.back();
      out += told("  " + std::string(form.example), last ? kind.meaning : "", kLeft);
    }
  }
  return out;
}

}  // namespace kerfbook::command
