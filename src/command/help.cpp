#include "command/help.h"

#include <algorithm>
#include <array>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "render/text_table.h"

namespace kerfbook::command {
namespace {

constexpr int kWidestLeft = 24;
constexpr const char* kChoices = "[choices]";
Rows words_of(const Form& form) {
  Rows words;
  for (const Row& row : form.rows) {
    if (!is_option(row)) words.push_back(row);
  }
  return words;
}

/// Options of the form; --help, which every command has, last of all.
Rows options_of(const Form& form) {
  Rows options;
  for (const Row& row : form.rows) {
    if (is_option(row)) options.push_back(row);
  }
  std::string unused;
  options.push_back(common_rows(unused, unused).back());
  return options;
}

std::string laid_out(const Rows& rows) {
  int left = 0;
  for (const Row& row : rows) {
    if (screen_width(row.written) <= kWidestLeft) left = std::max(left, screen_width(row.written));
  }
  std::string out;
  for (const Row& row : rows) out += beside("  " + row.written, row.meaning, left + 2);
  return out;
}

/// A line that is indented, broken to the page, what follows its first line further in.
std::string set_in(std::string_view line) {
  const std::size_t in = line.find_first_not_of(' ');
  if (screen_width(line) <= kPageWidth) return std::string(line) + "\n";
  const auto left = static_cast<int>(in);
  return std::string(in, ' ') + render::wrapped(std::string(line), kPageWidth - left, 2 * left);
}

/// Prose is broken to the page; what is indented stays so, and what is to be typed stays as it is.
std::string footer(const std::string& text) {
  std::string out;
  std::string prose;
  bool headed = false;
  const auto end_prose = [&] {
    if (prose.empty()) return;
    out += render::wrapped(prose, kPageWidth);
    headed = prose.ends_with(':');
    prose.clear();
  };
  for (const auto line : split_lines(text)) {
    if (!line.empty() && line.front() != ' ') {
      prose += (prose.empty() ? "" : " ") + std::string(line);
      continue;
    }
    end_prose();
    if (line.starts_with("  kerfbook ") && !headed) out += "For example:\n";
    headed = headed || line.starts_with("  ");
    if (line.empty()) headed = false;
    const bool typed = line.starts_with("  kerfbook ") || line.empty();
    out += typed ? std::string(line) + "\n" : set_in(line);
  }
  end_prose();
  return out;
}

/// Options of the program and of the named command: "--period".
std::vector<std::string> option_names(const Form& form) {
  std::string unused;
  std::vector<std::string> names;
  for (const Row& row : common_rows(unused, unused) + form.rows) {
    if (!is_option(row)) continue;
    for (const std::string& name : names_of(row)) names.push_back(name);
  }
  return names;
}

/// Of one word or option of the command, or of what goes with every command.
std::string of_row(const CommandLine& line, const Row& row) {
  const std::string name = name_of(row);
  const std::string right = is_option(row) && !is_flag(row) ? name + " " + value_of(row) : name;
  const std::string typed = in_quotes(line.misread->typed);
  switch (line.misread->fault) {
    case Fault::missing:
      return std::string(line.command->name) + ": " + right + " is missing (" + row.meaning + "); write " +
             written(*line.command, line.form);
    case Fault::nothing_goes:
      return name + ": nothing more belongs to it; write " + name;
    case Fault::no_number:
      return name + ": " + typed + " is not a whole number" +
             (std::holds_alternative<std::int64_t*>(row.place) ? " from 1 up" : "") + "; write " + name +
             " 2";
    case Fault::twice:
      return name + " stands there twice; write it once";
    default:
      return name + ": nothing stands after it; write " + right;
  }
}

/// An option nobody knows, with the one that is near; empty when there is none.
std::string unknown_option(const Form& form, const std::vector<std::string>& arguments) {
  const auto known = option_names(form);
  for (const auto& word : arguments) {
    if (word.size() < 2 || word.front() != '-') continue;
    const std::string option = word.substr(0, word.find('='));
    if (std::find(known.begin(), known.end(), option) != known.end()) continue;
    return "there is no option " + option + did_you_mean(option, known);
  }
  return {};
}

struct HelpAsk {
  std::string topic;
};

/// A page that is no command's.
struct Topic {
  std::string_view name;
  std::string (*page)();
};
constexpr std::array<Topic, 3> kTopics{
    {{"sheet", sheet_page}, {"man", manual_page}, {"completion", completion_script}}};

std::vector<std::string> topics() {
  std::vector<std::string> names;
  for (const Topic& topic : kTopics) names.emplace_back(topic.name);
  for (const Command& command : commands()) names.emplace_back(command.name);
  return names;
}

void answer(const HelpAsk& asked, const Session& session) {
  if (asked.topic.empty()) {
    session.out() << help_page();
    return;
  }
  for (const Topic& topic : kTopics) {
    if (same_word(topic.name, asked.topic)) return void(session.out() << topic.page());
  }
  for (const Command& command : commands()) {
    if (same_word(command.name, asked.topic)) return void(session.out() << help_page(command));
  }
  throw WrongUsage("there is no page on " + in_quotes(asked.topic) + did_you_mean(asked.topic, topics()) +
                   " (kerfbook help lists the commands; help sheet is the language of the day sheet)");
}

}  // namespace

std::string written(const Command& command, const Form& form) {
  std::string line = "kerfbook " + std::string(command.name);
  for (const Row& row : words_of(form)) line += " " + row.written;
  std::size_t free = 0;
  for (const Row& row : options_of(form)) {
    if (is_required(row))
      line += " " + row.written;
    else
      ++free;
  }
  return line + (free > 1 ? std::string(" ") + kChoices : "");  // --help is always there
}

std::string beside(std::string_view text, std::string_view meaning, int left) {
  std::string out = pad_right(text, left);
  if (screen_width(text) > left) out += "\n" + std::string(static_cast<std::size_t>(left), ' ');
  const std::string broken = render::wrapped(std::string(meaning), kPageWidth - left - 2);
  bool first = true;
  for (const auto line : split_lines(broken)) {
    if (!first) out += std::string(static_cast<std::size_t>(left), ' ');
    out += "  " + std::string(line) + "\n";
    first = false;
  }
  return broken.empty() ? std::string(text) + "\n" : out;
}

std::string did_you_mean(std::string_view typed, const std::vector<std::string>& known) {
  const std::string best = nearest(typed, known);
  return best.empty() ? "" : "; did you mean " + best + "?";
}

std::string help_page(const Command& command) {
  const Form form = command.form();
  const std::string name(command.name);
  std::string out = render::wrapped("kerfbook " + name + ": " + std::string(command.what), kPageWidth, 2);
  out += "\n" + render::wrapped("Write:  " + written(command, form), kPageWidth, 10) + "\n";
  out += laid_out(words_of(form) + options_of(form));
  out += "\n-b FILE and --today DAY go with every command; kerfbook --help tells of them.\n";
  const std::string foot = footer(form.footer + (form.more == nullptr ? "" : form.more()));
  return foot.empty() ? out : out + "\n" + foot;
}

std::string help_page() {
  std::string out = render::wrapped("kerfbook: " + std::string(kWhatItIs), kPageWidth);
  out += "\nWrite:  kerfbook COMMAND ...\n";
  for (const Command& command : commands()) {
    if (!command.group.empty()) out += "\n" + std::string(command.group) + "\n";
    constexpr int kLeft = 13;
    out += beside("  " + std::string(command.name), command.what, kLeft);
  }
  std::string unused;
  return out + "\nWith every command\n" + laid_out(common_rows(unused, unused)) + "\n" +
         footer(std::string(kProgramFooter));
}

std::string complaint(const CommandLine& line, const std::vector<std::string>& arguments) {
  const Misread& misread = *line.misread;
  if (line.command == nullptr || misread.fault == Fault::extra_word) {
    if (std::string unknown = unknown_option(line.form, arguments); !unknown.empty()) return unknown;
  }
  if (misread.row) return of_row(line, *misread.row);
  if (line.command == nullptr) {
    if (misread.typed.empty()) return "which command? kerfbook --help lists them";
    std::vector<std::string> names;
    for (const Command& command : commands()) names.emplace_back(command.name);
    return "there is no command " + in_quotes(misread.typed) + did_you_mean(misread.typed, names) +
           " (kerfbook --help lists them)";
  }
  const std::string right = written(*line.command, line.form);
  if (misread.fault == Fault::extra_word)
    return in_quotes(misread.typed) + ": one word too many; write " + right +
           ", and words that belong together in quotes";
  return "this cannot be understood; write " + right + " (kerfbook help " + std::string(line.command->name) +
         " tells more)";
}

Form help_form() {
  auto asked = std::make_shared<HelpAsk>();
  return {
      .rows = {one_of({"[PAGE]", &asked->topic,
                       "a command; sheet: how a day sheet is written, on one page; man: the manual page, for "
                       "man; completion: what lets bash finish the words of a command"},
                      topics)},
      .footer =
          "  kerfbook help\n"
          "  kerfbook help sheet\n"
          "  kerfbook help post\n"
          "  kerfbook help man > kerfbook.1\n"
          "  kerfbook help completion > kerfbook.bash",
      .deed = [asked](const Session& session) { answer(*asked, session); }};
}

}  // namespace kerfbook::command
