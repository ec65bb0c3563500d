// check_words.cpp -- words that are new and look like a slip for a known one. A word that is merely new is the book's
// to tell of when it adds it.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "sheet/check_rules.h"
#include "sheet/line_reader.h"

namespace kerfbook::sheet {
namespace {

std::string without_digits(const std::string& word) {
  std::string out = lower(word);
  out.erase(std::remove_if(out.begin(), out.end(), [](char c) { return c >= '0' && c <= '9'; }), out.end());
  return out;
}

/// The known word this one may be a slip for. No3 is no slip for No2: they differ in their number.
std::string slip_for(const std::string& word, const std::vector<std::string>& known) {
  std::vector<std::string> others;
  for (const std::string& one : known) {
    if (!has_digit(one) || without_digits(one) != without_digits(word)) others.push_back(one);
  }
  return nearest(word, others);
}

/// Says once of each word that it is near a known one.
class WordCheck {
 public:
  WordCheck(Review& review, const char* kind, const std::vector<std::string>& known)
      : review_(review), kind_(kind), known_(known) {}

  void look(const Line& line, const std::string& word) {
    if (word.empty() || known_.empty() || !said_.insert(lower(word)).second) return;
    if (std::any_of(known_.begin(), known_.end(), [&](const auto& one) { return same_word(one, word); }))
      return;
    const std::string near = slip_for(word, known_);
    if (!near.empty())
      review_.note(line, kind_ + (" " + in_quotes(word)) + " is new", "did you mean " + near + "?");
  }

 private:
  Review& review_;
  std::string kind_;
  const std::vector<std::string>& known_;
  std::set<std::string> said_;
};

std::vector<std::string> with_own(std::vector<std::string> jobs) {
  if (!jobs.empty()) jobs.emplace_back("own");
  return jobs;
}

bool turned(const Size& a, const Size& b) {
  return a.thickness == b.width && a.width == b.thickness;
}

/// 6x2 where 2x6 is known and 6x2 is not.
void check_turned_sizes(Review& review) {
  const auto& known = review.known.sizes;
  std::set<Size> said;
  for (const RunFacts& run : review.runs) {
    for (const Boards& boards : run.boards) {
      if (std::find(known.begin(), known.end(), boards.size) != known.end() ||
          !said.insert(boards.size).second)
        continue;
      const auto other =
          std::find_if(known.begin(), known.end(), [&](const Size& one) { return turned(one, boards.size); });
      if (other == known.end()) continue;
      review.note(
          *boards.line,
          "size " + in_quotes(measure::write_size(boards.size, review.known.metric)) + " is new",
          "did you mean " + measure::write_size(*other, review.known.metric) + "? Thickness comes first");
    }
  }
}

/// Teeth changed for a log that is none of the sheet's: the strike is charged to the log's owner.
void check_tooth_tags(Review& review) {
  std::set<std::string> tags;
  for (const RunFacts& run : review.runs) {
    for (const RunLog& log : run.logs) {
      if (!log.tag.empty()) tags.insert(lower(log.tag));
    }
  }
  if (tags.empty()) return;
  for (const Line& line : review.sheet.lines) {
    const auto* teeth = std::get_if<Teeth>(&line.fact);
    if (teeth == nullptr || teeth->log.empty() || tags.count(lower(teeth->log)) != 0) continue;
    review.note(line, "no log of this sheet is " + in_quotes(teeth->log));
  }
}

}  // namespace

void check_words(Review& review) {
  const std::vector<std::string> jobs = with_own(review.known.jobs);
  WordCheck job(review, "job", jobs);
  WordCheck species(review, "species", review.known.species);
  WordCheck grade(review, "grade", review.known.grades);
  WordCheck site(review, "site", review.known.sites);
  WordCheck saw(review, "saw", review.known.saws);
  for (const Line& line : review.sheet.lines) {
    if (const auto* of = std::get_if<Job>(&line.fact)) job.look(line, of->code);
    if (const auto* of = std::get_if<Charge>(&line.fact)) job.look(line, of->job);
    if (const auto* of = std::get_if<Stop>(&line.fact)) job.look(line, of->charge_job);
    if (const auto* of = std::get_if<Species>(&line.fact)) species.look(line, of->code);
    if (const auto* of = std::get_if<Grade>(&line.fact)) grade.look(line, of->code);
    if (const auto* of = std::get_if<Tally>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<RandomTally>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<LinealTally>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<Sold>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<Site>(&line.fact)) site.look(line, of->name);
    if (const auto* of = std::get_if<Move>(&line.fact)) site.look(line, of->to);
    if (const auto* of = std::get_if<Teeth>(&line.fact)) saw.look(line, of->saw);
  }
  check_turned_sizes(review);
  check_tooth_tags(review);
}

}  // namespace kerfbook::sheet
