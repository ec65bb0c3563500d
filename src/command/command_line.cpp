#include "command/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "base/text.h"

namespace kerfbook::command {
namespace {

/// A row as the library knows it.
struct Known {
  const CLI::Option* option;
  const Row* row;
};

struct Named {
  const Command* command;
  CLI::App* app;
  Form form;
};

CLI::Option* add_row(CLI::App& app, const Row& row) {
  const std::string names = join(names_of(row), ",");
  if (auto* const text = std::get_if<std::string*>(&row.place)) return app.add_option(names, **text);
  if (auto* const number = std::get_if<int*>(&row.place)) return app.add_option(names, **number);
  if (auto* const flag = std::get_if<bool*>(&row.place)) return app.add_flag(names, **flag);
  if (auto* const count = std::get_if<std::int64_t*>(&row.place))
    return app.add_option(names, **count)->check(CLI::PositiveNumber);
  if (auto* const several = std::get_if<std::vector<std::string>*>(&row.place)) {
    CLI::Option* option = app.add_option(names, **several);
    if (!is_option(row)) return option;
    return option->expected(1)->allow_extra_args(false)->take_all();  // what follows its value is a word
  }
  return name_of(row) == "--version" ? app.set_version_flag(name_of(row), "") : app.set_help_flag(names);
}

std::vector<Known> add_rows(CLI::App& app, const Rows& rows) {
  std::vector<Known> known;
  for (const Row& row : rows) {
    CLI::Option* option = add_row(app, row);
    option->required(is_required(row));
    known.push_back({option, &row});
  }
  return known;
}

/// Of which row the library speaks, told by its name in what the library says; nullptr when of none.
const Known* meant(const std::vector<Known>& known, const CLI::ParseError& error) {
  for (std::string word : split_words(error.what())) {
    while (word.ends_with(':') || word.ends_with(',')) word.pop_back();
    for (const Known& one : known) {
      if (one.option->get_name() == word || one.option->get_name(true) == word) return &one;
    }
  }
  return nullptr;
}

Misread of_row(const Known& known, const CLI::ParseError& error) {
  const std::string typed = known.option->results().empty() ? "" : known.option->results().back();
  const auto fault = [&] {
    if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) return Fault::missing;
    if (is_flag(*known.row)) return Fault::nothing_goes;
    if (dynamic_cast<const CLI::ConversionError*>(&error) != nullptr ||
        dynamic_cast<const CLI::ValidationError*>(&error) != nullptr)
      return Fault::no_number;
    return known.option->count() > 1 ? Fault::twice : Fault::nothing_after;
  };
  return {fault(), *known.row, typed};
}

Misread misread(const CLI::App& program, const std::vector<Known>& common,
                const std::vector<Known>& of_command, const CLI::ParseError& error) {
  if (const Known* one = meant(common, error)) return of_row(*one, error);
  const auto left_over = program.remaining(true);
  const std::string first = left_over.empty() ? "" : left_over.front();
  if (program.get_subcommands().empty()) return {Fault::no_command, {}, first};
  if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr && !first.empty())
    return {Fault::extra_word, {}, first};
  if (const Known* one = meant(of_command, error)) return of_row(*one, error);
  return {};
}

}  // namespace

CommandLine read_command_line(const std::vector<std::string>& arguments, const Rows& common) {
  CLI::App program;
  const std::vector<Known> of_program = add_rows(program, common);
  program.require_subcommand(1);
  std::vector<Named> named;
  for (const Command& command : commands()) {
    if (std::find(arguments.begin(), arguments.end(), command.name) == arguments.end()) continue;
    CLI::App* app = program.add_subcommand(std::string(command.name));
    app->fallthrough();
    named.push_back({&command, app, command.form()});
  }
  std::vector<std::vector<Known>> known;
  for (const Named& one : named) {
    known.push_back(add_rows(*one.app, one.form.rows));
    known.back().push_back({one.app->get_help_ptr(), &common.back()});
  }
  CommandLine line;
  std::vector<Known> of_command;
  const auto take_chosen = [&] {
    for (std::size_t i = 0; i < named.size(); ++i) {
      if (!program.got_subcommand(named[i].app)) continue;
      line.command = named[i].command;
      line.form = named[i].form;
      of_command = known[i];
    }
  };
  try {
    program.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
    take_chosen();
  } catch (const CLI::CallForVersion&) {
    line.wants_version = true;
  } catch (const CLI::Success&) {
    take_chosen();
    line.wants_page = true;
  } catch (const CLI::ParseError& error) {
    take_chosen();
    line.misread = misread(program, of_program, of_command, error);
  }
  return line;
}

}  // namespace kerfbook::command
