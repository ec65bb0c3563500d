#include "tuning/saw_arithmetic.h"

#include <numbers>

namespace kerfbook::tuning {

namespace {

double over(double above, double below) {
  return below > 0 ? above / below : 0;
}

}  // namespace

double rim_speed(double diameter_inches, double rpm) {
  return std::numbers::pi * diameter_inches * rpm / 12;
}

double rpm_for_rim_speed(double diameter_inches, double feet_a_minute) {
  return over(feet_a_minute * 12, std::numbers::pi * diameter_inches);
}

double bite(double feed_feet_a_minute, double teeth, double rpm) {
  return over(feed_feet_a_minute * 12, teeth * rpm);
}

double feed_for_bite(double bite_inches, double teeth, double rpm) {
  return bite_inches * teeth * rpm / 12;
}

double cutting_hours(double feet_of_cut, double feed_feet_a_minute) {
  return over(feet_of_cut, feed_feet_a_minute * 60);
}

double feed_over_run(double feet_of_cut, double hours, double share_in_wood) {
  return over(feet_of_cut, hours * share_in_wood * 60);
}

TimeInWood time_in_wood(double feet_of_boards, double feed_feet_a_minute, double run_hours) {
  return {cutting_hours(feet_of_boards, feed_feet_a_minute), run_hours};
}

double bf_an_hour(double minutes_per_mbf) {
  return over(60'000, minutes_per_mbf);
}

double minutes_per_mbf(double bf_an_hour) {
  return over(60'000, bf_an_hour);
}

}  // namespace kerfbook::tuning
