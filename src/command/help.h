// help.h -- every help page, and every complaint about how a command was typed, in this program's own words: the library
// that reads the command line shows none of its own.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "command/command_line.h"

namespace kerfbook::command {

constexpr int kPageWidth = 80;  ///< columns of every help page, whatever the terminal

constexpr std::string_view kWhatItIs = "the daily production and tally logbook of a portable sawmill";
/// What stands below the list of commands.
constexpr std::string_view kProgramFooter =
    "A first evening:\n"
    "  kerfbook new mill.book\n"
    "  kerfbook -b mill.book post 2026-05-05.sheet\n"
    "  kerfbook -b mill.book report day\n"
    "\n"
    "How a day sheet is written: kerfbook help sheet. Each command has a page of its own with an example, as "
    "kerfbook post --help.\n"
    "\n"
    "A command ends with 0: done; 1: refused, and nothing was changed; 2: the command was not written as it "
    "must be; 3: "
    "the book or the machine failed.";

/// The page of the program, and of one command.
std::string help_page();
std::string help_page(const Command& command);

/// "kerfbook waive JOB DAY CHARGE --why TEXT [choices]"
std::string written(const Command& command, const Form& form);

/// What is wrong with the command as typed and what would be right, in one sentence.
std::string complaint(const CommandLine& line, const std::vector<std::string>& arguments);

/// Two columns: what is written, and what it means, broken to the page. `left` = the width of the first; a text wider
/// than that stands on a line of its own.
std::string beside(std::string_view written, std::string_view meaning, int left);
/// "; did you mean WORD?", or nothing when no known word is near.
std::string did_you_mean(std::string_view typed, const std::vector<std::string>& known);

/// The language of the day sheet on one page, from the table of line kinds.
std::string sheet_page();
/// The whole program's manual page, in the language of `man`.
std::string manual_page();
/// A script for bash: source it, and the words of a command are finished by the key that does so.
std::string completion_script();
/// Every line kind by an example and what it means, a line each.
std::string sheet_lines();

}  // namespace kerfbook::command
