// saw_arithmetic.h -- the arithmetic of a circular saw: rim speed, bite, feed, and how much of a day the saw is in wood.
// The figures describe a saw; they do not say how fast it may turn. Keep to the speed that is etched on the plate and to
// the limits of the saw's and the mill's makers, whatever comes out here.
// Source of the formulas: geometry (a circle's way in a minute, a tooth's share of the feed). All are doubles: nothing
// here is stored or billed. What divides by nothing gives 0.
#pragma once

namespace kerfbook::tuning {

/// The words to be shown beside every speed.
inline constexpr const char* kSpeedCaution =
    "Keep to the speed etched on the saw and to the limits of its maker and the mill's; these figures only "
    "describe.";

/// Feet a minute at the rim: pi x diameter (in) x revolutions a minute / 12.
double rim_speed(double diameter_inches, double rpm);
/// Revolutions a minute at which the rim goes so fast.
double rpm_for_rim_speed(double diameter_inches, double feet_a_minute);

/// Inches of wood each tooth takes: feed (feet a minute) x 12 / (teeth x revolutions a minute).
double bite(double feed_feet_a_minute, double teeth, double rpm);
/// Feet a minute at which each tooth takes `bite_inches`: bite x teeth x revolutions a minute / 12.
double feed_for_bite(double bite_inches, double teeth, double rpm);

/// Hours in which a saw fed so fast goes through so many feet of cut.
double cutting_hours(double feet_of_cut, double feed_feet_a_minute);
/// The mean feed, feet a minute, if the saw was in wood for that share (0 to 1) of the hours.
double feed_over_run(double feet_of_cut, double hours, double share_in_wood = 1);

/// How much of the run the saw is in wood.
struct TimeInWood {
  double cutting_hours = 0;
  double run_hours = 0;
  [[nodiscard]] double percent() const { return run_hours > 0 ? 100 * cutting_hours / run_hours : 0; }
};
/// On a mill that frees a board a pass either saw goes once through the length of each board: `feet_of_boards` is the
/// lineal tally with trim, and with the passes that gave only a slab, if those are known.
TimeInWood time_in_wood(double feet_of_boards, double feed_feet_a_minute, double run_hours);

/// Board feet an hour of a mill that takes so many minutes for a thousand, and the other way round.
double bf_an_hour(double minutes_per_mbf);
double minutes_per_mbf(double bf_an_hour);

}  // namespace kerfbook::tuning
