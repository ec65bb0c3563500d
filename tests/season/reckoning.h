// reckoning.h -- a whole book reckoned from its sheets and mill file: what every report, draft and paper should say.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "mill.h"
#include "tables.h"

namespace reckoning {

/// All of a sheet with one site, job, species and set-up: the smallest thing of which logs in and boards out are known.
struct Run {
  Date day;
  int shift = 1;
  std::string site, job, species;
  std::string named_setup;  ///< in this sheet
  std::string setup;        ///< or carried over from earlier days
  std::string rule;
  std::int64_t logs = 0, unscaled = 0, lines = 0, pieces = 0;
  Fraction gross, net, content, lumber, wood;
  [[nodiscard]] bool sawn() const { return logs > 0 || lines > 0; }
  /// The runs that overrun and recovery count: every log has a scale, and lumber came of them.
  [[nodiscard]] bool counted() const { return logs > 0 && unscaled == 0 && Fraction(0) < lumber; }
};

struct Filter {
  std::string job, customer, species, site;  ///< empty = all
  [[nodiscard]] bool none() const {
    return job.empty() && customer.empty() && species.empty() && site.empty();
  }
};

struct Period {
  Date from;
  Date to;  ///< the last day of it
  [[nodiscard]] bool has(const Date& day) const { return !(day < from) && !(to < day); }
};

enum class By { day, week, month, year };
enum class Cut { run, job, setup, species };

class Reckoning {
 public:
  /// `rule`: all logs by this rule, whatever their jobs have.
  Reckoning(const Mill& mill, std::vector<Sheet> sheets, std::string rule = {});

  [[nodiscard]] const std::vector<Run>& runs() const { return runs_; }
  [[nodiscard]] const std::vector<Sheet>& sheets() const { return sheets_; }
  [[nodiscard]] const Mill& mill() const { return mill_; }
  [[nodiscard]] std::string rule_of(const std::string& job) const {
    return rule_.empty() ? mill_.rule_of(job) : rule_;
  }

  [[nodiscard]] Table production(By by, const Period& period, const Filter& filter = {}) const;
  [[nodiscard]] Table overrun(Cut cut, const Period& period, const Filter& filter = {}) const;
  [[nodiscard]] std::vector<Table> overrun_by_diameter(const Period& period) const;
  [[nodiscard]] Table tally(const Period& period, const Filter& filter = {}) const;
  [[nodiscard]] std::vector<Table> cut_list(const Period& period) const;
  [[nodiscard]] std::vector<Table> deck(const Period& period, const Date& today) const;
  [[nodiscard]] std::vector<Table> stock(const Period& period) const;
  [[nodiscard]] Table rates(const Period& period) const;
  [[nodiscard]] std::vector<Table> cost(const Period& period) const;
  [[nodiscard]] Table fuel(const Period& period) const;
  [[nodiscard]] std::vector<Table> downtime(const Period& period) const;
  [[nodiscard]] std::vector<Table> teeth(const Period& period) const;
  [[nodiscard]] std::vector<Table> crew(const Period& period) const;
  [[nodiscard]] std::vector<Table> moves(const Period& period) const;
  [[nodiscard]] std::vector<Table> year(const Period& period) const;
  [[nodiscard]] std::vector<Table> ownership(const Period& period) const;
  [[nodiscard]] std::vector<Table> day(const Date& date) const;

  /// A job's paid time, in hours by day: its own, and of what stands under no job its part by sawing time. What stands
  /// under no job on a day without sawing stays there (the empty job).
  [[nodiscard]] std::map<Date, Fraction> crew_hours_of(const std::string& job) const;

 private:
  void make_runs();
  /// Does it stand where some log or board of the sheet stands?
  [[nodiscard]] bool in_a_run(const Sheet& sheet, const Stand& at) const;
  [[nodiscard]] Table teeth_by_cause(const Period& period) const;
  [[nodiscard]] Table teeth_by_species(const Period& period) const;
  /// The lumber of this and some periods before it, up to the last day asked for, over the number of those in which
  /// something was sawn.
  [[nodiscard]] Cell rolling_mean(By by, const Date& first, const Date& last, const Filter& filter) const;
  [[nodiscard]] bool fits(const Filter& filter, const std::string& job, const std::string& species,
                          const std::string& site) const;
  [[nodiscard]] std::vector<const Sheet*> in(const Period& period) const;
  [[nodiscard]] std::vector<const Run*> in(const Period& period, const Filter& filter) const;

  const Mill& mill_;
  std::string rule_;
  std::vector<Sheet> sheets_;
  std::vector<Run> runs_;
};

}  // namespace reckoning
