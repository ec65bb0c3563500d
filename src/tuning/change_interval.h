// change_interval.h -- when to change or sharpen: the interval that costs least by the record of lives, and by how the mill slows as
// teeth dull. Statistics are doubles: nothing here is stored or billed.
#pragma once

#include <optional>
#include <vector>

#include "tuning/lives.h"

namespace kerfbook::tuning {

/// Changing at a length, or before it when the life ends sooner.
struct ChangeCost {
  double every = 0;      ///< the planned length of use, in the unit of the lives
  double cost_rate = 0;  ///< cost for each unit of use, in the long run
  double reached = 0;    ///< share of changes that come as planned
};

struct ChangeInterval {
  std::vector<ChangeCost>
      candidates;  ///< in order of length: just before each length at which a life ended, and the longest life
  std::size_t best = 0;  ///< which of them costs least; of equals the longest
  /// Never changing by plan: cost of an unplanned change over the mean life. nullopt while some lives outlast the record.
  std::optional<double> never;
  bool plan_pays = false;  ///< the best costs less than never changing by plan, as far as the record goes
};
/// `planned` and `unplanned` are what one change costs of either kind, time lost included; both above 0. In `curve` a planned
/// change is a life cut short. Between two steps the cost only falls, so only those lengths can be best; with few
/// lives the best one moves much from one record to the next. nullopt of a curve without a step above 0, or of costs not
/// above 0. Source: age replacement, R. E. Barlow and F. Proschan, 1965 (from memory).
std::optional<ChangeInterval> change_interval(const Survival& curve, double planned, double unplanned);

/// One change, in whole money: when it is planned, and when dull teeth force it.
struct ChangeCosts {
  double planned = 0;
  double forced = 0;
};
/// Either puts in so many teeth and takes so many minutes: by plan of one hand while the mill stands anyway, forced of the
/// whole mill. Hours at what they cost.
ChangeCosts change_costs(double teeth, double price_of_tooth, double minutes, double crew_hour,
                         double sawing_hour);

/// The mill's pace since it was last sharpened, as a line: `sharp` bf an hour at first, changing by `change` for each bf sawn since.
struct Pace {
  double sharp = 0;
  double change = 0;  ///< bf an hour for each bf; negative when the mill slows
};

struct SharpenInterval {
  double every_bf = 0;      ///< bf between sharpenings that costs least
  double cost_per_mbf = 0;  ///< sharpening and sawing time together, there
  bool past_record =
      false;  ///< still falling at `most_bf`: nothing in the record says to sharpen sooner; `every_bf` is `most_bf`
};
/// `cost_of_sharpening` is one sharpening with the time it takes, `cost_of_hour` a sawing hour, both above 0; `most_bf` the
/// longest interval of the record, above 0. Sawing x bf takes the integral of 1 / pace. nullopt when an argument is not above 0 (or
/// finite) or the line is down to 0 within the record.
std::optional<SharpenInterval> sharpen_interval(const Pace& pace, double cost_of_sharpening,
                                                double cost_of_hour, double most_bf);

}  // namespace kerfbook::tuning
