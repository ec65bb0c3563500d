#include "mill/toml_table.h"

#include <algorithm>
#include <set>

#include "base/text.h"

namespace kerfbook::book {
namespace {

/// The largest price, sum or share that is read: so large that what it comes to can still be counted exactly.
constexpr std::int64_t kMostNumber = 1'000'000'000;

}  // namespace

const TomlNode* TomlNode::find(std::string_view wanted) const {
  const auto at =
      std::lower_bound(by_key.begin(), by_key.end(), wanted,
                       [this](std::size_t n, std::string_view than) { return inside[n].key < than; });
  return at == by_key.end() || inside[*at].key != wanted ? nullptr : &inside[*at];
}

const TomlNode* TomlTable::take(std::string_view key) {
  asked_.emplace_back(key);
  const TomlNode* node = table_->find(key);
  const bool blank = node != nullptr && node->kind == TomlKind::text && node->written.empty();
  return blank ? nullptr : node;
}

std::vector<const TomlNode*> TomlTable::take_list(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return {};
  if (node->kind != TomlKind::list) return {node};
  std::vector<const TomlNode*> all;
  for (const TomlNode& one : node->inside) all.push_back(&one);
  return all;
}

bool TomlTable::is_scalar(const TomlNode& node) {
  if (node.kind == TomlKind::text || node.kind == TomlKind::number) return true;
  wrong(node, "a text is wanted here", "write it in quotes: \"...\"");
  return false;
}

void TomlTable::wrong(const TomlNode& node, std::string what, std::string instead) {
  file_->found.push_back({Severity::error, node.place, std::move(what), std::move(instead)});
}

void TomlTable::wrong(const TomlNode& node, const Slip& slip) {
  const Place place{node.place.line, node.place.column + node.inset + slip.at};
  file_->found.push_back({Severity::error, place, slip.what, slip.instead});
}

void TomlTable::wrong_at(std::string_view key, std::string what, std::string instead) {
  const TomlNode* node = table_->find(key);
  wrong(node != nullptr ? *node : *table_, std::move(what), std::move(instead));
}

void TomlTable::doubtful_at(std::string_view key, std::string what, std::string instead) {
  wrong_at(key, std::move(what), std::move(instead));
  file_->found.back().severity = Severity::warning;
}

std::string TomlTable::text(std::string_view key) {
  const TomlNode* node = take(key);
  return node != nullptr && is_scalar(*node) ? node->written : "";
}

std::vector<std::string> TomlTable::words(std::string_view key) {
  return read_list<std::string>(key, [](std::string_view word) -> Result<std::string> {
    if (word.empty()) return Slip{"an empty text in a list", "leave it out", 0};
    return std::string(word);
  });
}

std::optional<bool> TomlTable::flag(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == TomlKind::flag) return node->written == "true";
  wrong(*node, in_quotes(key) + " is yes or no", "write true or false, without quotes");
  return std::nullopt;
}

std::optional<std::int64_t> TomlTable::whole(std::string_view key, std::int64_t least, std::int64_t most) {
  return read<std::int64_t>(key, [&](std::string_view written) -> Result<std::int64_t> {
    const auto got = read_decimal(written, 0);
    if (got && *got >= Rational(least) && *got <= Rational(most)) return got->rounded(0);
    return Slip{in_quotes(key) + " is " + in_quotes(written),
                "write a whole number from " + std::to_string(least) + " to " + std::to_string(most), 0};
  });
}

std::optional<Rational> TomlTable::number(std::string_view key, int max_places) {
  return read<Rational>(key, [&](std::string_view written) -> Result<Rational> {
    const auto number = read_decimal(written, max_places);
    if (number && (*number > Rational(kMostNumber) || *number < Rational(-kMostNumber)))
      return Slip{in_quotes(written) + " is more than any mill's",
                  "write at most " + grouped({kMostNumber, 0}), 0};
    return number;
  });
}

std::optional<Day> TomlTable::day(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (const auto day = read_day(node->written)) return day;
  wrong(*node, in_quotes(key) + " is no day", "write it as 2026-05-04");
  return std::nullopt;
}

std::optional<TomlTable> TomlTable::table(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return std::nullopt;
  const std::string name(key);
  if (node->kind == TomlKind::table) return TomlTable(*node, "[" + name + "]", *file_);
  if (node->kind == TomlKind::list) {
    wrong(*node, "[[" + name + "]] stands once", "write [" + name + "], with single brackets");
  } else {
    wrong(*node, in_quotes(name) + " is a table", "write " + name + " = { ... } or [" + name + "]");
  }
  return std::nullopt;
}

std::vector<TomlTable> TomlTable::tables(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return {};
  const std::string name = "[[" + std::string(key) + "]]";
  if (node->kind != TomlKind::list) {
    wrong(*node, name + " may stand more than once", "write " + name + ", with double brackets");
    return {};
  }
  std::vector<TomlTable> all;
  for (const TomlNode& one : node->inside) {
    if (one.kind == TomlKind::table) {
      all.emplace_back(one, name, *file_);
    } else {
      wrong(one, name + " is a table", "write " + name + " above its own keys");
    }
  }
  return all;
}

void TomlTable::finish() {
  constexpr std::size_t kMostUnknown = 200;  // mended a hundred at a time anyway
  std::size_t unknown = 0;
  const std::set<std::string_view> asked(asked_.begin(), asked_.end());
  for (const TomlNode& entry : table_->inside) {
    if (asked.contains(entry.key)) continue;
    if (++unknown > kMostUnknown) break;
    const std::string near = nearest(entry.key, asked_);
    file_->found.push_back(
        {Severity::error, entry.key_place, in_quotes(entry.key) + " is no key of " + what_,
         near.empty() ? "its keys are " + join(asked_, ", ") : "did you mean " + near + "?"});
  }
}

}  // namespace kerfbook::book
