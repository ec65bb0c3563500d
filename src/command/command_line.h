// command_line.h -- the command line, read by the forms of the commands. The library that reads it is known to the one
// file behind this: its words, its pages and its errors stay there.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command/command.h"

namespace kerfbook::command {

/// What is wrong with a command line.
enum class Fault {
  no_command,     ///< none is named; `typed` = the first word that is none, if there is one
  extra_word,     ///< `typed` belongs to nothing
  missing,        ///< of `row` that must be there
  nothing_after,  ///< an option that takes a value stands without one
  nothing_goes,   ///< a value was given to an option that takes none
  twice,          ///< an option stands there twice
  no_number,      ///< `typed` is none, where a whole number belongs
  unclear
};

struct Misread {
  Fault fault = Fault::unclear;
  std::optional<Row> row;  ///< the word or option it is of
  std::string typed;
};

struct CommandLine {
  const Command* command = nullptr;  ///< nullptr: none is named
  Form form;                         ///< of that command, its places filled
  bool wants_page = false;           ///< --help, of the command or of the program
  bool wants_version = false;
  std::optional<Misread> misread;
};

/// `common`: the rows that go with every command, --help the last of them. Only the forms of commands are made whose name stands in the line.
CommandLine read_command_line(const std::vector<std::string>& arguments, const Rows& common);

}  // namespace kerfbook::command
