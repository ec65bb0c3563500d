// check_jobs.cpp -- rules about which job and which place a line is put under: what is no job's and could be charged,
// and lines that a reader of the sheet may take for another job's or another place's than they are. See sheet.h.
#include <algorithm>
#include <map>

#include "base/text.h"
#include "sheet/check_rules.h"

namespace kerfbook::sheet {
namespace {

constexpr const char* kNameItself = " at its end, or put it below its job's line";

/// The job named next below a line; else the last one above it. Empty when the sheet names none.
std::string job_near(const Sheet& sheet, const Line& line) {
  std::string near;
  for (const Line& one : sheet.lines) {
    const auto* job = std::get_if<Job>(&one.fact);
    if (job == nullptr || job->code == "own") continue;
    near = job->code;
    if (one.place.line > line.place.line) break;
  }
  return near;
}

/// What a line is called when it is no job's.
std::string words_of(const Fact& fact) {
  if (const auto* sawing = std::get_if<Sawing>(&fact)) {
    int minutes = 0;
    for (const Span& span : sawing->spans) minutes += span.minutes();
    return "sawing of " + write_duration(minutes);
  }
  if (const auto* stop = std::get_if<Stop>(&fact))
    return "a stop for " + stop->cause + (stop->charge ? ", marked to be charged," : "");
  if (std::holds_alternative<Teeth>(fact)) return "teeth or blade lost to metal";
  if (const auto* move = std::get_if<Move>(&fact)) return "the move to " + move->to;
  return std::holds_alternative<LogLine>(fact) ? "logs" : "boards";
}

bool can_name_job(const Fact& fact) {
  Fact copy = fact;
  return job_named_at_end(copy) != nullptr;
}

/// Each line that could be charged and is no job's; logs once, and boards once.
void check_unplaced(Review& review, const std::vector<std::string>& jobs) {
  bool logs_told = false;
  bool boards_told = false;
  for (const DatedFact& fact : review.facts) {
    const Fact& line = fact.line->fact;
    if (fact.item > 0 || !fact.context.job.empty() || !could_be_charged(line)) continue;
    if (is_work(line)) {
      bool& told = std::holds_alternative<LogLine>(line) ? logs_told : boards_told;
      if (told) continue;
      told = true;
    }
    const std::string near = job_near(review.sheet, *fact.line);
    const std::string who = near.empty() ? jobs.front() : near;
    const bool first =
        std::none_of(review.sheet.lines.begin(), review.sheet.lines.end(), [&](const Line& one) {
          return std::holds_alternative<Job>(one.fact) && one.place.line < fact.line->place.line;
        });
    review.warn(*fact.line,
                words_of(line) + (is_work(line) ? " stand" : " stands") +
                    (first ? " above the first job, and the day has several: no job's"
                           : " at a new place above job " + who + ": no job's"),
                can_name_job(line) ? "write , job " + who + kNameItself
                                   : "write job " + who + " above, or the job whose they are");
  }
}

/// A sheet that names no job where the book has jobs, and whatever is marked to be charged on a sheet without one.
void check_no_job(Review& review) {
  bool told = review.known.jobs.empty();
  for (const DatedFact& fact : review.facts) {
    const Fact& line = fact.line->fact;
    if (fact.item > 0 || !fact.context.job.empty() || !could_be_charged(line)) continue;
    const auto* stop = std::get_if<Stop>(&line);
    if (stop != nullptr && stop->charge) {
      review.warn(*fact.line, words_of(line) + " is no job's, and the sheet names none",
                  "write , job CODE at its end, the job that pays");
    } else if (!told) {
      told = true;
      review.warn(*fact.line,
                  "the sheet names no job, so nothing on it is billed or counted as the mill's own",
                  "write job CODE above, or job own");
    }
  }
}

/// A charge mark under the mill's own work asks nobody.
void check_charged_own(Review& review) {
  for (const DatedFact& fact : review.facts) {
    const auto* stop = std::get_if<Stop>(&fact.line->fact);
    if (stop == nullptr || !stop->charge || fact.context.job != "own") continue;
    const std::string near = job_near(review.sheet, *fact.line);
    review.warn(
        *fact.line, words_of(*stop) + " is under job own, which nobody pays",
        "write , job " + (near.empty() ? std::string("CODE") : near) + " at its end, or leave charge out");
  }
}

/// A move in the heading, after a place was named at which nothing was done: all the work is put where it went.
void check_heading_move(Review& review) {
  const Line* move = nullptr;
  std::string left;
  for (const Line& line : review.sheet.lines) {
    const bool work = is_work(line.fact) || std::holds_alternative<Sawing>(line.fact);
    const auto* site = std::get_if<Site>(&line.fact);
    if (move == nullptr && work) return;
    if (move != nullptr && site != nullptr) return;  // the place is said again
    if (site != nullptr) left = site->name;
    if (const auto* of = std::get_if<Move>(&line.fact); of != nullptr && move == nullptr) {
      if (left.empty() || same_word(left, of->to)) return;
      move = &line;
    }
    if (move == nullptr || !work) continue;
    review.warn(*move,
                "all the work below is put at " + std::get<Move>(move->fact).to + ", and none at " + left,
                "if the move came after the work, put it below it");
    return;
  }
}

/// A move on the way from one customer's job to another's is the one's it stands under.
void check_moves_between(Review& review) {
  const auto& lines = review.sheet.lines;
  for (const DatedFact& fact : review.facts) {
    const auto* move = std::get_if<Move>(&fact.line->fact);
    if (move == nullptr || !move->job.empty() || fact.context.job.empty()) continue;
    const auto next = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
      return line.place.line > fact.line->place.line &&
             (is_work(line.fact) || std::holds_alternative<Job>(line.fact));
    });
    const auto* to = next == lines.end() ? nullptr : std::get_if<Job>(&next->fact);
    if (to == nullptr || to->code == "own" || same_word(to->code, fact.context.job)) continue;
    review.warn(*fact.line,
                "the move to " + move->to + " is job " + fact.context.job + "'s, under which it stands",
                "write , job " + to->code + " at its end if it is job " + to->code + "'s");
  }
}

/// Hours of one job alone, logs or boards of two: the other's may stand under it.
void check_sawing_of_jobs(Review& review) {
  std::map<std::string, int> minutes;
  std::map<std::string, bool> worked;
  for (const DatedFact& fact : review.facts) {
    const std::string job = lower(fact.context.job);
    if (is_work(fact.line->fact) && could_be_charged(fact.line->fact)) worked[job] = true;
    const auto* sawing = std::get_if<Sawing>(&fact.line->fact);
    if (sawing == nullptr) continue;
    if (job.empty()) return;  // told already
    for (const Span& span : sawing->spans) minutes[job] += span.minutes();
  }
  if (minutes.empty()) return;
  const auto most = std::max_element(minutes.begin(), minutes.end(),
                                     [](const auto& a, const auto& b) { return a.second < b.second; });
  std::string other = most->first;
  for (const std::string& job : jobs_of(review.sheet))
    if (same_word(job, other)) other = job;
  for (const Line& line : review.sheet.lines) {
    const auto* job = std::get_if<Job>(&line.fact);
    if (job == nullptr || minutes.count(lower(job->code)) != 0 || !worked[lower(job->code)]) continue;
    worked[lower(job->code)] = false;
    review.warn(line,
                "job " + job->code + " has logs or boards and no sawing time; job " + other + " has " +
                    write_duration(most->second),
                "put its sawing below this line, or write , job " + job->code + " at the end of it");
  }
}

}  // namespace

void check_jobs(Review& review) {
  const std::vector<std::string> jobs = jobs_of(review.sheet);
  if (jobs.empty()) check_no_job(review);
  if (jobs.size() > 1) {
    check_unplaced(review, jobs);
    check_moves_between(review);
    check_sawing_of_jobs(review);
  }
  check_charged_own(review);
  check_heading_move(review);
}

}  // namespace kerfbook::sheet
