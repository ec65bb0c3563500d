// manual.cpp -- `kerfbook help man`: the program's manual page, for `man`, from the forms of the commands.
#include "base/text.h"
#include "command/help.h"

namespace kerfbook::command {
namespace {

/// As the typesetter of manual pages must be given it: its own signs written out, none of them beginning a line.
std::string typeset(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else if (c == '\'')
      out += "\\(aq";
    else
      out += c;
  }
  return out.starts_with('.') ? "\\&" + out : out;
}

/// What is typed, and below it, set in, what it means.
std::string rows_of(const Rows& rows) {
  std::string out;
  for (const Row& row : rows) out += ".TP\n.B " + typeset(row.written) + "\n" + typeset(row.meaning) + "\n";
  return out;
}

/// Prose is filled; lines that are set in stand as they are.
std::string prose(const std::string& text) {
  std::string out;
  bool as_it_is = false;
  bool begins = true;
  for (const auto line : split_lines(text)) {
    const bool set_in = line.starts_with(' ');
    if (set_in != as_it_is && !line.empty()) out += set_in ? ".PP\n.nf\n" : ".fi\n";
    if (!line.empty()) {
      if (!set_in && (begins || as_it_is)) out += ".PP\n";
      as_it_is = set_in;
      out += typeset(line) + "\n";
    }
    begins = line.empty();
  }
  return as_it_is ? out + ".fi\n" : out;
}

std::string of_command(const Command& command) {
  const Form form = command.form();
  const std::string what(command.what);
  return ".SS " + typeset(written(command, form)) + "\n" + typeset(what) + ".\n" + rows_of(form.rows) +
         prose(form.footer + (form.more == nullptr ? "" : form.more()));
}

}  // namespace

std::string manual_page() {
  std::string out = ".TH KERFBOOK 1 \"\" \"kerfbook " KERFBOOK_VERSION "\"\n.SH NAME\nkerfbook \\- " +
                    typeset(kWhatItIs) +
                    "\n.SH SYNOPSIS\n.B kerfbook\n[\\-b FILE] [\\-\\-today DAY] COMMAND ...\n"
                    ".SH DESCRIPTION\n" +
                    prose(std::string(kProgramFooter));
  std::string unused;
  out += ".SH WITH EVERY COMMAND\n" + rows_of(common_rows(unused, unused)) + ".SH COMMANDS\n";
  for (const Command& command : commands()) out += of_command(command);
  const Rows surroundings{{"KERFBOOK_BOOK", {}, "the book, when no -b names one"},
                          {"KERFBOOK_REPORTS", {}, "a folder with reports of your own"},
                          {"NO_COLOR", {}, "when it is set, a terminal is written to without colour"}};
  return out + ".SH ENVIRONMENT\n" + rows_of(surroundings);
}

}  // namespace kerfbook::command
