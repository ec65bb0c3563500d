#include "sheet/guess.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "base/day.h"
#include "base/text.h"

namespace kerfbook::sheet {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;
constexpr std::array kMeant{
    Pair{"date", "sheet"},        Pair{"day", "sheet"},       Pair{"place", "site"},
    Pair{"farm", "site"},         Pair{"location", "site"},   Pair{"hours", "crew"},
    Pair{"hands", "crew"},        Pair{"men", "crew"},        Pair{"helper", "crew"},
    Pair{"time", "sawing"},       Pair{"saw", "sawing"},      Pair{"ran", "sawing"},
    Pair{"sawed", "sawing"},      Pair{"down", "stop"},       Pair{"downtime", "stop"},
    Pair{"delay", "stop"},        Pair{"wait", "stop"},       Pair{"waiting", "stop"},
    Pair{"break", "stop"},        Pair{"customer", "job"},    Pair{"client", "job"},
    Pair{"owner", "job"},         Pair{"wood", "species"},    Pair{"tree", "species"},
    Pair{"timber", "species"},    Pair{"pack", "bundle"},     Pair{"tag", "bundle"},
    Pair{"kerf", "setup"},        Pair{"trunk", "log"},       Pair{"stem", "log"},
    Pair{"sawlog", "log"},        Pair{"received", "in"},     Pair{"deck", "in"},
    Pair{"minus", "less"},        Pair{"subtract", "less"},   Pair{"cull", "less"},
    Pair{"culls", "less"},        Pair{"waste", "less"},      Pair{"recut", "resaw"},
    Pair{"resawn", "resaw"},      Pair{"sale", "sold"},       Pair{"sell", "sold"},
    Pair{"tooth", "teeth"},       Pair{"bits", "teeth"},      Pair{"bit", "teeth"},
    Pair{"sharpen", "teeth"},     Pair{"sharpened", "teeth"}, Pair{"caliper", "thick"},
    Pair{"calipers", "thick"},    Pair{"fee", "charge"},      Pair{"bill", "charge"},
    Pair{"engine", "meter"},      Pair{"clock", "meter"},     Pair{"hourmeter", "meter"},
    Pair{"diesel", "fuel"},       Pair{"gas", "fuel"},        Pair{"gasoline", "fuel"},
    Pair{"petrol", "fuel"},       Pair{"travel", "move"},     Pair{"moved", "move"},
    Pair{"drive", "move"},        Pair{"drove", "move"},      Pair{"miles", "move"},
    Pair{"remark", "note"},       Pair{"comment", "note"},    Pair{"remember", "note"},
    Pair{"slabs", "residue"},     Pair{"sawdust", "residue"}, Pair{"dust", "residue"},
    Pair{"chips", "residue"},     Pair{"bark", "residue"},    Pair{"edgings", "residue"},
    Pair{"byproduct", "residue"},
};

std::vector<std::string> digit_groups(std::string_view text) {
  std::vector<std::string> groups;
  bool in_group = false;
  for (const char c : text) {
    if (!is_digit(c)) {
      if (std::string_view("-/. ").find(c) == std::string_view::npos) return {};
      in_group = false;
      continue;
    }
    if (!in_group) groups.emplace_back();
    in_group = true;
    groups.back() += c;
  }
  const bool sane =
      std::all_of(groups.begin(), groups.end(), [](const auto& one) { return one.size() <= 4; });
  return sane ? groups : std::vector<std::string>();
}

std::string day_if(int year, int month, int day) {
  return day_exists(year, month, day) ? write_day(make_day(year, month, day)) : std::string();
}

std::string either(const std::string& one, const std::string& other) {
  if (one.empty() || one == other) return other;
  return other.empty() ? one : one + " or " + other;
}

}  // namespace

std::string likely_day(std::string_view typed) {
  if (typed.size() == 8 && all_digits(typed)) {
    const std::string text(typed);
    return day_if(std::stoi(text.substr(0, 4)), std::stoi(text.substr(4, 2)), std::stoi(text.substr(6)));
  }
  const auto groups = digit_groups(typed);
  if (groups.size() != 3) return {};
  const std::array<int, 3> parts{std::stoi(groups[0]), std::stoi(groups[1]), std::stoi(groups[2])};
  if (groups[0].size() == 4) {
    const std::string in_order = day_if(parts[0], parts[1], parts[2]);
    return in_order.empty() ? day_if(parts[0], parts[2], parts[1]) : in_order;
  }
  constexpr int kCentury = 2000;
  const int year = groups[2].size() == 2 ? kCentury + parts[2] : parts[2];
  return either(day_if(year, parts[0], parts[1]), day_if(year, parts[1], parts[0]));
}

std::string likely_clock(std::string_view typed) {
  std::string text = lower(trim(typed));
  const bool afternoon = text.ends_with("pm");
  if (afternoon || text.ends_with("am")) text.resize(text.size() - 2);
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '.' || c == ','; }, ':');
  if (all_digits(text) && text.size() <= 2) text += ":00";
  if (all_digits(text) && text.size() == 3) text.insert(1, ":");
  const auto minutes = read_clock(text);
  if (!minutes) return {};
  constexpr int kNoon = 12 * 60;
  return write_clock(afternoon && *minutes < kNoon ? *minutes + kNoon : *minutes);
}

std::string likely_time(std::string_view typed) {
  const std::size_t dash = typed.find('-');
  if (dash != std::string_view::npos) {
    const std::string from = likely_clock(typed.substr(0, dash));
    const std::string to = likely_clock(typed.substr(dash + 1));
    const std::string span = from + "-" + to;
    return !from.empty() && !to.empty() && read_span(span) ? span : std::string();
  }
  std::string text = lower(trim(typed));
  if (text.ends_with('\''))
    return read_duration(text.substr(0, text.size() - 1)) ? text.substr(0, text.size() - 1) + "min" : "";
  if (text.find(':') != std::string::npos && text.ends_with('h')) text.pop_back();
  std::replace(text.begin(), text.end(), ',', '.');
  return read_duration(text) ? text : std::string();
}

std::string with_point(std::string_view typed) {
  std::string text(typed);
  const std::size_t comma = text.find(',');
  const bool between = comma != std::string::npos && comma > 0 && comma + 1 < text.size() &&
                       is_digit(text[comma - 1]) && is_digit(text[comma + 1]);
  if (!between || text.find_first_of(".,", comma + 1) != std::string::npos) return {};
  text[comma] = '.';
  return text;
}

std::string_view word_meant(std::string_view typed) {
  const auto* at = std::find_if(kMeant.begin(), kMeant.end(),
                                [&](const Pair& one) { return same_word(one.first, typed); });
  return at == kMeant.end() ? std::string_view() : at->second;
}

}  // namespace kerfbook::sheet
