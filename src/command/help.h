// help.h -- every help page, and every complaint about how a command was typed, in this program's own words: the library
// that reads the command line shows none of its own.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
class FormatterBase;
class ParseError;
}  // namespace CLI

namespace kerfbook::command {

constexpr int kPageWidth = 80;  ///< columns of every help page, whatever the terminal

/// Lays out the page of the program or of one command; set on the program before its commands are added.
std::shared_ptr<CLI::FormatterBase> help_pages();
std::string help_page(const CLI::App& app);

/// What is wrong with the command as typed and what would be right, in one sentence. `names`: all commands.
std::string complaint(const CLI::App& program, const CLI::ParseError& error,
                      const std::vector<std::string>& arguments, const std::vector<std::string>& names);

/// Two columns: what is written, and what it means, broken to the page. `left` = the width of the first; a text wider
/// than that stands on a line of its own.
std::string beside(std::string_view written, std::string_view meaning, int left);
/// "; did you mean WORD?", or nothing when no known word is near.
std::string did_you_mean(std::string_view typed, const std::vector<std::string>& known);

/// The language of the day sheet on one page, from the table of line kinds.
std::string sheet_page();
/// Every line kind by an example and what it means, a line each.
std::string sheet_lines();

}  // namespace kerfbook::command
