// read_context.cpp -- the lines that say what holds from here on (site, job, species, grade, bundle), and notes.
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

std::optional<Fact> read_note(LineReader& line) {
  if (line.done()) {
    line.missing("'note' with nothing after it", "write what is to be remembered, or leave the line out");
    return std::nullopt;
  }
  return Note{line.take_rest()};
}

}  // namespace kerfbook::sheet
