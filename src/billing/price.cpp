// price.cpp -- choosing the most particular of the prices that fit, and saying why.
#include "billing/price.h"

#include <algorithm>
#include <cctype>

#include "base/text.h"

namespace kerfbook::billing {

namespace {

bool among(const std::vector<std::string>& words, const std::string& word) {
  if (words.empty()) return true;
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& one) { return same_word(one, word); });
}

/// Two lengths of different systems cannot be told apart by counts; they are compared exactly, in inches.
std::strong_ordering compare(const Length& a, const Length& b) {
  return in_inches(a) <=> in_inches(b);
}

bool within(const std::optional<Length>& value, const std::optional<Length>& from,
            const std::optional<Length>& to) {
  if (!from && !to) return true;
  if (!value) return false;
  return (!from || compare(*value, *from) >= 0) && (!to || compare(*value, *to) <= 0);
}

bool size_among(const std::vector<Size>& sizes, const std::optional<Size>& size) {
  if (sizes.empty()) return true;
  if (!size) return false;
  return std::any_of(sizes.begin(), sizes.end(), [&](const Size& one) {
    return one.thickness == size->thickness && one.width == size->width;
  });
}

/// The conditions that keep it from fitting, each in a few words; empty = it fits.
std::vector<std::string> in_the_way(const Conditions& when, const Question& asked) {
  std::vector<std::string> no;
  if (!among(when.job, asked.job)) no.push_back("is for job " + join(when.job, ", "));
  if (!among(when.customer, asked.customer)) no.push_back("is for customer " + join(when.customer, ", "));
  if (!among(when.species, asked.species)) no.push_back("is for species " + join(when.species, ", "));
  if (!among(when.grade, asked.grade)) no.push_back("is for grade " + join(when.grade, ", "));
  if (!size_among(when.size, asked.size)) no.emplace_back("is for other sizes");
  const std::optional<Length> thickness = asked.size ? std::optional(asked.size->thickness) : std::nullopt;
  const std::optional<Length> width = asked.size ? std::optional(asked.size->width) : std::nullopt;
  if (!within(thickness, when.thickness_from, when.thickness_to)) no.emplace_back("is for another thickness");
  if (!within(width, when.width_from, when.width_to)) no.emplace_back("is for another width");
  const bool over = !when.length_over || (asked.length && compare(*asked.length, *when.length_over) > 0);
  if (!over || !within(asked.length, std::nullopt, when.length_to)) no.emplace_back("is for other lengths");
  if (when.from && asked.day < *when.from) no.push_back("is in force from " + write_day(*when.from));
  if (when.until && asked.day > *when.until) no.push_back("was in force until " + write_day(*when.until));
  return no;
}

std::string money_words(const Price& price) {
  if (price.basis == Basis::shares) return "shares";
  std::string digits = plain(shown(price.rate, 6));
  while (digits.ends_with('0') && digits[digits.size() - 3] != '.') digits.pop_back();
  return digits + " " + std::string(unit_after_rate(price.basis));
}

std::string called(const Price& price) {
  return "`" + price_title(price) + "` (line " + std::to_string(price.line) + ", " + money_words(price) + ")";
}

/// Why `won` goes before `lost`, both fitting.
std::string advantage(const Particular& won, const Particular& lost) {
  if (won.job != lost.job) return "it names the job";
  if (won.customer != lost.customer) return "it names the customer";
  if (won.others != lost.others) return "it asks more conditions";
  if (won.from != lost.from) return "it came into force later";
  return "it stands later in the mill file";
}

template <class Term, class Fits>
const Term* most_particular(const std::vector<Term>& terms, Fits fits_too) {
  const Term* best = nullptr;
  for (const Term& one : terms) {
    if (!fits_too(one)) continue;
    if (best == nullptr || particular(best->when, best->line) < particular(one.when, one.line)) best = &one;
  }
  return best;
}

int plain_conditions(const Conditions& w) {
  const bool any_size = !w.size.empty();
  return static_cast<int>(!w.species.empty()) + static_cast<int>(!w.grade.empty()) +
         4 * static_cast<int>(any_size) + static_cast<int>(w.thickness_from.has_value()) +
         static_cast<int>(w.thickness_to.has_value()) + static_cast<int>(w.width_from.has_value()) +
         static_cast<int>(w.width_to.has_value()) + static_cast<int>(w.length_over.has_value()) +
         static_cast<int>(w.length_to.has_value());
}

std::string spoken_section(const Length& length) {
  if (length.system == measure::System::inch) return write_inches(length) + " in";
  const std::string millimetres = write_inches(length);
  return millimetres.substr(0, millimetres.size() - 2) + " mm";
}

void add_range(std::vector<std::string>& words, const std::optional<Length>& from,
               const std::optional<Length>& to, const std::string& way, const std::string& more) {
  if (from && to)
    words.push_back(spoken_section(*from) + " to " + spoken_section(*to) + " " + way);
  else if (from)
    words.push_back(spoken_section(*from) + " and " + more);
  else if (to)
    words.push_back("up to " + spoken_section(*to) + " " + way);
}

}  // namespace

bool fits(const Conditions& when, const Question& asked) {
  return in_the_way(when, asked).empty();
}

Particular particular(const Conditions& when, int line) {
  return {!when.job.empty(), !when.customer.empty(), plain_conditions(when), when.from.value_or(Day{}), line};
}

Choice choose_price(const Terms& terms, const Question& asked, bool sells) {
  const Price* best =
      most_particular(terms.prices, [&](const Price& p) { return p.sells == sells && fits(p.when, asked); });
  if (best == nullptr) return {nullptr, "no price fits"};
  const Price* second = most_particular(
      terms.prices, [&](const Price& p) { return p.sells == sells && &p != best && fits(p.when, asked); });
  if (second == nullptr) return {best, called(*best) + " is the only price that fits"};
  return {best, called(*best) + " goes before " + called(*second) + ": " +
                    advantage(particular(best->when, best->line), particular(second->when, second->line))};
}

std::vector<std::string> explain_price(const Terms& terms, const Question& asked, bool sells) {
  const Choice chosen = choose_price(terms, asked, sells);
  std::vector<std::string> lines{chosen.why};
  for (const Price& price : terms.prices) {
    if (price.sells != sells || &price == chosen.price) continue;
    const std::vector<std::string> no = in_the_way(price.when, asked);
    if (!no.empty())
      lines.push_back(called(price) + " does not fit: it " + join(no, "; "));
    else
      lines.push_back(
          called(price) + " fits, but " + called(*chosen.price) + " goes before it: " +
          advantage(particular(chosen.price->when, chosen.price->line), particular(price.when, price.line)));
  }
  return lines;
}

const ChargeTerm* find_charge(const Terms& terms, std::string_view name, const Question& asked) {
  return most_particular(terms.charges,
                         [&](const ChargeTerm& c) { return same_word(c.name, name) && fits(c.when, asked); });
}

const ShareTerm* find_share(const Terms& terms, const Question& asked) {
  return most_particular(terms.shares, [&](const ShareTerm& s) { return fits(s.when, asked); });
}

std::string condition_words(const Conditions& when, bool for_paper) {
  std::vector<std::string> words;
  if (!for_paper && !when.job.empty()) words.push_back("job " + join(when.job, ", "));
  if (!for_paper && !when.customer.empty()) words.push_back("customer " + join(when.customer, ", "));
  std::vector<std::string> sizes;
  for (const Size& size : when.size) sizes.push_back(write_size(size));
  if (!sizes.empty()) words.push_back(join(sizes, ", "));
  add_range(words, when.thickness_from, when.thickness_to, "thick", "thicker");
  add_range(words, when.width_from, when.width_to, "wide", "wider");
  if (when.length_over) words.push_back("longer than " + spoken_length(*when.length_over));
  if (when.length_to) words.push_back("up to " + spoken_length(*when.length_to));
  if (!when.species.empty()) words.push_back(join(when.species, ", "));
  if (!when.grade.empty()) words.push_back("grade " + join(when.grade, ", "));
  if (!for_paper && when.from) words.push_back("from " + write_day(*when.from));
  if (!for_paper && when.until) words.push_back("until " + write_day(*when.until));
  return join(words, ", ");
}

std::string price_title(const Price& price) {
  const std::string what = price.sells ? "Lumber" : "Sawing";
  if (price.name.empty()) {
    const std::string conditions = condition_words(price.when, true);
    return conditions.empty() ? what : what + ", " + conditions;
  }
  // A name that begins with a measure says which sawing: "4 in and thicker".
  const auto first = static_cast<unsigned char>(price.name.front());
  return std::isdigit(first) != 0 ? what + ", " + price.name : price.name;
}

std::string_view unit_after_rate(Basis basis) {
  switch (basis) {
    case Basis::bf:
      return "a board foot";
    case Basis::mbf:
      return "a thousand board feet";
    case Basis::log_scale:
      return "a unit of net log scale";
    case Basis::log_mbf:
      return "a thousand board feet of net log scale";
    case Basis::log:
      return "a log";
    case Basis::m3_log:
      return "a cubic metre of log";
    case Basis::m3_sawn:
      return "a cubic metre sawn";
    case Basis::piece:
      return "a piece";
    case Basis::lineal_foot:
      return "a lineal foot";
    case Basis::hour:
      return "an hour";
    case Basis::day:
      return "a day";
    case Basis::shares:
      return "in lumber";
  }
  return "";
}

}  // namespace kerfbook::billing
