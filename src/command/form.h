// form.h -- how a command is written: a table of its words and options, each with its meaning and the place it goes to,
// and with them the examples and the deed. The command line is read by it; help pages, the manual page and the completion
// of the shell are made from it.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace kerfbook::command {

class Session;

/// Where that goes which stands on the command line. A bool is set by an option that takes nothing, a vector takes any
/// number of words, or of times the option stands there; `int` takes a whole number, `std::int64_t` one from 1 up.
/// Nothing: what the reader of the command line answers itself (--help, --version).
using Place =
    std::variant<std::monostate, std::string*, std::vector<std::string>*, int*, std::int64_t*, bool*>;

/// One word or option.
struct Row {
  /// As the help shows it: "SUM", "[JOB]" when it may be left out, "SHEET..." when there may be several; "--job JOB",
  /// "-o, --out FILE", "--refund".
  std::string written;
  Place place;
  std::string meaning;
  bool must = false;                                ///< an option that cannot be left out
  std::vector<std::string> (*choices)() = nullptr;  ///< all it can be, when they are few; nullptr = not known
};
using Rows = std::vector<Row>;

Rows operator+(Rows first, const Rows& then);
/// The option cannot be left out.
Row must(Row row);
/// What stands there is one of these.
Row one_of(Row row, std::vector<std::string> (*choices)());

[[nodiscard]] bool is_option(const Row& row);  ///< else a word without dashes
[[nodiscard]] bool is_flag(const Row& row);    ///< an option that takes nothing
[[nodiscard]] bool is_required(const Row& row);
/// "JOB"; of an option every name: "-o", "--out".
[[nodiscard]] std::vector<std::string> names_of(const Row& row);
/// The name it is called by: "JOB", "--out".
[[nodiscard]] std::string name_of(const Row& row);
/// What stands after the option: "FILE"; empty for a flag or a word.
[[nodiscard]] std::string value_of(const Row& row);

/// A command's whole form.
struct Form {
  Rows rows = {};
  std::string footer = {};          ///< prose, and examples: lines that begin "  kerfbook "
  std::string (*more)() = nullptr;  ///< stands below the footer; worked out when the page is shown
  std::function<void(const Session& session)> deed = {};  ///< with what the places hold by then
  bool changes = false;  ///< it posts, or makes something that is to last: a failure says whether it did
};

}  // namespace kerfbook::command
