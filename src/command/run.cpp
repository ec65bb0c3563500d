// run.cpp -- the table of commands, the common options, and the one place where an error becomes an exit
// code.
#include <SQLiteCpp/Exception.h>

#include <CLI/CLI.hpp>
#include <array>
#include <iterator>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/command.h"
#include "command/commands.h"

namespace kerfbook::command {
namespace {

constexpr std::array kCommands{
    Command{"new", "make a book", add_new},
    Command{"check", "check day sheets without posting them", add_check},
    Command{"post", "post day sheets, or a mill file, into the book", add_post},
    Command{"show", "print a posted sheet, or an earlier revision of it", add_show},
    Command{"journal", "list what was posted, when and why", add_journal},
    Command{"report", "answer a question from the book", add_report},
    Command{"packet", "the week's set of reports as one workbook or page", add_packet},
    Command{"bill", "what waits to be billed, or the draft for one job", add_bill},
    Command{"issue", "issue an invoice, or the ticket of a yard sale", add_issue},
    Command{"divide", "divide a job's lumber by its shares", add_divide},
    Command{"pay", "take a payment or a deposit, or give a refund", add_pay},
    Command{"credit", "credit an invoice, or cancel it", add_credit},
    Command{"write-off", "write off what will not be paid", add_write_off},
    Command{"waive", "let a charge go, with a note", add_waive},
    Command{"load", "a load slip for bundles that leave", add_load},
    Command{"paper", "print a tally, statement, agreement, quote, blank sheet, or an issued paper again",
            add_paper},
    Command{"owed", "who owes what, since when", add_owed},
    Command{"export", "plain tables for the bookkeeper", add_export},
    Command{"explain", "which price holds for a piece, and why", add_explain},
    Command{"measure", "count board feet without a book", add_measure},
    Command{"scale", "scale logs without a book", add_scale},
    Command{"verify", "prove that the book is whole", add_verify},
    Command{"rebuild", "work everything out again from the journal", add_rebuild},
};

constexpr std::string_view kFooter =
    "A first evening:\n"
    "  kerfbook new mill.book\n"
    "  kerfbook -b mill.book post 2026-05-05.sheet\n"
    "  kerfbook -b mill.book report day\n"
    "Each command has its own --help with an example. Exit codes: 0 done, 1 refused and nothing changed,\n"
    "2 wrong usage, 3 the book or the machine failed.";

std::vector<std::string> command_names() {
  std::vector<std::string> names;
  for (const auto& command : kCommands) names.emplace_back(command.name);
  return names;
}

/// Options of the program and of the chosen command, as typed: "--period".
std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  const auto take = [&](const CLI::App& from) {
    for (const auto* option : from.get_options()) {
      for (const auto& name : option->get_lnames()) names.push_back("--" + name);
      for (const auto& name : option->get_snames()) names.push_back("-" + name);
    }
  };
  take(app);
  for (const auto* chosen : app.get_subcommands()) take(*chosen);
  return names;
}

std::string did_you_mean(std::string_view typed, const std::vector<std::string>& known) {
  const std::string best = nearest(typed, known);
  return best.empty() ? "" : "; did you mean " + best + "?";
}

/// What CLI11 could not place, answered with the nearest word.
std::string explain(const CLI::App& app, const CLI::ParseError& error,
                    const std::vector<std::string>& arguments) {
  if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr || app.get_subcommands().empty()) {
    const auto names = option_names(app);
    for (const auto& word : arguments) {
      if (word.size() > 1 && word.front() == '-') {
        const std::string option = word.substr(0, word.find('='));
        if (std::find(names.begin(), names.end(), option) == names.end()) {
          return "there is no option " + option + did_you_mean(option, names);
        }
      }
    }
    if (app.get_subcommands().empty()) {
      for (const auto& word : app.remaining(true)) {
        return "there is no command " + in_quotes(word) + did_you_mean(word, command_names()) +
               " (kerfbook --help lists them)";
      }
      return "which command? kerfbook --help lists them";
    }
  }
  return std::string(error.what());
}

void add_commands(CLI::App& app, Session& session) {
  for (const auto& command : kCommands) {
    CLI::App* sub = app.add_subcommand(std::string(command.name), std::string(command.what));
    sub->fallthrough();
    command.add(*sub, session);
  }
}

int parse_and_do(const std::vector<std::string>& arguments, Session& session) {
  CLI::App app{"kerfbook: the daily production and tally logbook of a portable sawmill", "kerfbook"};
  app.footer(std::string(kFooter));
  app.add_option("-b,--book", session.book_file, "the book (or set KERFBOOK_BOOK)")->type_name("FILE");
  app.add_option("--today", session.today_text, "the day it is, for anything that would ask the clock")
      ->type_name("DAY");
  app.set_version_flag("--version", std::string("kerfbook " KERFBOOK_VERSION));
  app.require_subcommand(1);
  app.get_formatter()->column_width(34);
  add_commands(app, session);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::Success& asked) {
    app.exit(asked, session.out(), session.err());
    return static_cast<int>(Exit::done);
  } catch (const CLI::ParseError& error) {
    throw WrongUsage(explain(app, error, arguments));
  }
  if (!session.today_text.empty()) static_cast<void>(session.today());  // a slip there is always told
  if (session.deed) session.deed();
  session.out().flush();
  if (!session.out()) throw Failed("the output could not be written");
  return static_cast<int>(Exit::done);
}

}  // namespace

std::span<const Command> commands() {
  return kCommands;
}

int run(const std::vector<std::string>& arguments, Context& context) {
  Session session(context);
  const auto tell = [&](std::string_view message, Exit code) {
    context.out.flush();
    context.err << "kerfbook: " << message << "\n";
    return static_cast<int>(code);
  };
  try {
    return parse_and_do(arguments, session);
  } catch (const book::DocumentRefused& refused) {
    context.out.flush();
    context.err << show_all(refused.found(), refused.name(), refused.text());
    for (const auto& other : refused.others()) {
      context.err << show_all(other.found(), other.name(), other.text());
    }
    if (refused.others().empty()) return tell(refused.what(), refused.code());
    return tell(std::to_string(refused.others().size() + 1) + " files have errors; nothing was posted",
                refused.code());
  } catch (const Error& error) {
    return tell(error.what(), error.code());
  } catch (const SQLite::Exception& error) {
    return tell(std::string("the book could not be used: ") + error.what(), Exit::failed);
  } catch (const std::exception& error) {
    return tell(std::string("this should not have happened: ") + error.what(), Exit::failed);
  }
}

}  // namespace kerfbook::command
