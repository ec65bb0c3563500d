// completion.cpp -- `kerfbook help completion`: what lets bash finish the words of a kerfbook command, from the forms of
// the commands.
#include "base/text.h"
#include "command/help.h"

namespace kerfbook::command {
namespace {

constexpr const char* kHead =
    R"(# Lets bash finish the words of a kerfbook command. Made by: kerfbook help completion
_kerfbook_of() { COMPREPLY=($(compgen -W "$1" -- "$word")); }
_kerfbook_files() { compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -f -- "$word"); }
_kerfbook() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command= i
  if [[ $word == = ]]; then word=; fi
  if [[ $before == = ]]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi
  COMPREPLY=()
  for ((i = 1; i < COMP_CWORD; ++i)); do
    case ${COMP_WORDS[i]} in
      -b|--book|--today) ((++i)) ;;
      -*) ;;
      *) command=${COMP_WORDS[i]}; break ;;
    esac
  done
)";

constexpr const char* kFoot = R"(  esac
}
complete -F _kerfbook kerfbook
)";

bool is_file(const Row& row) {
  const std::string what = is_option(row) ? value_of(row) : name_of(row);
  return what == "FILE" || what == "FOLDER" || what == "SHEET" || what == "BOOK";
}

/// What finishes that which stands there: one of its choices, a file, or nothing that is known.
std::string finished_by(const Row& row) {
  if (row.choices != nullptr) return "_kerfbook_of '" + join(row.choices(), " ") + "'";
  return is_file(row) ? "_kerfbook_files" : ":";
}

/// After an option that takes a value stands that value.
std::string after_options(const Rows& rows) {
  std::string out;
  for (const Row& row : rows) {
    if (!value_of(row).empty())
      out += "        " + join(names_of(row), "|") + ") " + finished_by(row) + "; return ;;\n";
  }
  return out;
}

/// Where a word without dashes stands: the first has its choices right behind the command.
std::string word_of(const std::string& command, const Rows& rows) {
  for (const Row& row : rows) {
    if (is_option(row) || finished_by(row) == ":") continue;
    if (row.choices == nullptr) return "      " + finished_by(row) + "\n";
    return "      if [[ $before == " + command + " ]]; then " + finished_by(row) + "; fi\n";
  }
  return "";
}

std::string case_of(const std::string& command, const Rows& rows, const std::string& words) {
  std::vector<std::string> options;
  for (const Row& row : rows) {
    if (!is_option(row)) continue;
    for (const std::string& name : names_of(row)) options.push_back(name);
  }
  return "    " + (command.empty() ? "''" : command) + ")\n      case $before in\n" + after_options(rows) +
         "      esac\n      if [[ $word == -* ]]; then _kerfbook_of '" + join(options, " ") +
         "'; return; fi\n" + words + "      ;;\n";
}

}  // namespace

std::string completion_script() {
  std::string unused;
  const Rows common = common_rows(unused, unused);
  std::vector<std::string> names;
  for (const Command& command : commands()) names.emplace_back(command.name);
  std::string out = std::string(kHead) + "  case $command in\n" +
                    case_of("", common, "      _kerfbook_of '" + join(names, " ") + "'\n");
  for (const Command& command : commands()) {
    const Form form = command.form();
    const std::string name(command.name);
    out += case_of(name, form.rows + common, word_of(name, form.rows));
  }
  return out + kFoot;
}

}  // namespace kerfbook::command
