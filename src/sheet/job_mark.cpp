#include "sheet/job_mark.h"

#include "base/text.h"

namespace kerfbook::sheet {
namespace {

void drop_comma(Word& word) {
  word.text.pop_back();
  word.end = word.from.back();
  word.from.pop_back();
}

/// Does `job` at this place begin a mark? Then the comma before it, a word of its own or the end of one, is taken off.
bool take_comma_before(std::vector<Word>& words, std::size_t job, std::size_t head, NamesJob how) {
  if (same_word(words[job].text, ",job")) return true;
  if (!same_word(words[job].text, "job")) return false;
  if (job <= head || !words[job - 1].text.ends_with(',')) return how == NamesJob::yes;
  if (words[job - 1].text == ",")
    words.erase(words.begin() + static_cast<std::ptrdiff_t>(job) - 1);
  else
    drop_comma(words[job - 1]);
  return true;
}

}  // namespace

std::string job_code(const std::string& typed) {
  return same_word(typed, "own") ? "own" : typed;
}

std::string take_job_mark(FoldedLine& line, std::size_t head, NamesJob how) {
  std::vector<Word>& words = line.words;
  if (words.size() < head + 2) return {};
  const std::string code = typed_text(line, words.back());
  std::size_t job = words.size() - 2;
  const std::size_t before = words.size();
  if (code.ends_with(',') || !take_comma_before(words, job, head, how)) return {};
  job -= before - words.size();
  words.resize(job);
  return job_code(code);
}

}  // namespace kerfbook::sheet
