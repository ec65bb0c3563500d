// read_terms.cpp -- the money tables of the mill file become Terms, or every reason why they cannot.
#include <array>
#include <functional>
#include <utility>

#include "base/text.h"
#include "mill/toml_table.h"
#include "price/rate_checks.h"
#include "price/term_checks.h"
#include "price/terms.h"
#include "scaling/scaling.h"

namespace kerfbook::billing {

namespace {

constexpr std::int64_t kMostDays = 3650;
constexpr int kRatePlaces = 6;  // of a unit of money: a rate may be finer than a cent

using book::TomlTable;

template <class Enum, std::size_t N>
using Words = std::array<std::pair<std::string_view, Enum>, N>;

constexpr Words<Basis, 13> kBases{{{"bf", Basis::bf},
                                   {"mbf", Basis::mbf},
                                   {"log-scale", Basis::log_scale},
                                   {"log-mbf", Basis::log_mbf},
                                   {"log", Basis::log},
                                   {"m3-log", Basis::m3_log},
                                   {"m3-sawn", Basis::m3_sawn},
                                   {"piece", Basis::piece},
                                   {"lineal-foot", Basis::lineal_foot},
                                   {"lineal-metre", Basis::lineal_metre},
                                   {"hour", Basis::hour},
                                   {"day", Basis::day},
                                   {"shares", Basis::shares}}};
constexpr Words<Per, 14> kPers{{{"each", Per::each},
                                {"hour", Per::hour},
                                {"day", Per::day},
                                {"mile", Per::mile},
                                {"km", Per::km},
                                {"tooth", Per::tooth},
                                {"bf", Per::bf},
                                {"mbf", Per::mbf},
                                {"piece", Per::piece},
                                {"lineal-foot", Per::lineal_foot},
                                {"lineal-metre", Per::lineal_metre},
                                {"log", Per::log},
                                {"bundle", Per::bundle},
                                {"percent", Per::percent}}};
constexpr Words<ShareRule, 3> kShareRules{{{"by-size-line", ShareRule::by_size_line},
                                           {"alternate", ShareRule::alternate},
                                           {"percent", ShareRule::percent}}};

template <class Enum, std::size_t N>
std::string_view word_in(const Words<Enum, N>& words, Enum value) {
  for (const auto& [word, meaning] : words)
    if (meaning == value) return word;
  return "";
}

template <class Enum, std::size_t N>
Result<Enum> read_in(const Words<Enum, N>& words, std::string_view typed) {
  std::vector<std::string> known;
  for (const auto& [word, meaning] : words) {
    if (same_word(word, typed)) return meaning;
    known.emplace_back(word);
  }
  const std::string near = nearest(typed, known);
  return Slip{"'" + std::string(typed) + "' is not known",
              near.empty() ? "one of " + join(known, ", ") : "did you mean " + near + "?"};
}

template <class Enum>
Result<Enum> read_known(std::string_view typed, std::optional<Enum> (*reader)(std::string_view),
                        const std::vector<std::string>& known) {
  if (const std::optional<Enum> got = reader(typed)) return *got;
  const std::string near = nearest(typed, known);
  return Slip{"'" + std::string(typed) + "' is not known",
              near.empty() ? "one of " + join(known, ", ") : "did you mean " + near + "?"};
}

/// Everything the reading of one file needs.
struct Reader {
  TermsOptions options;
  book::TomlFile file;
  Terms terms;

  std::function<Result<Length>(std::string_view)> section() const {
    const bool metric = options.metric;
    return [metric](std::string_view t) {
      return metric ? measure::read_millimetres(t) : measure::read_inches(t);
    };
  }
  std::function<Result<Length>(std::string_view)> diameter() const {
    const bool metric = options.metric;
    return [metric](std::string_view t) { return scaling::read_diameter(t, metric); };
  }
  std::function<Result<Length>(std::string_view)> along() const {
    const bool metric = options.metric;
    return [metric](std::string_view t) { return metric ? measure::read_metres(t) : measure::read_feet(t); };
  }
  std::optional<Money> money(TomlTable& table, std::string_view key) const {
    const std::optional<Rational> got = table.number(key, options.money_places);
    if (!got) return std::nullopt;
    return Money{got->rounded(options.money_places)};
  }

  Conditions conditions(TomlTable& table) const;
  CountOverride count(TomlTable& table) const;
  std::optional<MinimumLog> minimum_log(TomlTable& table) const;
  void price(TomlTable& table);
  void charge(TomlTable& table);
  void share(TomlTable& table);
  void tax(TomlTable& table);
  void agreement(TomlTable& table);
  void invoice(TomlTable& table);
};

Conditions Reader::conditions(TomlTable& table) const {
  Conditions when;
  when.job = table.words("job");
  when.customer = table.words("customer");
  when.species = table.words("species");
  when.grade = table.words("grade");
  for (const auto& code : when.species) when.species_names.push_back(options.species_name(code));
  for (const auto& code : when.grade) when.grade_names.push_back(options.grade_name(code));
  const bool metric = options.metric;
  when.size =
      table.read_list<Size>("size", [metric](std::string_view t) { return measure::read_size(t, metric); });
  when.thickness_from = table.read<Length>("thickness_from", section());
  when.thickness_to = table.read<Length>("thickness_to", section());
  when.width_from = table.read<Length>("width_from", section());
  when.width_to = table.read<Length>("width_to", section());
  when.diameter_from = table.read<Length>("diameter_from", diameter());
  when.diameter_to = table.read<Length>("diameter_to", diameter());
  when.length_over = table.read<Length>("length_over", along());
  when.length_to = table.read<Length>("length_to", along());
  when.from = table.day("from");
  when.until = table.day("until");
  if (when.from && when.until && *when.until < *when.from)
    table.wrong_at("until", "until is before from", "the last day in force, included");
  return when;
}

CountOverride Reader::count(TomlTable& table) const {
  CountOverride over;
  std::optional<TomlTable> inner = table.table("count");
  if (!inner) return over;
  over.thickness = inner->read<measure::ThicknessRule>("thickness", [](std::string_view t) {
    return read_known(t, measure::read_thickness_rule, measure::thickness_rule_words());
  });
  over.length = inner->read<measure::LengthRule>("length", [](std::string_view t) {
    return read_known(t, measure::read_length_rule, measure::length_rule_words());
  });
  over.rounding = inner->read<measure::BillRounding>("rounding", [](std::string_view t) {
    return read_known(t, measure::read_bill_rounding, measure::bill_rounding_words());
  });
  over.under_inch_as_inch = inner->flag("under_inch_as_inch");
  over.surface_measure = inner->flag("surface_measure");
  inner->finish();
  return over;
}

std::optional<MinimumLog> Reader::minimum_log(TomlTable& table) const {
  const bool metric = options.metric;
  const auto log = table.read<scaling::LogMeasure>(
      "minimum_log", [metric](std::string_view t) { return scaling::read_log_spec(t, metric); });
  if (!log || log->small.empty()) return std::nullopt;
  return MinimumLog{log->small.front(), log->length};
}

/// A flag by its word, or by the one it had in mill files posted before.
bool either_flag(TomlTable& table, const std::string& word, const std::string& once) {
  const bool older = table.flag(once).value_or(false);
  return table.flag(word).value_or(older);
}

bool sells_by(Basis basis) {
  return basis == Basis::bf || basis == Basis::mbf || basis == Basis::piece || basis == Basis::lineal_foot ||
         basis == Basis::lineal_metre || basis == Basis::m3_sawn;
}

void Reader::price(TomlTable& table) {
  Price price;
  price.line = table.line();
  const auto basis = table.read<Basis>("basis", [](std::string_view t) { return read_in(kBases, t); });
  if (!table.has("basis"))
    table.wrong_at("basis", "a price without a basis", "add basis = \"bf\" (or hour, log-scale ...)");
  price.basis = basis.value_or(Basis::bf);
  const std::optional<Rational> rate = table.number("rate", kRatePlaces);
  price.rate = rate.value_or(Rational(0));
  if (price.basis != Basis::shares && !table.has("rate"))
    table.wrong_at("rate", "a price without a rate", "add rate = 0.48");
  if (price.basis == Basis::shares && table.has("rate"))
    table.wrong_at("rate", "shares are paid in lumber and have no rate",
                   "leave rate out; [[share]] says how to split");
  if (price.rate.is_negative())
    table.wrong_at("rate", "a price with a minus", "a discount is a [[charge]] per percent");
  price.name = table.text("name");
  price.count = count(table);
  price.minimum_log = minimum_log(table);
  price.minimum_job = money(table, "minimum_job");
  price.rule = table.text("rule");
  price.own_lumber = either_flag(table, "own_lumber", "sells");
  if (price.own_lumber && !sells_by(price.basis))
    table.wrong_at("basis", "lumber is not sold on this basis", "bf, mbf, piece, lineal-foot or m3-sawn");
  const std::string tax_kind = table.text("tax");
  price.tax = !tax_kind.empty() ? tax_kind : price.own_lumber ? "lumber" : "sawing";
  price.when = conditions(table);
  check_price(table, price);
  doubt_price(table, price, options);
  table.finish();
  terms.prices.push_back(std::move(price));
}

void Reader::charge(TomlTable& table) {
  ChargeTerm charge;
  charge.line = table.line();
  charge.name = table.text("name");
  if (charge.name.empty()) table.wrong_at("name", "a charge without a name", "add name = \"set-up\"");
  charge.title = table.text("title");
  if (charge.title.empty()) charge.title = charge.name;
  charge.flat = table.number("flat", options.money_places).value_or(Rational(0));
  charge.rate = table.number("rate", kRatePlaces).value_or(Rational(0));
  if (!table.has("flat") && !table.has("rate"))
    table.wrong_at("rate", "a charge with neither flat nor rate",
                   "add flat = 150.00, or rate = 45.00 and per = \"hour\"");
  const auto per = table.read<Per>("per", [](std::string_view t) { return read_in(kPers, t); });
  charge.per = per.value_or(Per::each);
  charge.free = table.number("free", kRatePlaces).value_or(Rational(0));
  charge.round_trip = table.flag("round_trip").value_or(false);
  charge.stop = table.words("stop");
  charge.strike = table.flag("strike").value_or(false);
  charge.move = table.flag("move").value_or(false);
  charge.automatic = either_flag(table, "automatic", "unasked");
  charge.once = table.flag("once").value_or(false);
  const std::string tax_kind = table.text("tax");
  if (!tax_kind.empty())
    charge.tax = tax_kind;
  else if (charge.per == Per::percent)
    charge.tax = "sawing";
  charge.when = conditions(table);
  check_charge(table, charge);
  doubt_charge(table, charge, options);
  table.finish();
  terms.charges.push_back(std::move(charge));
}

void Reader::share(TomlTable& table) {
  ShareTerm share;
  share.line = table.line();
  share.percent = table.number("percent", 3).value_or(Rational(50));
  if (share.percent < Rational(0) || share.percent > Rational(100))
    table.wrong_at("percent", "a share outside 0 to 100", "the customer's share, as percent = 50");
  const auto rule = table.read<ShareRule>("rule", [](std::string_view t) { return read_in(kShareRules, t); });
  share.rule = rule.value_or(ShareRule::by_size_line);
  share.when = conditions(table);
  if (share.percent <= Rational(100)) doubt_share(table, share);
  table.finish();
  terms.shares.push_back(std::move(share));
}

void Reader::tax(TomlTable& table) {
  Tax tax;
  tax.line = table.line();
  tax.name = table.text("name");
  if (tax.name.empty()) table.wrong_at("name", "a tax without a name", "add name = \"Sales tax\"");
  const std::optional<Rational> percent = table.number("rate", kRatePlaces);
  if (!table.has("rate")) table.wrong_at("rate", "a tax without a rate", "add rate = 5, in percent");
  tax.percent = percent.value_or(Rational(0));
  if (tax.percent.is_negative()) table.wrong_at("rate", "a tax with a minus", "in percent, as rate = 5");
  tax.on = table.words("on");
  if (tax.on.empty())
    table.wrong_at("on", "a tax that falls on nothing",
                   "add on = [\"lumber\"] (kinds: sawing, service, lumber or your own)");
  tax.included = table.flag("included").value_or(false);
  tax.certificate = table.flag("certificate").value_or(true);
  tax.from = table.day("from");
  tax.until = table.day("until");
  check_tax(table, tax, terms);
  if (!tax.percent.is_negative()) doubt_tax(table, tax);
  table.finish();
  terms.taxes.push_back(std::move(tax));
}

void Reader::agreement(TomlTable& table) {
  Agreement agreement;
  agreement.line = table.line();
  agreement.job = table.text("job");
  if (agreement.job.empty()) table.wrong_at("job", "an agreement without a job", "add job = \"TER\"");
  agreement.agreed = table.day("agreed");
  agreement.deposit = money(table, "deposit");
  doubt_sum(table, "deposit", agreement.deposit, options);
  if (const auto days = table.whole("due_days", 0, kMostDays)) agreement.due_days = static_cast<int>(*days);
  agreement.say = table.words("say");
  if (find_agreement(terms, agreement.job) != nullptr)
    table.wrong_at("job", "a second agreement for job " + agreement.job, "one [[agreement]] a job");
  table.finish();
  terms.agreements.push_back(std::move(agreement));
}

void Reader::invoice(TomlTable& table) {
  if (const auto first = table.whole("first", 1, 999'999'999)) terms.invoice.first = *first;
  terms.invoice.prefix = table.text("prefix");
  if (const auto days = table.whole("due_days", 0, kMostDays))
    terms.invoice.due_days = static_cast<int>(*days);
  terms.invoice.say = table.words("say");
  table.finish();
}

}  // namespace

std::string_view word_of(Basis basis) {
  return word_in(kBases, basis);
}
std::string_view word_of(Per per) {
  return word_in(kPers, per);
}
std::string_view word_of(ShareRule rule) {
  return word_in(kShareRules, rule);
}

const std::vector<std::string>& money_table_names() {
  static const std::vector<std::string> kNames{"invoice", "price", "charge", "share", "tax", "agreement"};
  return kNames;
}

measure::Convention joined(const measure::Convention& house, const CountOverride& over) {
  measure::Convention by = house;
  if (over.thickness) by.thickness = *over.thickness;
  if (over.under_inch_as_inch) by.under_inch_as_inch = *over.under_inch_as_inch;
  if (over.surface_measure)
    by.width = *over.surface_measure ? measure::WidthRule::surface_measure : measure::WidthRule::as_cut;
  if (over.length) by.length = *over.length;
  if (over.rounding) by.rounding = *over.rounding;
  return by;
}

const Agreement* find_agreement(const Terms& terms, std::string_view job) {
  for (const Agreement& one : terms.agreements)
    if (same_word(one.job, job)) return &one;
  return nullptr;
}

ReadTerms read_terms(std::string_view mill_toml, const TermsOptions& options) {
  Reader reader;
  reader.options = options;
  reader.file = book::read_toml(mill_toml);
  TomlTable root(reader.file.root, "the mill file", reader.file);
  if (auto table = root.table("invoice")) reader.invoice(*table);
  for (TomlTable& table : root.tables("price")) reader.price(table);
  for (TomlTable& table : root.tables("charge")) reader.charge(table);
  for (TomlTable& table : root.tables("share")) reader.share(table);
  for (TomlTable& table : root.tables("tax")) reader.tax(table);
  for (TomlTable& table : root.tables("agreement")) reader.agreement(table);
  sort_by_place(reader.file.found);
  return {std::move(reader.terms), std::move(reader.file.found)};
}

}  // namespace kerfbook::billing
