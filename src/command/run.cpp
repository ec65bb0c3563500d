// run.cpp -- the table of commands, the common options, and the one place where an error becomes an exit
// code.
#include <SQLiteCpp/Exception.h>

#include <CLI/CLI.hpp>
#include <array>
#include <ostream>
#include <stdexcept>

#include "base/error.h"
#include "base/too_large.h"
#include "command/command.h"
#include "command/commands.h"
#include "command/help.h"

namespace kerfbook::command {
namespace {

constexpr std::array kCommands{
    Command{"new", "make a book", add_new, "The book"},
    Command{"journal", "list what was posted, when and why", add_journal},
    Command{"verify", "check the book for damage", add_verify},
    Command{"rebuild", "work all totals out again from what was posted", add_rebuild},
    Command{"check", "check day sheets without posting them", add_check, "Day sheets"},
    Command{"post", "post day sheets, or a mill file, into the book", add_post},
    Command{"show", "print a posted sheet, or an earlier revision of it", add_show},
    Command{"report", "answer a question from the book", add_report, "Answers"},
    Command{"packet", "the week's set of reports as one workbook or page", add_packet},
    Command{"bill", "what waits to be billed, or the draft for one job", add_bill, "Bills and papers"},
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
    Command{"measure", "count board feet", add_measure, "Without a book"},
    Command{"scale", "scale logs by a log rule", add_scale},
    Command{"help", "these pages; help sheet: how a day sheet is written", add_help, "Help"},
};

constexpr std::string_view kFooter =
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

std::vector<std::string> command_names() {
  std::vector<std::string> names;
  for (const auto& command : kCommands) names.emplace_back(command.name);
  return names;
}

void add_commands(CLI::App& app, Session& session) {
  std::string group;
  for (const auto& command : kCommands) {
    CLI::App* sub = app.add_subcommand(std::string(command.name), std::string(command.what));
    sub->fallthrough();
    if (!command.group.empty()) group = command.group;
    sub->group(group);
    command.add(*sub, session);
  }
}

int parse_and_do(const std::vector<std::string>& arguments, Session& session) {
  CLI::App app{"kerfbook: the daily production and tally logbook of a portable sawmill", "kerfbook"};
  app.formatter(help_pages());
  app.set_help_flag("-h,--help", "show this page");
  app.add_option("-b,--book", session.book_file, "the book (or set KERFBOOK_BOOK)")->type_name("FILE");
  app.add_option("--today", session.today_text, "the day it is, instead of what the clock says")
      ->type_name("DAY");
  app.set_version_flag("--version", std::string("kerfbook " KERFBOOK_VERSION), "which kerfbook this is");
  app.require_subcommand(1);
  add_commands(app, session);
  app.footer(std::string(kFooter));  // after the commands, which would have it too
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::Success& asked) {
    app.exit(asked, session.out(), session.err());
    return static_cast<int>(Exit::done);
  } catch (const CLI::ParseError& error) {
    throw WrongUsage(complaint(app, error, arguments, command_names()));
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
  } catch (const std::overflow_error&) {
    return tell(kTooLarge, Exit::refused);
  } catch (const SQLite::Exception& error) {
    if (is_overflow(error.what())) return tell(kTooLarge, Exit::refused);
    return tell(std::string("the book could not be used: ") + error.what(), Exit::failed);
  } catch (const std::exception& error) {
    return tell(std::string("this should not have happened: ") + error.what(), Exit::failed);
  }
}

}  // namespace kerfbook::command
