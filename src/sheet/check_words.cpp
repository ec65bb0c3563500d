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

/// What is said of a word that is near no known one.
enum class MerelyNew {
  said_by_book,  ///< when it adds the word to a table of its own
  noted,
  fine,
};

/// Says once of each word that it is near a known one, or new. Where nothing is known there is nothing to hold it
/// against. The words `usual` in any mill are never spoken of.
class WordCheck {
 public:
  WordCheck(Review& review, const char* kind, const std::vector<std::string>& known,
            MerelyNew merely = MerelyNew::said_by_book, const std::vector<std::string>& usual = {})
      : review_(review), kind_(kind), known_(known), usual_(usual), merely_(merely) {}

  void look(const Line& line, const std::string& word) {
    if (word.empty() || known_.empty() || !said_.insert(lower(word)).second) return;
    const auto is_word = [&](const std::string& one) { return same_word(one, word); };
    if (std::any_of(known_.begin(), known_.end(), is_word)) return;
    if (std::any_of(usual_.begin(), usual_.end(), is_word)) return;
    const std::string near = slip_for(word, known_);
    if (near.empty() && merely_ != MerelyNew::noted) return;
    review_.note(line, kind_ + (" " + in_quotes(word)) + " is new",
                 near.empty() ? "" : "did you mean " + near + "?");
  }

 private:
  Review& review_;
  std::string kind_;
  const std::vector<std::string>& known_;
  std::vector<std::string> usual_;
  MerelyNew merely_;
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

/// `sold cash YP 2x6 ...`: a species or a grade before the size is read as part of the buyer's name.
void check_buyers(Review& review) {
  const auto among = [](const std::vector<std::string>& known, const std::string& word) {
    return std::any_of(known.begin(), known.end(), [&](const auto& one) { return same_word(one, word); });
  };
  for (const Line& line : review.sheet.lines) {
    const auto* sold = std::get_if<Sold>(&line.fact);
    if (sold == nullptr) continue;
    const auto words = split_words(sold->buyer);
    if (words.size() < 2 || among(review.known.buyers, sold->buyer)) continue;
    const std::string& last = words.back();
    const std::string buyer = join({words.begin(), words.end() - 1}, " ");
    const std::string what = in_quotes(sold->buyer) + ": all of it is read as the buyer's name";
    if (among(review.known.grades, last)) {
      review.warn(line, what, "a grade stands after the size, as 2x6 " + last + " 6/16");
    } else if (among(review.known.species, last) || same_word(words.front(), "cash")) {
      review.warn(line, what,
                  "the buyer alone is " + buyer + "; a species has its line above, as species " + last);
    }
  }
}

}  // namespace

void check_words(Review& review) {
  const std::vector<std::string> jobs = with_own(review.known.jobs);
  WordCheck job(review, "job", jobs);
  WordCheck species(review, "species", review.known.species);
  WordCheck grade(review, "grade", review.known.grades);
  WordCheck site(review, "site", review.known.sites);
  WordCheck setup(review, "set-up", review.known.setups, MerelyNew::fine);
  WordCheck saw(review, "saw", review.known.saws, MerelyNew::noted, {"head", "edger", "third"});
  WordCheck hand(review, "hand", review.known.hands, MerelyNew::noted);
  WordCheck cause(review, "stop cause", review.known.causes, MerelyNew::noted,
                  {"metal", "waiting", "belt", "belts", "hydraulic", "hydraulics", "teeth", "saw", "engine",
                   "jam", "weather", "rain", "service"});
  WordCheck tooth_cause(review, "tooth cause", review.known.tooth_causes, MerelyNew::noted,
                        {"metal", "stone", "wear", "dull", "grit", "rot"});
  WordCheck buyer(review, "buyer", review.known.buyers, MerelyNew::noted, {"cash"});
  WordCheck charge(review, "charge", review.known.charges, MerelyNew::noted);
  for (const Line& line : review.sheet.lines) {
    if (const auto* of = std::get_if<Job>(&line.fact)) job.look(line, of->code);
    job.look(line, named_job(line.fact));
    if (const auto* of = std::get_if<Species>(&line.fact)) species.look(line, of->code);
    if (const auto* of = std::get_if<Grade>(&line.fact)) grade.look(line, of->code);
    if (const auto* of = std::get_if<Tally>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<RandomTally>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<LinealTally>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<Sold>(&line.fact)) grade.look(line, of->grade);
    if (const auto* of = std::get_if<Site>(&line.fact)) site.look(line, of->name);
    if (const auto* of = std::get_if<Move>(&line.fact)) site.look(line, of->to);
    if (const auto* of = std::get_if<Move>(&line.fact)) site.look(line, of->from);
    if (const auto* of = std::get_if<Setup>(&line.fact)) setup.look(line, of->name);
    if (const auto* of = std::get_if<Stop>(&line.fact)) cause.look(line, of->cause);
    if (const auto* of = std::get_if<Sold>(&line.fact)) buyer.look(line, of->buyer);
    if (const auto* of = std::get_if<Charge>(&line.fact)) charge.look(line, of->name);
    if (const auto* of = std::get_if<Teeth>(&line.fact)) {
      saw.look(line, of->saw);
      tooth_cause.look(line, of->cause);
    }
    if (const auto* of = std::get_if<Crew>(&line.fact)) {
      for (const Hand& one : of->hands) hand.look(line, one.name);
    }
  }
  check_buyers(review);
  check_turned_sizes(review);
  check_tooth_tags(review);
}

}  // namespace kerfbook::sheet
