// A column's figures over one denominator: report/figures.h.
#include "report/figures.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

Figures some(Wide under) {
  const auto tops =
      *rc::gen::container<std::vector<std::int64_t>>(20, rc::gen::inRange<std::int64_t>(-5000, 5000));
  Figures out;
  out.resize(tops.size());
  out.under = under;
  for (std::size_t r = 0; r < tops.size(); ++r) {
    if (tops[r] % 5 != 0) out.set(r, tops[r]);
  }
  return out;
}

Exact row(const Figures& figures, std::size_t r) {
  return figures.there[r] == 0 ? Exact{} : Exact(Rational(figures.tops[r], figures.under));
}

}  // namespace

TEST_CASE("a ratio of two columns is, row by row, the exact quotient") {
  CHECK(rc::check("ratio columns", [] {
    const auto over = some(*rc::gen::element<std::int64_t>(1, 60, 37'748'736));
    const auto under = some(*rc::gen::element<std::int64_t>(1, 1'000'000, 768));
    for (const Kind kind : {Kind::ratio, Kind::percent, Kind::percent_over}) {
      const auto ratios = divided(kind, over, under, 100);
      for (std::size_t r = 0; r < over.size(); ++r) {
        const auto exact = divided(kind, row(over, r), row(under, r), 100);
        RC_ASSERT((ratios.there[r] != 0) == exact.has_value());
        if (exact) RC_ASSERT(Rational(ratios.tops[r], ratios.unders[r]) == *exact);
      }
    }
  }));
}

TEST_CASE("a quotient whose products outgrow 127 bits is still worked out") {
  Figures over;
  over.resize(1);
  over.under = Wide{1} << 60;
  over.set(0, Wide{1} << 100);
  Figures under;
  under.resize(1);
  under.under = (Wide{1} << 50) + 1;
  under.set(0, (Wide{1} << 90) + (Wide{1} << 40));  // 2^40 (2^50 + 1) over 2^50 + 1: 2^40
  CHECK(divided(Kind::ratio, over, under, 1).cell(0, 2) == render::Cell(Decimal{100, 2}));
}

TEST_CASE("rows measured in two systems stand over one denominator, each exactly as it is") {
  Figures lengths;
  lengths.resize(3);
  lengths.set(0, 16 * 768);  // 16 ft in counts of 1/64 in
  lengths.set(2, 30'480);    // 3.048 m in counts of 1/10 mm: 10 ft
  multiply(lengths, {Rational(1, 768), Rational(1, 3'048)}, {0, 0, 1});
  CHECK(row(lengths, 0) == Exact(16));
  CHECK(row(lengths, 1) == Exact());
  CHECK(row(lengths, 2) == Exact(10));
  CHECK(summed(lengths, {0, 0, 0}) == Exact(26));
  CHECK(summed(lengths, {1, 0, 0}) == Exact(10));
  CHECK(summed(lengths, {1, 1, 1}) == Exact());
}

TEST_CASE("the fewest places are those that show every row exactly, and no more than allowed") {
  Figures figures;
  figures.resize(2);
  figures.under = 4;
  figures.set(0, 8);
  CHECK(places_needed(figures, 0, 3) == 0);
  figures.set(1, 9);  // 2.25
  CHECK(places_needed(figures, 0, 3) == 2);
  CHECK(places_needed(figures, 0, 1) == 1);
  CHECK(places_needed(figures, 3, 4) == 3);
}
