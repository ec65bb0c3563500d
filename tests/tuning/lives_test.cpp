// lives_test.cpp -- survival curves, medians, means and the log-rank test against published examples.
#include "tuning/lives.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "tuning/boards_of.h"
#include "tuning/log_rank.h"

using kerfbook::test::to;
using namespace kerfbook::tuning;

namespace {

/// As print has them: "6 9+ 10", a plus for a life cut short.
std::vector<Life> lives(const std::string& text) {
  std::vector<Life> out;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = 0;
    const double length = std::stod(text.substr(at), &end);
    at += end;
    const bool ended = at >= text.size() || text[at] != '+';
    out.push_back({length, ended});
    while (at < text.size() && (text[at] == '+' || text[at] == ' ')) ++at;
  }
  return out;
}

struct Printed {
  double at, survival, error;
};

/// Each step's length, survival and error to the places print gives them.
void check_steps(const Survival& curve, const std::vector<Printed>& printed, int places, int error_places) {
  REQUIRE(curve.steps.size() == printed.size());
  for (std::size_t i = 0; i < printed.size(); ++i) {
    const auto& step = curve.steps[i];
    CHECK(step.at == printed[i].at);
    CHECK_MESSAGE(to(step.survival, places) == doctest::Approx(printed[i].survival), printed[i].at);
    if (printed[i].error == 0) continue;
    REQUIRE(step.error);
    CHECK_MESSAGE(to(*step.error, error_places) == doctest::Approx(printed[i].error), printed[i].at);
  }
}

const char* const kMaintained = "9 13 13+ 18 23 28+ 31 34 45+ 48 161+";
const char* const kNotMaintained = "5 5 8 8 12 16+ 23 27 30 33 43 45";
const char* const kSixMp = "6 6 6 7 10 13 16 22 23 6+ 9+ 10+ 11+ 17+ 19+ 20+ 25+ 32+ 32+ 34+ 35+";
const char* const kPlacebo = "1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23";

}  // namespace

TEST_CASE("twenty units, four taken off unfailed and ten still running") {
  // source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.1.5: 19/20, then x 18/19, then x 16/17
  const auto curve = survival_of(
      lives("10 32 56 98 122 181 50+ 100+ 125+ 150+ 200+ 200+ 200+ 200+ 200+ 200+ 200+ 200+ 200+ 200+"));
  REQUIRE(curve.steps.size() == 6);
  CHECK(curve.steps[0].survival == doctest::Approx(19.0 / 20));
  CHECK(curve.steps[1].survival == doctest::Approx(19.0 / 20 * 18 / 19));
  CHECK(curve.steps[2].survival == doctest::Approx(19.0 / 20 * 18 / 19 * 16 / 17));
  CHECK(to(curve.steps[5].survival, 4) == doctest::Approx(0.6704));
  const auto median = life_quantile(curve);
  CHECK_FALSE(median.at);
  CHECK_FALSE(median.upper);
  CHECK(curve.longest == 200);
  CHECK(curve.ended == 6);
}

TEST_CASE("at a tie the end counts before the life cut short, and the last end of all brings survival to 0") {
  const auto curve = survival_of(lives("1 1 4 5 6+ 9 9+ 22"));
  // source: V. Bewick, L. Cheek and J. Ball, Critical Care, 2004, table 2
  check_steps(curve, {{1, 0.750, 0}, {4, 0.625, 0}, {5, 0.500, 0}, {9, 0.333, 0}, {22, 0, 0}}, 3, 3);
  const std::vector<std::size_t> at_risk{8, 6, 5, 3, 1};
  for (std::size_t i = 0; i < 5; ++i) CHECK(curve.steps[i].at_risk == at_risk[i]);
  CHECK_FALSE(curve.steps.back().error);
  CHECK_FALSE(limits_at(curve.steps.back(), LimitsOn::plain));
  const auto median = life_quantile(curve);  // survival is 1/2 from 5 to 9
  CHECK(*median.at == 5);
  CHECK(*median.until == 9);
  CHECK(*survival_at(curve, 100) == 0);
}

TEST_CASE("weeks in remission: survival, Greenwood's errors and the median of a textbook's example") {
  const auto curve = survival_of(lives(kSixMp));
  // source: C. T. Le, Introductory Biostatistics, example 11.1 (data); the figures from memory
  check_steps(curve,
              {{6, .8571, .0764},
               {7, .8067, .0869},
               {10, .7529, .0963},
               {13, .6902, .1068},
               {16, .6275, .1141},
               {22, .5378, .1282},
               {23, .4482, .1346}},
              4, 4);
  CHECK(*life_quantile(curve).at == 23);
  CHECK(*life_quantile(curve, 0.75).at == 13);
  const auto median = life_quantile(curve, 0.5, LimitsOn::log);
  CHECK(*median.lower == 16);
  CHECK_FALSE(median.upper);
  CHECK(to(mean_life(curve)->mean, 2) == doctest::Approx(23.29));
  CHECK(to(mean_life(curve)->error, 2) == doctest::Approx(2.83));
  const auto plain = *limits_at(curve.steps[0], LimitsOn::plain);
  CHECK(to(plain.lower, 3) == doctest::Approx(0.707));  // 0.8571 - 1.96 x 0.0764
  CHECK(plain.upper == 1);
  const auto log_log = *limits_at(curve.steps[0], LimitsOn::log_log);
  CHECK(to(log_log.lower, 4) ==
        doctest::Approx(0.6197));  // source: from memory, J. P. Klein and M. L. Moeschberger
  CHECK(to(log_log.upper, 4) == doctest::Approx(0.9516));
}

TEST_CASE("two groups of a textbook: survival, errors, medians with their limits, means") {
  const auto kept = survival_of(lives(kMaintained));
  // source: R. G. Miller, Survival Analysis (data); figures of T. Therneau
  check_steps(kept,
              {{9, .909, .0867},
               {13, .818, .1163},
               {18, .716, .1397},
               {23, .614, .1526},
               {31, .491, .1642},
               {34, .368, .1627},
               {48, .184, .1535}},
              3, 4);
  const auto median = life_quantile(kept, 0.5, LimitsOn::log);
  CHECK(*median.at == 31);
  CHECK(*median.lower == 18);
  CHECK_FALSE(median.upper);
  const auto other = survival_of(lives(kNotMaintained));
  check_steps(other,
              {{5, .8333, 0},
               {8, .6667, 0},
               {12, .5833, 0},
               {23, .4861, 0},
               {27, .3889, 0},
               {30, .2917, 0},
               {33, .1944, 0},
               {43, .0972, 0},
               {45, 0, 0}},
              4, 4);
  const auto other_median = life_quantile(other, 0.5, LimitsOn::log);
  CHECK(*other_median.at == 23);
  CHECK(*other_median.lower == 8);
  CHECK_FALSE(other_median.upper);
  CHECK(to(mean_life(kept)->mean, 1) == doctest::Approx(52.6));  // source: from memory, T. Therneau
  CHECK(to(mean_life(kept)->error, 1) == doctest::Approx(19.8));
  CHECK(to(mean_life(other)->mean, 1) == doctest::Approx(22.7));
  CHECK(to(mean_life(other)->error, 2) == doctest::Approx(4.18));
}

TEST_CASE("log-rank of two groups") {
  // source: R. G. Miller, Survival Analysis (data); figures of T. Therneau
  const auto kept = log_rank({lives(kMaintained), lives(kNotMaintained)});
  REQUIRE(kept);
  CHECK(to(kept->chi_square, 3) == doctest::Approx(3.396));
  CHECK(to(kept->p, 2) == doctest::Approx(0.07));
  CHECK(kept->freedom == 1);
  CHECK(kept->groups[0].ended == 7);
  CHECK(to(kept->groups[0].expected, 2) == doctest::Approx(10.69));
  CHECK(to(kept->groups[1].expected, 2) == doctest::Approx(7.31));
  const auto glioma = log_rank({lives("6 13 21 30 37 38 49 50 63 79 86 98 202 219 31+ 47+ 80+ 82+ 82+ 149+"),
                                lives("10 10 12 13 14 15 16 17 18 20 24 24 25 28 30 33 35 37 40 40 46 48 76 "
                                      "81 82 91 112 181 34+ 40+ 70+")});
  // source: J. M. Bland and D. G. Altman, BMJ, 2004
  REQUIRE(glioma);
  CHECK(to(glioma->chi_square, 5) == doctest::Approx(7.49659));
  CHECK(to(glioma->p, 5) == doctest::Approx(0.00618));
  // source: from memory, E. J. Freireich and others, Blood, 1963 (chi-square 16.79, expected 19.25 and 10.75)
  const auto remission = log_rank({lives(kSixMp), lives(kPlacebo)});
  REQUIRE(remission);
  CHECK(to(remission->chi_square, 2) == doctest::Approx(16.79));
  CHECK(to(remission->groups[0].expected, 2) == doctest::Approx(19.25));
  CHECK(to(remission->groups[1].expected, 2) == doctest::Approx(10.75));
}

TEST_CASE("log-rank: three groups, groups split or swapped, and a group that never got to an end") {
  const auto three = log_rank({lives("1 3 5 7 9+"), lives("2 4 6 8 10"), lives("11 12 13+ 14")});
  REQUIRE(three);
  CHECK(three->freedom == 2);
  const auto swapped = log_rank({lives("11 12 13+ 14"), lives("1 3 5 7 9+"), lives("2 4 6 8 10")});
  CHECK(swapped->chi_square == doctest::Approx(three->chi_square).epsilon(1e-10));
  const auto with_idle =
      log_rank({lives("1 3 5 7 9+"), lives("2 4 6 8 10"), lives("11 12 13+ 14"), lives("0.5+ 0.7+"), {}});
  CHECK(with_idle->freedom == 2);
  CHECK(with_idle->chi_square == doctest::Approx(three->chi_square).epsilon(1e-10));
  CHECK(with_idle->groups[3].lives == 2);
  CHECK(with_idle->groups[3].expected == 0);
}

TEST_CASE("log-rank has nothing to say of one group, of no ends, or where all at risk ended at once") {
  CHECK_FALSE(log_rank({lives("1 2 3")}));
  CHECK_FALSE(log_rank({}));
  CHECK_FALSE(log_rank({lives("1+ 2+"), lives("3+ 4+")}));
  CHECK_FALSE(log_rank({lives("2 2"), lives("2 2 2")}));
  CHECK_FALSE(log_rank({lives("1 2 3"), {}}));
  const auto alike = log_rank({lives("1 2 3 4"), lives("1 2 3 4")});
  REQUIRE(alike);
  CHECK(alike->chi_square == doctest::Approx(0));
  CHECK(alike->p == doctest::Approx(1));
}

TEST_CASE(
    "a life cut short after the last end changes nothing; one cut short before the first lowers those at "
    "risk") {
  const auto plain = survival_of(lives("2 4 6 8+"));
  const auto longer = survival_of(lives("2 4 6 800+"));
  for (std::size_t i = 0; i < 3; ++i) CHECK(plain.steps[i].survival == longer.steps[i].survival);
  CHECK(survival_of(lives("1+ 2 4")).steps[0].at_risk == 2);
  CHECK(plain.steps[2].cut_short == 1);
}

TEST_CASE("no life ended, all ended at once, one life, no lives") {
  const auto none_ended = survival_of(lives("3+ 5+ 9+"));
  CHECK(none_ended.steps.empty());
  CHECK(*survival_at(none_ended, 9) == 1);
  CHECK_FALSE(survival_at(none_ended, 10));
  CHECK_FALSE(life_quantile(none_ended).at);
  CHECK(mean_life(none_ended)->mean == 9);
  CHECK(mean_life(none_ended)->error == 0);
  const auto at_once = survival_of(lives("5 5 5"));
  CHECK(at_once.steps.size() == 1);
  CHECK(at_once.steps[0].survival == 0);
  CHECK(*life_quantile(at_once).at == 5);
  CHECK_FALSE(life_quantile(at_once).lower);
  CHECK(mean_life(at_once)->mean == 5);
  CHECK(*life_quantile(survival_of(lives("7"))).at == 7);
  const auto none = survival_of({});
  CHECK(none.lives == 0);
  CHECK_FALSE(survival_at(none, 0));
  CHECK_FALSE(mean_life(none));
  CHECK_FALSE(life_quantile(none).at);
  const auto wrong = survival_of({{-1, true}, {std::nan(""), true}, {4, true}});
  CHECK(wrong.left_out == 2);
  CHECK(wrong.lives == 1);
}

TEST_CASE(
    "without lives cut short the curve is the share that lasts longer, its mean the mean, its error the "
    "binomial's") {
  CHECK(rc::check([] {
    const auto lengths = *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 30)));
    std::vector<Life> all;
    double sum = 0;
    for (const int length : lengths) {
      all.push_back({static_cast<double>(length), true});
      sum += length;
    }
    const auto n = static_cast<double>(lengths.size());
    const auto curve = survival_of(all);
    for (const auto& step : curve.steps) {
      const auto longer = std::count_if(lengths.begin(), lengths.end(), [&](int l) { return l > step.at; });
      const double share = static_cast<double>(longer) / n;
      RC_ASSERT(std::abs(step.survival - share) < 1e-12);
      if (step.error) RC_ASSERT(std::abs(*step.error - std::sqrt(share * (1 - share) / n)) < 1e-12);
    }
    RC_ASSERT(std::abs(mean_life(curve)->mean - sum / n) < 1e-9);
  }));
}

TEST_CASE("limits hold the survival between them, in every kind, and widen with the confidence") {
  const auto curve = survival_of(lives(kSixMp));
  for (const auto on : {LimitsOn::plain, LimitsOn::log, LimitsOn::log_log}) {
    for (const auto& step : curve.steps) {
      const auto usual = *limits_at(step, on), wide = *limits_at(step, on, 0.99);
      CHECK(usual.lower < step.survival);
      CHECK(usual.upper > step.survival);
      CHECK(wide.lower <= usual.lower);
      CHECK(wide.upper >= usual.upper);
      CHECK(wide.upper <= 1);
      CHECK(wide.lower >= 0);
    }
  }
  CHECK_FALSE(limits_at(curve.steps[0], LimitsOn::plain, 1));
}
