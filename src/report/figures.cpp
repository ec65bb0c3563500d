#include "report/figures.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace kerfbook::report {
namespace {

std::int64_t power_of_ten(int places) {
  std::int64_t power = 1;
  for (int i = 0; i < places; ++i) power *= 10;
  return power;
}

bool times(Wide a, Wide b, Wide& product) {
  return !__builtin_mul_overflow(a, b, &product);
}

Wide checked(Wide a, Wide b) {
  Wide product = 0;
  if (!times(a, b, product)) throw std::overflow_error("a number grew past 127 bits");
  return product;
}

Wide common_multiple(Wide a, Wide b) {
  return checked(Rational(a, b).num(), b);  // a/b in lowest terms, times b
}

struct Fraction {
  Wide top = 0;
  Wide under = 1;  ///< > 0
};

/// The quotients of two columns. over / under = (o * a) / (u * b) for every row, with whole a and b of no row.
class Quotients {
 public:
  Quotients(Kind kind, const Figures& over, const Figures& under, const Rational& factor)
      : kind_(kind), over_(over), under_(under), factor_(factor) {
    const Rational sides(under.under, over.under);
    a_ = sides.num();
    b_ = sides.den();
    times_ = factor.num();
    by_ = factor.den();
  }

  [[nodiscard]] Fraction of(std::size_t row) const {
    Wide top = 0;
    Wide bottom = 0;
    Wide less = 0;
    const bool fits = times(over_.tops[row], a_, top) && times(under_.tops[row], b_, bottom) &&
                      (kind_ != Kind::percent_over || !__builtin_sub_overflow(top, bottom, &top)) &&
                      times(top, times_, top) && times(bottom, by_, bottom) &&
                      !__builtin_sub_overflow(0, top, &less);
    if (!fits) return reduced(row);
    return bottom < 0 ? Fraction{less, -bottom} : Fraction{top, bottom};
  }

 private:
  /// By fractions in lowest terms, where the products above are too long.
  [[nodiscard]] Fraction reduced(std::size_t row) const {
    const Exact quotient = divided(kind_, Rational(over_.tops[row], over_.under),
                                   Rational(under_.tops[row], under_.under), factor_);
    return {quotient->num(), quotient->den()};
  }

  Kind kind_;
  const Figures& over_;
  const Figures& under_;
  Rational factor_;
  Wide a_ = 1;
  Wide b_ = 1;
  Wide times_ = 1;
  Wide by_ = 1;
};

}  // namespace

void Figures::resize(std::size_t rows) {
  tops.resize(rows);
  there.resize(rows);
}

void Figures::set(std::size_t row, Wide top) {
  tops[row] = top;
  there[row] = 1;
}

void Figures::drop(std::size_t row) {
  tops[row] = 0;
  there[row] = 0;
}

render::Cell Figures::cell(std::size_t row, int places) const {
  if (there[row] == 0) return {};
  const render::Figure figure(tops[row], unders.empty() ? under : unders[row], places);
  if (places == 0 && figure.is_whole()) return figure.shown().units;
  return figure;
}

Exact summed(const Figures& figures, const Struck& struck) {
  Wide sum = 0;
  bool any = false;
  for (std::size_t r = 0; r < figures.size(); ++r) {
    if (figures.there[r] == 0 || struck[r] != 0) continue;
    any = true;
    if (__builtin_add_overflow(sum, figures.tops[r], &sum))
      throw std::overflow_error("a number grew past 127 bits");
  }
  return any ? Exact(Rational(sum, figures.under)) : Exact{};
}

int places_needed(const Figures& figures, int least, int most) {
  int places = least;
  for (std::size_t r = 0; r < figures.size() && places < most; ++r) {
    while (places < most && checked(figures.tops[r], Wide{power_of_ten(places)}) % figures.under != 0)
      ++places;
  }
  return places;
}

void multiply(Figures& figures, const std::vector<Rational>& factors, const std::vector<char>& which) {
  Wide under = 1;
  for (const auto& factor : factors) under = common_multiple(under, factor.den());
  std::vector<Wide> by;
  for (const auto& factor : factors) by.push_back(checked(factor.num(), under / factor.den()));
  for (std::size_t r = 0; r < figures.size(); ++r) {
    figures.tops[r] = checked(figures.tops[r], by[static_cast<std::size_t>(which[r])]);
  }
  figures.under = checked(figures.under, under);
}

Figures divided(Kind kind, const Figures& over, const Figures& under, const Rational& times) {
  Figures out;
  out.resize(over.size());
  out.unders.resize(over.size(), 1);
  const Quotients quotients(kind, over, under, times);
  for (std::size_t r = 0; r < over.size(); ++r) {
    if (over.there[r] == 0 || under.there[r] == 0 || under.tops[r] == 0) continue;
    const Fraction quotient = quotients.of(r);
    out.set(r, quotient.top);
    out.unders[r] = quotient.under;
  }
  return out;
}

Exact divided(Kind kind, const Exact& over, const Exact& under, const Rational& times) {
  if (!over || !under || under->is_zero()) return {};
  const Rational top = kind == Kind::percent_over ? *over - *under : *over;
  return top * times / *under;
}

}  // namespace kerfbook::report
