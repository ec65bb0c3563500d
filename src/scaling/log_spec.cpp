// log_spec.cpp -- a log as a sheet writes it, `12/13-15x16'6"`, read and printed. The words that may follow (mid,
// girth, segments, defect) are read by who reads the line; the defect itself is in defect_spec.cpp.
#include <algorithm>
#include <optional>
#include <string>
#include "base/text.h"

#include "measure/notation.h"
#include "scaling/scaling.h"
#include "scaling/tape.h"

namespace kerfbook::scaling {
namespace {

using measure::PlainText;

constexpr std::int64_t kMostInches = 240;
constexpr std::int64_t kMostFeet = 400;

/// A part of the plain text: where it starts, and what it is.
struct Part {
  std::size_t from = 0;
  std::string text;
};

/// A slip met in a part, placed in the whole.
Slip placed(Slip slip, const PlainText& whole, std::size_t from) {
  slip.at += whole.at[from];
  return slip;
}

bool says_metric(std::string_view text) {
  return text.find('m') != std::string_view::npos;
}
bool says_inches(std::string_view text) {
  return text.find_first_of("\"'") != std::string_view::npos || text.find("in") != std::string_view::npos ||
         text.find("ft") != std::string_view::npos || text.find("feet") != std::string_view::npos;
}

bool bare_number(std::string_view text) {
  return std::none_of(text.begin(), text.end(),
                      [](char c) { return (c >= 'a' && c <= 'z') || c == '"' || c == '\''; });
}

/// Is the slash at `slash` that of a typed 7½, which plain text writes 7+1/2?
bool of_fraction(std::string_view text, std::size_t slash) {
  std::size_t at = slash;
  while (at > 0 && is_digit(text[at - 1])) --at;
  return at < slash && at > 0 && text[at - 1] == '+';
}

/// `12/13` in its readings.
std::vector<Part> split_readings(const Part& whole) {
  std::vector<Part> parts{{whole.from, ""}};
  for (std::size_t i = 0; i < whole.text.size(); ++i) {
    if (whole.text[i] == '/' && !of_fraction(whole.text, i)) {
      parts.push_back({whole.from + i + 1, ""});
    } else {
      parts.back().text += whole.text[i];
    }
  }
  return parts;
}

Result<Length> diameter(const std::string& text, bool metric) {
  if (!metric && (text.ends_with('\'') || text.ends_with("ft"))) {
    return Slip{in_quotes(text) + " is in feet where the diameter stands",
                "write diameter in inches x length in feet, as 15x12", 0};
  }
  return metric ? measure::read_millimetres(bare_number(text) ? text + "cm" : text) : read_tape(text);
}

/// What is wrong with a diameter that was read; nullopt = nothing.
std::optional<Slip> not_an_end(Length length, const std::string& text) {
  if (length.is_zero()) return Slip{"a diameter of zero", "write what was measured", 0};
  if (measure::in_inches(length) <= Rational(kMostInches)) return std::nullopt;
  return Slip{in_quotes(text) + " is no log's diameter", "write inches (metric: centimetres)", 0};
}

Result<std::vector<Length>> readings(const Part& part, const PlainText& whole, bool metric) {
  std::vector<Length> read;
  for (const Part& one : split_readings(part)) {
    if (one.text.empty())
      return Slip{"a diameter is missing", "write the log as 15x12 or 12/13-15x16", whole.at[one.from]};
    const auto length = diameter(one.text, metric);
    if (!length) return placed(length.slip(), whole, one.from);
    if (const auto slip = not_an_end(*length, one.text)) return placed(*slip, whole, one.from);
    read.push_back(*length);
  }
  if (read.size() > 2) {
    return Slip{"more than two readings of one end", "give one, or two at right angles: 12/13",
                whole.at[part.from]};
  }
  return read;
}

/// Is `12` `1/2` the one reading 12-1/2? Only when 1 and 2 could not be two readings of a large end.
bool is_fraction_of(std::string_view small, std::string_view after) {
  const auto slash = after.find('/');
  if (slash == std::string_view::npos || !all_digits(small) || small.size() > 4) return false;
  const auto above = after.substr(0, slash);
  const auto below = after.substr(slash + 1);
  if (!all_digits(above) || !all_digits(below) || above.size() > 2 || below.size() > 2) return false;
  const int over = std::stoi(std::string(above));
  const int under = std::stoi(std::string(below));
  const bool binary = under == 2 || under == 4 || under == 8 || under == 16 || under == 32 || under == 64;
  return binary && over < under && over < std::stoi(std::string(small));
}

Result<LogMeasure> read_ends(const PlainText& whole, std::size_t end, bool metric) {
  LogMeasure log;
  const std::string ends = whole.text.substr(0, end);
  const std::size_t dash = ends.find('-');
  const Part small{0, ends.substr(0, dash)};
  if (dash != std::string::npos && !metric && is_fraction_of(small.text, ends.substr(dash + 1))) {
    const auto length = measure::read_inches(ends);
    if (!length) return length.slip();
    if (const auto slip = not_an_end(*length, ends)) return *slip;
    log.small = {*length};
    return log;
  }
  auto read = readings(small, whole, metric);
  if (!read) return read.slip();
  log.small = *read;
  if (dash == std::string::npos) return log;
  const Part large{dash + 1, ends.substr(dash + 1)};
  if (const auto second = large.text.find('-'); second != std::string::npos) {
    return Slip{in_quotes(ends) + " has two dashes", "beside a large end write fractions as 12.5 or 12½",
                whole.at[dash + 1 + second]};
  }
  read = readings(large, whole, metric);
  if (!read) return read.slip();
  log.large = *read;
  return log;
}

std::string ends_text(const std::vector<Length>& ends, bool metric_book) {
  std::string text;
  for (const Length end : ends) {
    if (!text.empty()) text += '/';
    text += write_diameter(end, metric_book);
  }
  return text;
}

}  // namespace

Result<Length> read_diameter(std::string_view text, bool metric_book) {
  const PlainText whole = measure::plain_notation(text);
  const bool metric = says_metric(whole.text) || (metric_book && !says_inches(whole.text));
  const auto read = diameter(whole.text, metric);
  if (!read) return placed(read.slip(), whole, 0);
  if (read->is_zero()) return Slip{"a diameter of zero", "write what was measured", 0};
  return *read;
}

std::string write_diameter(Length diameter, bool metric_book) {
  if (diameter.system == System::metric) {
    return shortest(shown(Rational(diameter.count, measure::kPerCentimetre), 2)) + (metric_book ? "" : "cm");
  }
  return write_tape(diameter.count) + (metric_book ? "\"" : "");
}

Result<LogMeasure> read_log_spec(std::string_view spec, bool metric_book) {
  const PlainText whole = measure::plain_notation(spec);
  const std::string& text = whole.text;
  const std::size_t cross = text.find('x');
  const std::string shape =
      metric_book ? "write small end x length, as 30x4.8" : "write small end x length, as 15x12";
  if (cross == std::string::npos) return Slip{in_quotes(spec) + " has no length", shape, 0};
  if (const auto again = text.find('x', cross + 1); again != std::string::npos) {
    return Slip{in_quotes(spec) + " has more than a diameter and a length", shape, whole.at[again]};
  }
  if (says_metric(text) && says_inches(text)) {
    return Slip{in_quotes(spec) + " mixes inches and metric", "measure a log in one system", 0};
  }
  const bool metric = says_metric(text) || (metric_book && !says_inches(text));
  auto log = read_ends(whole, cross, metric);
  if (!log) return log.slip();
  const std::string after = text.substr(cross + 1);
  const auto length = metric ? measure::read_metres(after) : measure::read_feet(after);
  if (!length) return placed(length.slip(), whole, cross + 1);
  if (length->is_zero()) return Slip{"a log of no length", shape, whole.at[cross + 1]};
  if (measure::in_feet(*length) > Rational(kMostFeet)) {
    return Slip{in_quotes(after) + " is no log's length", metric ? "write metres" : "write feet",
                whole.at[cross + 1]};
  }
  log->length = *length;
  return log;
}

std::string write_log_spec(const LogMeasure& log, bool metric_book) {
  std::string text = ends_text(log.small, metric_book);
  if (!log.large.empty()) {
    std::string large = ends_text(log.large, metric_book);
    // 7 at one end, 1 and 2 at the other: 7-1/2 would be read as seven and a half
    if (is_fraction_of(text, large)) large.insert(large.find('/'), ".0");
    text += "-" + large;
  }
  text += "x" + write_long_tape(log.length, metric_book);
  if (log.length.system == System::metric && metric_book) text.pop_back();  // the m
  return text;
}

}  // namespace kerfbook::scaling
