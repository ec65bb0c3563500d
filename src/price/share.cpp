// share.cpp -- dividing lumber to the board.
#include "price/share.h"

#include <algorithm>

namespace kerfbook::billing {

namespace {

/// The two sides' takings as they grow. Each side's due is its part of everything dealt out so far.
class Dealer {
 public:
  Dealer(const Rational& customer_part, const Rational& carried_in)
      : part_(customer_part), carried_(carried_in) {}

  /// Board feet the customer is short of his part (beside what was carried in); negative when the mill is short.
  [[nodiscard]] Rational short_of() const { return carried_ + part_ * (customer_ + mill_) - customer_; }
  void to_customer(const Rational& bf) { customer_ = customer_ + bf; }
  void to_mill(const Rational& bf) { mill_ = mill_ + bf; }

 private:
  Rational part_;
  Rational carried_;
  Rational customer_;
  Rational mill_;
};

void give(ShareLine& line, Dealer& dealer, bool customer, std::int64_t pieces) {
  (customer ? line.to_customer : line.to_mill) += pieces;
  const Rational bf = line.bf_each * Rational(pieces);
  if (customer)
    dealer.to_customer(bf);
  else
    dealer.to_mill(bf);
}

std::int64_t whole_part(const Rational& positive) {
  return static_cast<std::int64_t>(positive.num() / positive.den());
}

/// What is dealt out at a time: a board, or of lineal feet a foot (0.1 m).
std::int64_t step_of(const ShareLine& line) {
  if (!line.lineal()) return 1;
  return line.size.thickness.system == measure::System::metric ? measure::centimetres(10).count
                                                               : measure::feet(1).count;
}

/// Each side's whole boards (feet); the odd ones come back.
std::int64_t whole_boards(ShareLine& line, const Rational& part, Dealer& dealer) {
  const std::int64_t sign = line.pieces < 0 ? -1 : 1;
  const std::int64_t step = step_of(line);
  const Rational steps(Wide{line.pieces} * sign, step);
  const std::int64_t customer = whole_part(steps * part) * step;
  const std::int64_t mill = whole_part(steps * (Rational(1) - part)) * step;
  give(line, dealer, true, customer * sign);
  give(line, dealer, false, mill * sign);
  return line.pieces - sign * (customer + mill);
}

void odd_boards(ShareLine& line, std::int64_t odd, Dealer& dealer) {
  const std::int64_t step = step_of(line);
  while (odd > 0) {
    const std::int64_t some = std::min(odd, step);
    give(line, dealer, !dealer.short_of().is_negative(), some);
    odd -= some;
  }
  while (odd < 0) {
    const std::int64_t some = std::max(odd, -step);
    give(line, dealer, dealer.short_of().is_negative(), some);
    odd -= some;
  }
}

/// Each side's whole boards of every line first, so that the odd boards can be dealt against what all lines gave.
void by_size_line(const std::vector<ShareLine*>& lines, const Rational& part, Dealer& dealer) {
  std::vector<std::int64_t> odd;
  for (ShareLine* line : lines) odd.push_back(whole_boards(*line, part, dealer));
  for (std::size_t i = 0; i < lines.size(); ++i) odd_boards(*lines[i], odd[i], dealer);
}

void board_by_board(const std::vector<ShareLine*>& lines, Dealer& dealer) {
  for (ShareLine* line : lines) odd_boards(*line, line->pieces, dealer);
}

/// In turn: the side behind in boards (not in feet), the customer first.
void alternate(const std::vector<ShareLine*>& lines, const Rational& part, Dealer& dealer) {
  Dealer boards(part, 0);
  for (ShareLine* line : lines) {
    const std::int64_t step = line->pieces < 0 ? -1 : 1;
    for (std::int64_t left = line->pieces; left != 0; left -= step) {
      const bool customer = boards.short_of().is_negative() == (step < 0);
      give(*line, dealer, customer, step);
      if (customer)
        boards.to_customer(step);
      else
        boards.to_mill(step);
    }
  }
}

bool larger(const ShareLine& a, const ShareLine& b) {
  if (a.lineal() != b.lineal()) return b.lineal();
  if (a.bf_each != b.bf_each) return a.bf_each > b.bf_each;
  if (a.size != b.size) return a.size > b.size;
  if (a.length != b.length) return a.length > b.length;
  if (a.species != b.species) return a.species < b.species;
  return a.grade < b.grade;
}

}  // namespace

Split divide(std::vector<ShareLine> lines, ShareRule rule, const Rational& customer_percent,
             const Rational& carried_in) {
  std::stable_sort(lines.begin(), lines.end(), larger);
  for (ShareLine& line : lines) line.to_customer = line.to_mill = 0;
  const Rational part = customer_percent / Rational(100);
  Dealer dealer(part, carried_in);
  std::vector<ShareLine*> boards;
  std::vector<ShareLine*> feet;
  for (ShareLine& line : lines) (line.lineal() ? feet : boards).push_back(&line);
  switch (rule) {
    case ShareRule::by_size_line:
      by_size_line(boards, part, dealer);
      break;
    case ShareRule::alternate:
      alternate(boards, part, dealer);
      break;
    case ShareRule::percent:
      board_by_board(boards, dealer);
      break;
  }
  by_size_line(feet, part, dealer);
  Split split;
  split.carried_in = carried_in;
  split.carried = dealer.short_of();
  for (const ShareLine& line : lines) {
    if (!line.lineal()) {
      split.customer_pieces += line.to_customer;
      split.mill_pieces += line.to_mill;
    }
    split.customer_bf = split.customer_bf + line.bf_each * Rational(line.to_customer);
    split.mill_bf = split.mill_bf + line.bf_each * Rational(line.to_mill);
  }
  split.lines = std::move(lines);
  return split;
}

std::vector<ShareLine> by_bundles(const ShareLine& line, const InBundles& bundles) {
  std::vector<ShareLine> parts;
  std::int64_t mills = line.to_mill;
  for (auto at = bundles.rbegin(); at != bundles.rend(); ++at) {
    ShareLine& part = parts.emplace_back(line);
    part.bundle = at->first;
    part.pieces = at->second;
    part.to_mill = mills < 0 ? std::max(mills, std::min<std::int64_t>(0, part.pieces))
                             : std::min(mills, std::max<std::int64_t>(0, part.pieces));
    mills -= part.to_mill;
  }
  for (ShareLine& part : parts) {
    part.to_mill += mills;  // a correction between bundles can leave a rest, which the last one bears
    mills = 0;
    part.to_customer = part.pieces - part.to_mill;
  }
  std::reverse(parts.begin(), parts.end());
  std::erase_if(parts, [](const ShareLine& part) { return part.to_customer == 0 && part.to_mill == 0; });
  return parts;
}

std::string share_words(ShareRule rule, const Rational& customer_percent) {
  std::string share = customer_percent == Rational(50)
                          ? "on halves"
                          : plain(shown(customer_percent, customer_percent.den() == 1 ? 0 : 3)) +
                                " % of the lumber to the customer";
  switch (rule) {
    case ShareRule::by_size_line:
      return share + ", by size line; odd boards from the largest down, each to the side that is behind";
    case ShareRule::alternate:
      return share + ", alternate boards from the largest down, the customer first";
    case ShareRule::percent:
      return share + ", board by board from the largest down, to the side that is behind";
  }
  return share;
}

}  // namespace kerfbook::billing
