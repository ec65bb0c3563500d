// toml_table.h -- one table of a TOML file, read key by key with every slip noted at its place. Private to billing:
// it brings the TOML library in, so only the files that read TOML include it.
#pragma once

// The library is used header-only here, so that the program needs no shared library of it to start.
#undef TOML_HEADER_ONLY
#undef TOML_SHARED_LIB
#define TOML_HEADER_ONLY 1
#define TOML_SHARED_LIB 0
#include <toml++/toml.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/exact.h"
#include "base/result.h"

namespace kerfbook::billing {

/// The file's lines and what was found wrong in it so far.
struct TomlFile {
  std::vector<std::string_view> lines;
  std::vector<Diagnostic> found;
};

/// Reads one table. Every getter remembers its key; `finish` makes errors of the keys nobody asked for.
class TomlTable {
 public:
  /// `what` names the table in messages: "[[price]]".
  TomlTable(const toml::table& table, std::string what, TomlFile& file);

  std::string text(std::string_view key);                    ///< empty when absent
  std::vector<std::string> words(std::string_view key);      ///< a word or a list of words
  std::optional<bool> flag(std::string_view key);
  std::optional<std::int64_t> whole(std::string_view key, std::int64_t least);
  /// A number exactly as its digits say; never through a double.
  std::optional<Rational> number(std::string_view key, int max_places);
  std::optional<Day> day(std::string_view key);
  std::optional<TomlTable> table(std::string_view key);      ///< an inline table
  [[nodiscard]] bool has(std::string_view key) const { return table_->contains(key); }
  [[nodiscard]] int line() const;

  /// The text under `key` through a reader that gives a Result<T>.
  template <class T, class Reader>
  std::optional<T> read(std::string_view key, Reader reader) {
    const toml::node* node = take(key);
    if (node == nullptr) return std::nullopt;
    Result<T> got = reader(written(*node));
    if (got) return *got;
    wrong(*node, std::string(key) + ": " + got.slip().what, got.slip().instead);
    return std::nullopt;
  }
  /// A list of them: a single value or an array.
  template <class T, class Reader>
  std::vector<T> read_list(std::string_view key, Reader reader) {
    std::vector<T> all;
    for (const toml::node* node : take_list(key)) {
      Result<T> got = reader(written(*node));
      if (got) all.push_back(*got);
      else wrong(*node, std::string(key) + ": " + got.slip().what, got.slip().instead);
    }
    return all;
  }

  void wrong_at(std::string_view key, std::string what, std::string instead);  ///< at the key's value, or the table
  void finish();

 private:
  const toml::node* take(std::string_view key);
  std::vector<const toml::node*> take_list(std::string_view key);
  void wrong(const toml::node& node, std::string what, std::string instead);
  /// The value as it stands in the file: a string's content, or the very digits of a number.
  [[nodiscard]] std::string written(const toml::node& node) const;

  const toml::table* table_;
  std::string what_;
  TomlFile* file_;
  std::vector<std::string> asked_;
};

Place place_of(const toml::source_region& region);

}  // namespace kerfbook::billing
