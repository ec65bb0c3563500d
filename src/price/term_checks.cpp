#include "price/term_checks.h"

#include <algorithm>
#include <initializer_list>

#include "base/text.h"

namespace kerfbook::billing {

namespace {

using book::TomlTable;

/// An error at the first of the keys that is there.
void refuse(TomlTable& table, std::initializer_list<const char*> keys, const std::string& what,
            const std::string& instead) {
  for (const char* key : keys) {
    if (!table.has(key)) continue;
    table.wrong_at(key, what + " no " + key, instead);
    return;
  }
}

bool by_log(Basis basis) {
  return basis == Basis::log_scale || basis == Basis::log_mbf || basis == Basis::log ||
         basis == Basis::m3_log;
}

bool by_time(Basis basis) {
  return basis == Basis::hour || basis == Basis::day;
}

constexpr std::string_view kOddWork =
    "narrow it by job, customer, from and until; charge odd work by a [[charge]] per hour";

/// What an automatic charge can be counted by.
bool comes_by_itself(Per per) {
  return per == Per::bf || per == Per::mbf || per == Per::piece || per == Per::lineal_foot ||
         per == Per::lineal_metre || per == Per::log || per == Per::percent;
}

}  // namespace

void check_price(TomlTable& table, const Price& price) {
  if (by_time(price.basis))
    refuse(table,
           {"species", "grade", "size", "thickness_from", "thickness_to", "width_from", "width_to",
            "diameter_from", "diameter_to", "length_over", "length_to"},
           "hours and days of sawing have", std::string(kOddWork));
  else if (by_log(price.basis))
    refuse(table, {"grade", "size", "thickness_from", "thickness_to", "width_from", "width_to"}, "logs have",
           "narrow it by species, diameter_from, diameter_to, length_over and length_to");
  else
    refuse(table, {"diameter_from", "diameter_to"}, "boards cannot be traced to logs and have",
           "narrow it by size, thickness, width or length");
  if (price.minimum_log && (!by_log(price.basis) || price.basis == Basis::log))
    table.wrong_at("minimum_log", "a minimum log counts only where logs are measured",
                   "basis log-scale, log-mbf or m3-log");
  if (!price.rule.empty() && price.basis != Basis::log_scale && price.basis != Basis::log_mbf)
    table.wrong_at("rule", "a log rule counts only where logs are scaled", "basis log-scale or log-mbf");
}

void check_charge(TomlTable& table, const ChargeTerm& charge) {
  if (charge.per == Per::percent && !charge.automatic)
    table.wrong_at("per", "a per cent of the sum for sawing comes by itself", "add automatic = true");
  if (charge.automatic && !comes_by_itself(charge.per))
    table.wrong_at("automatic", "nothing calls for it by itself",
                   "per bf, mbf, piece, lineal-foot, lineal-metre, log or percent; once a job: once = true");
  if (charge.automatic && !charge.flat.is_zero())
    table.wrong_at("flat", "an automatic charge has no flat sum", "a flat sum comes with once = true");
  if (charge.once && !charge.rate.is_zero())
    table.wrong_at("rate", "a charge once a job has nothing to count", "give it flat alone");
  if (charge.free < Rational(0))
    table.wrong_at("free", "a free part with a minus", "write how much costs nothing, as free = 10");
  if (!charge.automatic) return;
  if (charge.per == Per::log)
    refuse(table, {"grade", "size", "thickness_from", "thickness_to", "width_from", "width_to"}, "logs have",
           "narrow it by species, diameter_from, diameter_to, length_over and length_to");
  else
    refuse(table, {"diameter_from", "diameter_to"}, "boards cannot be traced to logs and have",
           "charge it per log");
}

void check_tax(TomlTable& table, const Tax& tax, const Terms& terms) {
  std::vector<std::string> kinds{"sawing", "service", "lumber"};
  for (const Price& price : terms.prices) kinds.push_back(price.tax);
  for (const ChargeTerm& charge : terms.charges) kinds.push_back(charge.tax);
  for (const std::string& kind : tax.on) {
    const bool known =
        std::any_of(kinds.begin(), kinds.end(), [&](const std::string& one) { return same_word(one, kind); });
    if (known) continue;
    const std::string near = nearest(kind, kinds);
    table.wrong_at("on", "no price and no charge has tax = \"" + kind + "\"",
                   near.empty() ? "sawing, service, lumber, or the tax of a price or charge above"
                                : "did you mean '" + near + "'?");
  }
}

}  // namespace kerfbook::billing
