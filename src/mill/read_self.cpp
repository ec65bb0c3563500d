// read_self.cpp -- what the mill file says of the mill itself: names, units, saws, what it can cut, its words and sizes.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "mill/mill_tables.h"
#include "mill/spellings.h"

namespace kerfbook::book {
namespace {

using measure::Length;
using measure::Size;
using measure::System;

bool is_metric(const Mill& mill) {
  return mill.units == System::metric;
}

template <class T>
void set(T& field, std::optional<T> got) {
  if (got) field = std::move(*got);
}

void set_text(std::string& field, std::string got) {
  if (!got.empty()) field = std::move(got);
}

/// One mark between digits; an empty one leaves them together.
Result<char> read_mark(std::string_view text) {
  const std::string_view word = trim(text);
  if (same_word(word, "none")) return '\0';
  if (same_word(word, "blank") || word == "\u00A0" || word == "\u2009" || word == "\u202F") return ' ';
  if (word.size() == 1 && std::string_view(".,'").find(word[0]) != std::string_view::npos) return word[0];
  return Slip{in_quotes(text) + " is not a mark between digits",
              "write \".\", \",\", \"'\", \"blank\" or \"none\"", 0};
}

/// currency = "$", or { sign = "kr", after = true, places = 2, mark = ",", thousands = "." }
void read_currency(TomlTable& holder, measure::Currency& currency) {
  const TomlNode* node = holder.node().find("currency");
  if (node == nullptr || node->kind != TomlKind::table) {
    set_text(currency.sign, holder.text("currency"));
    return;
  }
  auto table = holder.table("currency");
  set_text(currency.sign, table->text("sign"));
  set(currency.sign_after, table->flag("after"));
  if (const auto places = table->whole("places", 0, 3)) currency.places = static_cast<int>(*places);
  set(currency.decimal_mark, table->read<char>("mark", read_mark));
  set(currency.thousands, table->read<char>("thousands", read_mark));
  const TomlNode* thousands = table->node().find("thousands");
  if (thousands != nullptr && thousands->blanks) currency.thousands = ' ';  // " " says what it is
  if (currency.decimal_mark == '\0' || currency.decimal_mark == currency.thousands) {
    const char* key = table->has("mark") ? "mark" : "thousands";
    table->wrong_at(key,
                    currency.decimal_mark == '\0'
                        ? "decimals need a mark before them"
                        : "the mark before the decimals is the one between thousands",
                    "write mark = \",\" with thousands = \".\" or \"blank\"");
  }
  table->finish();
}

struct MonthDay {
  int month;
  int day;
};
Result<MonthDay> read_season(std::string_view text) {
  const auto day =
      read_day("2001-" + std::string(text));  // a year without a leap day: the season begins every year
  if (!day) return Slip{in_quotes(text) + " is no day of every year", "write month and day, as 04-01", 0};
  return MonthDay{parts(*day).month, parts(*day).day};
}

Saw read_saw(TomlTable& table, bool metric) {
  Saw saw;
  saw.role = table.text("role");
  if (saw.role.empty())
    table.wrong_at("role", "a [[saw]] without a role", "write role = \"head\", \"edger\" or \"third\"");
  saw.diameter = table.read<Length>("diameter", metric ? measure::read_millimetres : measure::read_inches);
  saw.kerf_mils = table.read<std::int64_t>(
      "kerf", [metric](std::string_view t) { return measure::read_mils(t, metric); });
  if (saw.kerf_mils && *saw.kerf_mils > (metric ? 2500 : 1000)) {
    table.doubtful_at("kerf", metric ? "a kerf over 25 mm" : "a kerf over an inch",
                      metric ? "5 mm is kerf = 5" : "5/16 in is kerf = \"5/16\"");
  }
  if (const auto teeth = table.whole("teeth", 1, 500)) saw.teeth = static_cast<int>(*teeth);
  if (const auto rpm = table.whole("rpm", 1, 20'000)) saw.rpm = static_cast<int>(*rpm);
  table.finish();
  return saw;
}

/// [species] or [grade]: CODE = "name", or CODE = { name = "...", group = "..." }.
std::vector<Word> read_words(TomlTable& root, std::string_view key, bool grouped) {
  std::vector<Word> words;
  std::set<std::string> codes;
  auto table = root.table(key);
  if (!table) return words;
  for (const TomlNode& entry : table->node().inside) {
    Word word;
    word.code = entry.key;
    if (entry.kind == TomlKind::table) {
      auto inner = table->table(entry.key);
      word.name = inner->text("name");
      if (grouped) word.group = inner->text("group");
      inner->finish();
    } else {
      word.name = table->text(entry.key);
    }
    if (!codes.insert(lower(word.code)).second) {
      table->wrong(entry, in_quotes(word.code) + " stands twice",
                   "a sheet does not tell capitals from small letters");
    }
    words.push_back(std::move(word));
  }
  return words;
}

NamedSize& size_named(std::vector<NamedSize>& sizes, const Size& nominal) {
  const auto at =
      std::find_if(sizes.begin(), sizes.end(), [&](const NamedSize& s) { return s.nominal == nominal; });
  if (at != sizes.end()) return *at;
  sizes.push_back({nominal, std::nullopt});
  return sizes.back();
}

constexpr std::size_t kMostSizes = 1000;

void refuse_sizes(TomlTable& table, const TomlNode& node) {
  table.wrong(node, "more than 1,000 sizes", "name those that are sawn often");
}

/// A slip of the pen in a target would spoil every recovery figure in silence.
bool far_apart(Length a, Length b) {
  const Rational off = measure::in_inches(a) - measure::in_inches(b);
  return off > Rational(1) || off < Rational(-1);
}

}  // namespace

Result<Length> read_log_diameter(std::string_view text, bool metric) {
  if (!metric) return measure::read_inches(text);
  const bool plain =
      !text.empty() && (std::string_view("0123456789.").find(text.back()) != std::string_view::npos);
  return measure::read_millimetres(plain ? std::string(text) + "cm" : std::string(text));
}

void read_targets(TomlTable& holder, bool metric, std::vector<NamedSize>& sizes) {
  auto table = holder.table("target");
  if (!table) return;
  if (table->node().inside.size() > kMostSizes) return refuse_sizes(*table, table->node());
  const auto size_of = [metric](std::string_view text) { return measure::read_size(text, metric); };
  for (const TomlNode& entry : table->node().inside) {
    const auto nominal = size_of(entry.key);
    if (!nominal) {
      table->wrong(entry, entry.key + ": " + nominal.slip().what, nominal.slip().instead);
      continue;
    }
    const auto target = table->read<Size>(entry.key, size_of);
    if (!target) continue;
    size_named(sizes, *nominal).target = target;
    if (far_apart(nominal->thickness, target->thickness) || far_apart(nominal->width, target->width)) {
      table->doubtful_at(
          entry.key,
          "a " + entry.key + " cut to '" + measure::write_size(*target, metric) + "' is over an inch off",
          "look at both sizes again");
    }
  }
}

void read_mill_table(TomlTable& root, Mill& mill) {
  auto table = root.table("mill");
  if (!table) return;
  set_text(mill.name, table->text("name"));
  mill.owner = table->text("owner");
  mill.address = table->words("address");
  mill.phone = table->text("phone");
  mill.email = table->text("email");
  mill.tax_number = table->text("tax_number");
  mill.logo = table->text("logo");
  mill.terms = table->words("terms");
  mill.sites = table->words("sites");
  set(mill.units, table->read<System>("units", read_units_word));
  read_currency(*table, mill.currency);
  set(mill.a4, table->read<bool>("paper", read_paper_word));
  set(mill.dates, table->read<std::string>("dates", read_dates_word));
  set(mill.week_start, table->read<int>("week_start", read_weekday_word));
  if (const auto season = table->read<MonthDay>("season", read_season)) {
    mill.season_month = season->month;
    mill.season_day = season->day;
  }
  table->finish();
}

void read_capacity(TomlTable& root, Mill& mill) {
  auto table = root.table("capacity");
  if (!table) return;
  const bool metric = is_metric(mill);
  mill.largest_log = table->read<Length>(
      "largest_log", [metric](std::string_view t) { return read_log_diameter(t, metric); });
  mill.longest_log = table->read<Length>(
      "longest_log", [metric](std::string_view t) { return measure::read_length(t, metric); });
  const auto board = table->read<Size>(
      "largest_board", [metric](std::string_view t) { return measure::read_size(t, metric); });
  if (board) {
    mill.thickest_board = board->thickness;
    mill.widest_board = board->width;
  }
  mill.most_bf_a_day = table->whole("bf_a_day", 1, 1'000'000);
  table->finish();
}

void read_saws(TomlTable& root, Mill& mill) {
  constexpr std::size_t kMostSaws = 20;
  for (auto& table : root.tables("saw")) {
    if (mill.saws.size() == kMostSaws) {
      table.wrong(table.node(), "more than 20 saws", "leave out those that are no longer used");
      return;
    }
    Saw saw = read_saw(table, is_metric(mill));
    const auto same = [&](const Saw& other) { return same_word(other.role, saw.role); };
    if (!saw.role.empty() && std::any_of(mill.saws.begin(), mill.saws.end(), same)) {
      table.wrong_at("role", "a second saw called " + in_quotes(saw.role), "give each saw a name of its own");
    }
    mill.saws.push_back(std::move(saw));
  }
}

void read_lumber(TomlTable& root, Mill& mill) {
  const bool metric = is_metric(mill);
  mill.species = read_words(root, "species", true);
  mill.grades = read_words(root, "grade", false);
  auto table = root.table("lumber");
  if (!table) return;
  const TomlNode* listed = table->node().find("sizes");
  if (listed != nullptr && listed->inside.size() > kMostSizes) return refuse_sizes(*table, *listed);
  const auto sizes =
      table->read_list<Size>("sizes", [metric](std::string_view t) { return measure::read_size(t, metric); });
  for (const Size& size : sizes) size_named(mill.sizes, size);
  read_targets(*table, metric, mill.sizes);
  table->finish();
}

}  // namespace kerfbook::book
