// toml_table.h -- a TOML file as a tree that keeps every place, and one table of it read key by key with every slip
// noted. Numbers stay the digits that were typed: none ever goes through floating point. What the keys mean is the
// business of read_*.cpp here and of price/. The TOML library itself is known to read_toml.cpp alone.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/exact.h"
#include "base/result.h"

namespace kerfbook::book {

enum class TomlKind : std::uint8_t { text, number, flag, day, other, list, table };

struct TomlNode {
  TomlKind kind = TomlKind::table;
  std::string written;  ///< what stands in the quotes; of anything else without quotes, what was typed
  Place place;          ///< where the value begins; of a table its header or brace
  bool blanks = false;  ///< a text of nothing but blanks
  int inset = 0;        ///< characters from `place` to the first of `written`
  std::string key;      ///< inside a table: its key
  Place key_place;
  std::vector<TomlNode> inside;     ///< of a list its items, of a table its entries, in the order of the file
  std::vector<std::size_t> by_key;  ///< of a table: the places of `inside`, in the order of their keys

  [[nodiscard]] const TomlNode* find(
      std::string_view wanted) const;  ///< an entry; nullptr when there is none
};

struct TomlFile {
  TomlNode root;
  std::vector<Diagnostic>
      found;  ///< what is no TOML at all (then `root` is empty); readers add what they find
};
TomlFile read_toml(std::string_view text);

/// Reads one table. Every getter remembers its key; `finish` makes errors of the keys nobody asked for. An empty text
/// is as good as a key that is not there, so that a form may be left blank.
class TomlTable {
 public:
  /// `what` names the table in messages: "[[saw]]". Both nodes must outlive this.
  TomlTable(const TomlNode& table, std::string what, TomlFile& file)
      : table_(&table), what_(std::move(what)), file_(&file) {}

  std::string text(std::string_view key);  ///< empty when absent; digits without quotes are taken too
  std::vector<std::string> words(std::string_view key);  ///< a text or a list of texts
  std::optional<bool> flag(std::string_view key);
  std::optional<std::int64_t> whole(std::string_view key, std::int64_t least, std::int64_t most);
  std::optional<Rational> number(std::string_view key,
                                 int max_places);  ///< from -1,000,000,000 to 1,000,000,000
  std::optional<Day> day(std::string_view key);
  std::optional<TomlTable> table(std::string_view key);
  std::vector<TomlTable> tables(std::string_view key);  ///< [[key]], in order of the file

  /// The text under `key` through a reader that gives a Result<T>; digits without quotes are read as well.
  template <class T, class Reader>
  std::optional<T> read(std::string_view key, Reader reader) {
    const TomlNode* node = take(key);
    return node == nullptr ? std::nullopt : read_node<T>(*node, reader);
  }
  /// A list of them: a single value or an array. Those that cannot be read are noted and left out.
  template <class T, class Reader>
  std::vector<T> read_list(std::string_view key, Reader reader) {
    std::vector<T> all;
    for (const TomlNode* node : take_list(key)) {
      if (auto got = read_node<T>(*node, reader)) all.push_back(std::move(*got));
    }
    return all;
  }
  template <class T, class Reader>
  std::optional<T> read_node(const TomlNode& node, Reader reader) {
    if (!is_scalar(node)) return std::nullopt;
    Result<T> got = reader(std::string_view(node.written));
    if (got) return *got;
    wrong(node, got.slip());
    return std::nullopt;
  }

  [[nodiscard]] const TomlNode& node() const { return *table_; }
  [[nodiscard]] bool has(std::string_view key) const { return table_->find(key) != nullptr; }
  [[nodiscard]] int line() const { return table_->place.line; }
  void wrong(const TomlNode& node, std::string what, std::string instead);
  void wrong(const TomlNode& node, const Slip& slip);  ///< at the character the slip points at
  void wrong_at(std::string_view key, std::string what,
                std::string instead);  ///< at the key's value, or the table
  void doubtful_at(std::string_view key, std::string what, std::string instead);  ///< a warning
  void allow(std::string_view key) { asked_.emplace_back(key); }                  ///< a key that others read
  void finish();

 private:
  const TomlNode* take(std::string_view key);
  std::vector<const TomlNode*> take_list(std::string_view key);
  bool is_scalar(const TomlNode& node);  ///< else noted

  const TomlNode* table_;
  std::string what_;
  TomlFile* file_;
  std::vector<std::string> asked_;
};

}  // namespace kerfbook::book
