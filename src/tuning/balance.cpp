#include "tuning/balance.h"

namespace kerfbook::tuning {

Rational sawdust(const Rational& thickness, const Rational& width, const Rational& total_length,
                 const Kerfs& kerfs) {
  const Rational taken = (thickness + kerfs.head) * (width + kerfs.edger + kerfs.third);
  return (taken - thickness * width) * total_length;
}

Balance& Balance::operator+=(const Balance& more) {
  logs = logs + more.logs;
  lumber = lumber + more.lumber;
  sawdust = sawdust + more.sawdust;
  return *this;
}

std::optional<Rational> percent_of_logs(const Rational& part, const Balance& balance) {
  if (balance.logs.is_zero()) return std::nullopt;
  return part * 100 / balance.logs;
}

}  // namespace kerfbook::tuning
