#include "command/help.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "render/text_table.h"

namespace kerfbook::command {
namespace {

constexpr int kWidestLeft = 24;
constexpr const char* kChoices = "[choices]";

bool takes_several(const CLI::Option& option) {
  return option.get_expected_max() > 1;
}

bool takes_value(const CLI::Option& option) {
  return !option.get_type_name().empty();  // a flag has none
}

/// SHEET..., [NAME]: how a word without dashes is written in the command.
std::string as_word(const CLI::Option& option) {
  const std::string word = option.get_name(true) + (takes_several(option) ? "..." : "");
  return option.get_required() ? word : "[" + word + "]";
}

/// "-o, --out FILE"
std::string as_choice(const CLI::Option& option) {
  std::vector<std::string> names;
  for (const auto& name : option.get_snames()) names.push_back("-" + name);
  for (const auto& name : option.get_lnames()) names.push_back("--" + name);
  return join(names, ", ") + (takes_value(option) ? " " + option.get_type_name() : "");
}

struct Parts {
  std::vector<const CLI::Option*> words;    ///< without dashes, in their order
  std::vector<const CLI::Option*> choices;  ///< with dashes
};

Parts parts_of(const CLI::App& app) {
  Parts parts;
  for (const CLI::Option* option : app.get_options()) {
    if (option == app.get_help_ptr()) continue;  // last of all
    (option->get_positional() ? parts.words : parts.choices).push_back(option);
  }
  if (app.get_help_ptr() != nullptr) parts.choices.push_back(app.get_help_ptr());
  return parts;
}

/// "kerfbook waive JOB DAY CHARGE --why TEXT [choices]"
std::string written(const CLI::App& app) {
  const Parts parts = parts_of(app);
  std::string line = "kerfbook " + app.get_name();
  for (const auto* option : parts.words) line += " " + as_word(*option);
  std::size_t free = 0;
  for (const auto* option : parts.choices) {
    if (option->get_required())
      line += " --" + option->get_lnames().front() + " " + option->get_type_name();
    else
      ++free;
  }
  return line + (free > 1 ? std::string(" ") + kChoices : "");  // --help is always there
}

std::string rows(const std::vector<std::pair<std::string, std::string>>& all) {
  int left = 0;
  for (const auto& [name, meaning] : all) {
    if (screen_width(name) <= kWidestLeft) left = std::max(left, screen_width(name));
  }
  std::string out;
  for (const auto& [name, meaning] : all) out += beside("  " + name, meaning, left + 2);
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

std::string command_page(const CLI::App& app) {
  std::string out =
      render::wrapped("kerfbook " + app.get_name() + ": " + app.get_description(), kPageWidth, 2);
  out += "\n" + render::wrapped("Write:  " + written(app), kPageWidth, 10) + "\n";
  std::vector<std::pair<std::string, std::string>> all;
  const Parts parts = parts_of(app);
  for (const auto* option : parts.words) all.emplace_back(as_word(*option), option->get_description());
  for (const auto* option : parts.choices) all.emplace_back(as_choice(*option), option->get_description());
  out += rows(all);
  out += "\n-b FILE and --today DAY go with every command; kerfbook --help tells of them.\n";
  const std::string foot = footer(app.get_footer());
  return foot.empty() ? out : out + "\n" + foot;
}

std::string program_page(const CLI::App& app) {
  std::string out = render::wrapped(app.get_description(), kPageWidth);
  out += "\nWrite:  kerfbook COMMAND ...\n";
  std::string group;
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
    if (command->get_group() != group) out += "\n" + (group = command->get_group()) + "\n";
    constexpr int kLeft = 13;
    out += beside("  " + command->get_name(), command->get_description(), kLeft);
  }
  std::vector<std::pair<std::string, std::string>> all;
  for (const auto* option : parts_of(app).choices)
    all.emplace_back(as_choice(*option), option->get_description());
  return out + "\nWith every command\n" + rows(all) + "\n" + footer(app.get_footer());
}

class Pages : public CLI::FormatterBase {
 public:
  std::string make_help(const CLI::App* app, std::string, CLI::AppFormatMode) const override {
    return help_page(*app);
  }
};

/// Options of the program and of the chosen command, as typed: "--period".
std::vector<std::string> option_names(const CLI::App& program) {
  std::vector<std::string> names;
  const auto take = [&](const CLI::App& from) {
    for (const auto* option : from.get_options()) {
      for (const auto& name : option->get_lnames()) names.push_back("--" + name);
      for (const auto& name : option->get_snames()) names.push_back("-" + name);
    }
  };
  take(program);
  for (const auto* chosen : program.get_subcommands()) take(*chosen);
  return names;
}

/// Of which option or word the library speaks, told by its name in what the library says; nullptr when of none.
const CLI::Option* option_meant(const CLI::App& app, const CLI::ParseError& error) {
  for (std::string word : split_words(error.what())) {
    while (word.ends_with(':') || word.ends_with(',')) word.pop_back();
    for (const CLI::Option* option : app.get_options()) {
      if (option->get_name() == word || option->get_name(true) == word) return option;
    }
  }
  return nullptr;
}

std::string of_option(const CLI::App& app, const CLI::Option& option, const CLI::ParseError& error) {
  const std::string name = option.get_positional() ? option.get_name(true) : option.get_name();
  const bool value = takes_value(option) && !option.get_positional();
  const std::string right = name + (value ? " " + option.get_type_name() : "");
  if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
    return app.get_name() + ": " + right + " is missing (" + option.get_description() + "); write " +
           written(app);
  }
  if (!takes_value(option)) return name + ": nothing more belongs to it; write " + name;
  if (dynamic_cast<const CLI::ConversionError*>(&error) != nullptr) {
    const std::string typed = option.results().empty() ? "" : option.results().back();
    return name + ": " + in_quotes(typed) + " is not a whole number; write " + name + " 2";
  }
  if (option.count() > 1) return name + " stands there twice; write it once";
  return name + ": nothing stands after it; write " + right;
}

/// An option nobody knows, with the one that is near; empty when there is none.
std::string unknown_option(const CLI::App& program, const std::vector<std::string>& arguments) {
  const auto known = option_names(program);
  for (const auto& word : arguments) {
    if (word.size() < 2 || word.front() != '-') continue;
    const std::string option = word.substr(0, word.find('='));
    if (std::find(known.begin(), known.end(), option) != known.end()) continue;
    return "there is no option " + option + did_you_mean(option, known);
  }
  return {};
}

struct Asked {
  std::string topic;
};

void answer(const Asked& asked, const CLI::App& program, const Session& session) {
  if (asked.topic.empty()) {
    session.out() << help_page(program);
    return;
  }
  if (same_word(asked.topic, "sheet")) {
    session.out() << sheet_page();
    return;
  }
  std::vector<std::string> topics{"sheet"};
  for (const auto& command : commands()) {
    topics.emplace_back(command.name);
    if (!same_word(command.name, asked.topic)) continue;
    session.out() << help_page(*program.get_subcommand_ptr(std::string(command.name)));
    return;
  }
  throw WrongUsage("there is no page on " + in_quotes(asked.topic) + did_you_mean(asked.topic, topics) +
                   " (kerfbook help lists the commands; help sheet is the language of the day sheet)");
}

}  // namespace

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

std::shared_ptr<CLI::FormatterBase> help_pages() {
  return std::make_shared<Pages>();
}

std::string help_page(const CLI::App& app) {
  return app.get_parent() == nullptr ? program_page(app) : command_page(app);
}

std::string complaint(const CLI::App& program, const CLI::ParseError& error,
                      const std::vector<std::string>& arguments, const std::vector<std::string>& names) {
  const bool extra = dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr;
  const auto chosen = program.get_subcommands();
  if (extra || chosen.empty()) {
    if (std::string unknown = unknown_option(program, arguments); !unknown.empty()) return unknown;
  }
  const auto left_over = program.remaining(true);
  if (const auto* option = option_meant(program, error)) return of_option(program, *option, error);
  if (chosen.empty() && !left_over.empty()) {
    return "there is no command " + in_quotes(left_over.front()) + did_you_mean(left_over.front(), names) +
           " (kerfbook --help lists them)";
  }
  if (chosen.empty()) return "which command? kerfbook --help lists them";
  const CLI::App& command = *chosen.front();
  if (extra && !left_over.empty()) {
    return in_quotes(left_over.front()) + ": one word too many; write " + written(command) +
           ", and words that belong together in quotes";
  }
  if (const auto* option = option_meant(command, error)) return of_option(command, *option, error);
  return "this cannot be understood; write " + written(command) + " (kerfbook help " + command.get_name() +
         " tells more)";
}

void add_help(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("PAGE", asked->topic, "a command, or sheet: how a day sheet is written, on one page");
  app.footer(
      "  kerfbook help\n"
      "  kerfbook help sheet\n"
      "  kerfbook help post");
  app.callback([asked, &app, &session] {
    session.deed = [asked, &app, &session] { answer(*asked, *app.get_parent(), session); };
  });
}

}  // namespace kerfbook::command
