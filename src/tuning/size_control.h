// size_control.h -- caliper readings board by board: how far the sizes are spread and in what sense, what size to set for a
// chosen share of undersize, and what is cut oversize today. Statistics are doubles: nothing here is stored or billed.
//
// A size may be in inches or millimetres; what comes out is in the unit that went in. Publications split the spread in
// different ways (T. D. Brown, EM 8731, 2000, prints the standard deviation of board averages, other authors the variance
// component), so each figure has a name of its own and a printed one has to be given with it.
#pragma once

#include <optional>
#include <vector>

namespace kerfbook::tuning {

/// The readings along one board.
using BoardReadings = std::vector<double>;

/// How far sizes are spread, of some boards of one size. What cannot be worked out is nullopt, never 0.
struct SizeSpread {
  std::size_t boards = 0;    ///< with at least one reading; boards without are left out
  std::size_t readings = 0;  ///< of all boards
  double mean = 0;           ///< of all readings, each counted once; 0 of none

  /// Within boards (SW): root of the squares about each board's own mean over the sum of its readings less one, which with as
  /// many readings a board is the root of the mean within-board variance. nullopt when no board has two readings.
  std::optional<double> within;

  /// Between boards, first sense (SB of EM 8731): standard deviation of the board means, each board counted once. It still
  /// holds a share of the spread within boards. nullopt of fewer than two boards.
  std::optional<double> of_board_means;
  /// Between boards, second sense: root of the variance component of a one-way analysis of variance, that is what boards
  /// differ in beyond what their readings explain. nullopt without `within` or of fewer than two boards.
  std::optional<double> between_component;
  /// The component came out negative: the board means differ by less than the readings alone would make them. It is then
  /// given as 0, and this is true.
  bool component_was_negative = false;

  /// Total, first sense (ST of EM 8731): standard deviation of all readings. nullopt of fewer than two.
  std::optional<double> of_all_readings;
  /// Total, second sense: root of the summed components, within and between. nullopt where either is.
  std::optional<double> of_components;

  /// The analysis of variance behind the components: mean squares and their ratio. nullopt without their freedom; the
  /// ratio also where the boards have no spread within.
  std::optional<double> between_mean_square;
  std::optional<double> within_mean_square;
  std::optional<double> variance_ratio;
};
/// The component with unequal numbers of readings is (between - within mean square) / n0 with
/// n0 = (N - sum n^2 / N) / (boards - 1). Sources: EM 8731 for SW, SB and ST; the component from memory (one-way analysis of
/// variance, random boards).
SizeSpread spread_of(const std::vector<BoardReadings>& boards);

/// Standard deviations above the critical size that leave `undersize_share` (more than 0 and less than 1) of a normal spread
/// below it; negative over one half. nullopt for a share outside. EM 8731, table 2, prints it to two places.
std::optional<double> deviations_for(double undersize_share);

/// How the allowance for shrinkage enters the critical size.
enum class Shrinkage {
  added,   ///< a size that is added: final + planing + shrinkage (T. D. Brown, EM 8731, 2000)
  divided  ///< a share of the green size: (final + planing) / (1 - shrinkage) (from memory)
};

/// What a board must still be when all is done with it.
struct FinishedSize {
  double final_size = 0;  ///< the least size it may have when sold or used
  double planing = 0;     ///< taken off by planing, both faces; 0 when sold rough
  double shrinkage = 0;   ///< a size or a share, as `form` says; 0 when sold green
  Shrinkage form = Shrinkage::added;
};
/// The least green size that still finishes: what would be set if no saw wandered. nullopt when a shrinkage share is
/// not at least 0 and less than 1.
std::optional<double> critical_size(const FinishedSize& finished);

/// The size to set: critical + deviations_for(share) x total spread. nullopt where either has none, or the spread is negative.
std::optional<double> target_size(const FinishedSize& finished, double total_spread, double undersize_share);

/// The share of readings below `critical`, a normal spread assumed; with no spread 0 or 1 (a mean at the critical size is
/// not below it).
double undersize_share(double mean, double critical, double total_spread);

/// What is sawn thicker (or wider) than needed, and what it costs.
struct Oversize {
  double size = 0;  ///< today's mean less the needed target; negative when boards are cut too thin
  double wood_share =
      0;  ///< of the wood a board takes, its kerf with it: size / (mean + kerf); 0 when not oversize
  double lumber_gain =
      0;  ///< more lumber from the same wood at the target: size / (target + kerf); 0 when not oversize
  double bf_a_year = 0;     ///< lumber_gain x what is sawn a year of this size
  double money_a_year = 0;  ///< at the price given
};
/// `kerf` of the saw that sets this size, in the unit of the sizes; `bf_a_year` sawn of it; `price_per_mbf` in whatever money is
/// wanted. It is the most that can be had: a log gives whole boards, and a thin slice saved in each may not add up to one.
/// nullopt when a size with its kerf is not above 0. The gain as in E. Wengert, 2004; the rest is arithmetic.
std::optional<Oversize> oversize_of(double mean, double target, double kerf, double bf_a_year,
                                    double price_per_mbf);

}  // namespace kerfbook::tuning
