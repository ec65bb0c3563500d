// share.h -- lumber divided between the owner of the logs and the mill: by a rule, to the board, the rest carried.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "price/terms.h"

namespace kerfbook::billing {

/// One line to divide: all boards of one species, grade, size and length; or, with no length, lineal feet of one
/// size: then `pieces` and both sides are counts of length, and `bf_each` is of one count.
struct ShareLine {
  std::string bundle;  ///< in which its boards lie; empty: in none. Dividing does not look at it.
  std::string species;
  std::string grade;
  Size size;
  Length length;
  std::int64_t pieces = 0;
  Rational bf_each;  ///< counted by the job's convention
  std::int64_t to_customer = 0;
  std::int64_t to_mill = 0;
  [[nodiscard]] bool lineal() const { return length.count == 0; }
};

/// `carried` > 0: so many board feet are owed to the customer; < 0: to the mill.
struct Split {
  std::vector<ShareLine> lines;      ///< from the largest board to the smallest
  std::int64_t customer_pieces = 0;  ///< boards, without lineal feet
  std::int64_t mill_pieces = 0;
  Rational customer_bf;
  Rational mill_bf;
  Rational carried_in;
  Rational carried;
};

/// by_size_line: each line is divided in proportion; what does not divide is dealt out board by board, from the
/// largest board down, each to the side that is further behind its share (the customer when both are equal).
/// alternate: the boards are dealt out in turn from the largest line down; with other shares than halves, to the side further
/// behind in boards. percent: every board, from the largest down, to the side further behind in board feet.
/// Lineal feet are divided in proportion under every rule, to the whole foot (metric: to 0.1 m): nobody counted the
/// boards. The odd foot, and what is less than a foot, go to the side that is further behind.
/// A line with fewer than no pieces (a correction of what was divided before) is given back in the same way.
Split divide(std::vector<ShareLine> lines, ShareRule rule, const Rational& customer_percent,
             const Rational& carried_in);

/// How many pieces (or counts of length) of a line lie in each bundle, by tag; "" in none.
using InBundles = std::map<std::string, std::int64_t>;
/// A divided line by its bundles, the sums of both sides as they were. The customer's boards are those of the first
/// bundles, the mill's those of the last, so that most bundles are whole one side's.
std::vector<ShareLine> by_bundles(const ShareLine& line, const InBundles& bundles);

/// The rule in words, for the paper.
std::string share_words(ShareRule rule, const Rational& customer_percent);

}  // namespace kerfbook::billing
