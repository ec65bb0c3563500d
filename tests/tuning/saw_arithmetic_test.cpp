// saw_arithmetic_test.cpp -- rim speed, bite, feed and time in wood.
#include "tuning/saw_arithmetic.h"

#include <doctest/doctest.h>

#include <string>

using namespace kerfbook::tuning;

// source: from memory (the pairs of diameter and speed; the figures are geometry)
TEST_CASE("48 in at 750 and 60 in at 600 turns a minute have the same rim speed, 9,424.8 ft a minute") {
  CHECK(rim_speed(48, 750) == doctest::Approx(9424.8).epsilon(0.00001));
  CHECK(rim_speed(60, 600) == doctest::Approx(9424.8).epsilon(0.00001));
  CHECK(rpm_for_rim_speed(48, 9424.778) == doctest::Approx(750).epsilon(0.00001));
}

TEST_CASE(
    "40 teeth at 600 turns with a bite of 1/8 in want 250 ft a minute, and at that feed the bite is 1/8 in") {
  CHECK(feed_for_bite(0.125, 40, 600) == doctest::Approx(250));
  CHECK(bite(250, 40, 600) == doctest::Approx(0.125));
  CHECK(bite(250, 20, 600) == doctest::Approx(0.25));  // half the teeth, each takes twice as much
}

// source: R. D. Garver and R. H. Miller, Forest Products Laboratory, 1933
TEST_CASE("14.3 and 8.4 minutes for a thousand board feet are 4,196 and 7,143 an hour, 70 % more") {
  CHECK(bf_an_hour(14.3) == doctest::Approx(4196).epsilon(0.0002));
  CHECK(bf_an_hour(8.4) == doctest::Approx(7143).epsilon(0.0001));
  CHECK(100 * (bf_an_hour(8.4) / bf_an_hour(14.3) - 1) == doctest::Approx(70).epsilon(0.005));
  CHECK(minutes_per_mbf(bf_an_hour(14.3)) == doctest::Approx(14.3));
}

TEST_CASE(
    "109 boards, 1,394 ft of them, at 60 ft a minute: 23 minutes in wood, 6.2 % of six and a quarter hours") {
  const auto time = time_in_wood(1394, 60, 6.25);
  CHECK(time.cutting_hours * 60 == doctest::Approx(23.2333).epsilon(0.0001));
  CHECK(time.percent() == doctest::Approx(6.1956).epsilon(0.0001));
  CHECK(feed_over_run(1394, 6.25, time.percent() / 100) == doctest::Approx(60));
}

TEST_CASE("a saw that stands, or has no teeth, or no hours: 0, not a division by nothing") {
  CHECK(bite(60, 0, 600) == 0);
  CHECK(bite(60, 40, 0) == 0);
  CHECK(cutting_hours(100, 0) == 0);
  CHECK(time_in_wood(100, 60, 0).percent() == 0);
  CHECK(bf_an_hour(0) == 0);
  CHECK(rpm_for_rim_speed(0, 9000) == 0);
}

TEST_CASE("the caution names the plate, the saw's maker and the mill's") {
  const std::string words = kSpeedCaution;
  CHECK(words.find("etched on the saw") != std::string::npos);
  CHECK(words.find("its maker and the mill's") != std::string::npos);
}
