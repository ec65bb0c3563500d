#include "reckoning.h"

#include <algorithm>
#include <tuple>

#include "measures.h"

namespace reckoning {
namespace {

/// The set-ups in the order of the book: which is in force, and how much over nominal each was last said to cut.
class Setups {
 public:
  /// Up to this place of its sheet.
  void go_on(const Sheet& sheet, int place) {
    for (; next_ < sheet.setups.size() && sheet.setups[next_].at.place <= place; ++next_) {
      const Setup& setup = sheet.setups[next_];
      now_ = setup.name;
      if (setup.over) over_[setup.name] = setup.over;
    }
  }
  void begin_sheet() {
    next_ = 0;
    before_ = now_;
  }
  [[nodiscard]] std::optional<Fraction> over() const {
    const auto at = over_.find(now_);
    return at == over_.end() ? std::nullopt : at->second;
  }
  [[nodiscard]] const std::string& before() const { return before_; }

 private:
  std::size_t next_ = 0;
  std::string now_, before_;
  std::map<std::string, std::optional<Fraction>> over_;
};

}  // namespace

Reckoning::Reckoning(const Mill& mill, std::vector<Sheet> sheets, std::string rule)
    : mill_(mill), rule_(std::move(rule)), sheets_(std::move(sheets)) {
  lend_measures(sheets_);
  make_runs();
}

void Reckoning::make_runs() {
  Setups setups;
  for (const auto& sheet : sheets_) {
    setups.begin_sheet();
    const std::size_t first = runs_.size();
    const auto run_of = [&](const Stand& at) -> Run& {
      const auto found =
          std::find_if(runs_.begin() + static_cast<std::ptrdiff_t>(first), runs_.end(), [&](const Run& r) {
            return std::tie(r.site, r.job, r.species, r.named_setup) ==
                   std::tie(at.site, at.job, at.species, at.setup);
          });
      if (found != runs_.end()) return *found;
      Run run;
      run.day = sheet.day;
      run.shift = sheet.shift;
      run.site = at.site;
      run.job = at.job;
      run.species = at.species;
      run.named_setup = at.setup;
      run.setup = at.setup.empty() ? setups.before() : at.setup;
      run.rule = rule_of(at.job);
      return runs_.emplace_back(run);
    };
    // in the order of the day, since a run begins with its first log or board
    std::vector<std::pair<int, std::function<void()>>> work;
    for (const auto& log : sheet.logs)
      work.emplace_back(log.at.place, [&, one = &log] {
        Run& run = run_of(one->at);
        if (one->state != Log::State::sawn) return;
        ++run.logs;
        if (one->measure) run.content += content_of(*one->measure, mill_.trim);
        if (const auto scale = scale_of(*one, run.rule)) {
          run.gross += scale->gross;
          run.net += scale->net;
        } else {
          ++run.unscaled;
        }
      });
    for (const auto& boards : sheet.boards)
      work.emplace_back(boards.at.place, [&, one = &boards] {
        setups.go_on(sheet, one->at.place);
        Run& run = run_of(one->at);
        ++run.lines;
        run.pieces += one->pieces;
        run.lumber += lumber_of(*one);
        std::optional<Section> target;
        if (const auto job = mill_.jobs.find(one->at.job); job != mill_.jobs.end())
          if (const auto size = job->second.targets.find(one->section.name);
              size != job->second.targets.end())
            target = size->second;
        run.wood += wood_of(*one, setups.over(), target);
      });
    std::stable_sort(work.begin(), work.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [place, deed] : work) deed();
    setups.go_on(sheet, 1'000'000'000);
  }
}

bool Reckoning::fits(const Filter& filter, const std::string& job, const std::string& species,
                     const std::string& site) const {
  return (filter.job.empty() || filter.job == job) &&
         (filter.customer.empty() || filter.customer == mill_.customer_of(job)) &&
         (filter.species.empty() || filter.species == species) &&
         (filter.site.empty() || filter.site == site);
}

std::vector<const Sheet*> Reckoning::in(const Period& period) const {
  std::vector<const Sheet*> some;
  for (const auto& sheet : sheets_)
    if (period.has(sheet.day)) some.push_back(&sheet);
  return some;
}

std::vector<const Run*> Reckoning::in(const Period& period, const Filter& filter) const {
  std::vector<const Run*> some;
  for (const auto& run : runs_)
    if (period.has(run.day) && fits(filter, run.job, run.species, run.site)) some.push_back(&run);
  return some;
}

std::map<Date, Fraction> Reckoning::crew_hours_of(const std::string& job) const {
  std::map<Date, int> own, free, sawn, all_sawn;
  for (const auto& sheet : sheets_) {
    for (const auto& hand : sheet.crew) {
      if (hand.at.job.empty())
        free[sheet.day] += hand.minutes;
      else if (hand.at.job == job)
        own[sheet.day] += hand.minutes;
    }
    for (const auto& span : sheet.sawing) {
      if (span.at.job == job) sawn[sheet.day] += span.minutes;
      all_sawn[sheet.day] += span.minutes;
    }
  }
  std::map<Date, Fraction> hours;
  for (const auto& [day, minutes] : own) hours[day] += Fraction(minutes, 60);
  for (const auto& [day, minutes] : free) {
    if (all_sawn[day] == 0) {
      if (job.empty()) hours[day] += Fraction(minutes, 60);
    } else if (sawn[day] != 0) {
      hours[day] += Fraction(sawn[day], all_sawn[day]) * Fraction(minutes, 60);
    }
  }
  return hours;
}

}  // namespace reckoning
