// read_context.cpp -- the lines that say what holds from here on (site, job, species, grade, bundle, set-up), and notes.
#include "base/text.h"
#include "sheet/kinds.h"

namespace kerfbook::sheet {
namespace {

/// One word and nothing after it.
std::optional<std::string> only_code(LineReader& line, std::string_view missing_what,
                                     std::string_view example, std::string_view after) {
  auto code = take_code(line, missing_what, example);
  if (code && !line.done()) {
    const Word& word = line.take();
    const std::string typed = line.typed(word);
    line.error(
        word, in_quotes(typed) + ": nothing more is read after " + std::string(after) + ", which is one word",
        "write " + *code + (is_digit(typed.front()) ? "" : "-") + typed + ", or put a remark after ';'");
  }
  return line.failed() ? std::nullopt : code;
}

/// A kerf, or what is cut over: less than a hand's breadth.
std::optional<std::int64_t> take_mils(LineReader& line, std::string_view name) {
  constexpr std::int64_t kMostInches = 4;
  constexpr std::int64_t kMostMillimetres = 100;
  const std::string of(name);
  const std::string example = line.metric() ? "7.1" : "0.26 or 1/4";
  if (line.done()) {
    line.missing(in_quotes(of) + " without a measure", "write " + of + " " + example);
    return std::nullopt;
  }
  const Word& word = line.take();
  const auto mils = measure::read_mils(word.text, line.metric());
  if (mils && *mils < (line.metric() ? kMostMillimetres * 100 : kMostInches * 1000)) return *mils;
  line.error(
      word,
      in_quotes(line.typed(word)) + ": not a " + of + " in " + (line.metric() ? "millimetres" : "inches"),
      "write it as " + example);
  return std::nullopt;
}

}  // namespace

std::optional<Fact> read_site(LineReader& line) {
  if (line.done()) {
    line.missing("'site' without a name", "write site Tervane farm");
    return std::nullopt;
  }
  return Site{line.take_rest()};
}

std::optional<Fact> read_job(LineReader& line) {
  auto code = only_code(line, "'job' without a code", "job TER, or job own for the mill's own stock",
                        "the job's code");
  if (!code) return std::nullopt;
  return Job{job_code(*code)};
}

std::optional<Fact> read_species(LineReader& line) {
  auto code = only_code(line, "'species' without a code", "species DF", "the species' code");
  if (!code) return std::nullopt;
  return Species{*code};
}

std::optional<Fact> read_grade(LineReader& line) {
  auto code = only_code(line, "'grade' without a grade", "grade No2, or grade - for none again", "the grade");
  if (!code) return std::nullopt;
  return Grade{*code == "-" ? "" : *code};
}

std::optional<Fact> read_bundle(LineReader& line) {
  auto tag =
      only_code(line, "'bundle' without a tag", "bundle B12, or bundle - for none again", "the bundle's tag");
  if (!tag) return std::nullopt;
  return Bundle{*tag == "-" ? "" : *tag};
}

std::optional<Fact> read_setup(LineReader& line) {
  auto name = take_code(line, "'setup' without a name", "setup 2 kerf 0.26 over 0.05");
  if (!name) return std::nullopt;
  if (same_word(*name, "kerf") || same_word(*name, "over")) {
    const std::string rest = line.take_rest();
    line.missing("'setup' without a name", "write setup 2 " + *name + (rest.empty() ? " 0.25" : " " + rest));
    return std::nullopt;
  }
  Setup setup{*name, {}, {}, {}};
  for (;;) {
    if (!setup.kerf_mils && line.take_if("kerf")) {
      setup.kerf_mils = take_mils(line, "kerf");
    } else if (!setup.over_mils && line.take_if("over")) {
      setup.over_mils = take_mils(line, "over");
    } else {
      break;
    }
    if (line.failed()) return std::nullopt;
  }
  for (const std::string_view part : {"kerf", "over"}) {
    if (!lower(line.peek()).starts_with(part)) continue;
    const Word& word = line.take();
    line.error(word, in_quotes(line.typed(word)) + ": not understood in a set-up",
               "write " + std::string(part) + " 0.25, once, with a blank between");
    return std::nullopt;
  }
  setup.text = line.take_rest();
  return setup;
}

std::optional<Fact> read_note(LineReader& line) {
  if (line.done()) {
    line.missing("'note' with nothing after it", "write what is to be remembered, or leave the line out");
    return std::nullopt;
  }
  return Note{line.take_rest()};
}

}  // namespace kerfbook::sheet
