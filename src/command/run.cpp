// run.cpp -- the table of commands, the options that go with each of them, and the one place where an error becomes an exit
// code.
#include <SQLiteCpp/Exception.h>

#include <array>
#include <filesystem>
#include <ostream>
#include <stdexcept>

#include "base/error.h"
#include "base/text.h"
#include "base/too_large.h"
#include "command/command.h"
#include "command/command_line.h"
#include "command/commands.h"
#include "command/help.h"

namespace kerfbook::command {
namespace {

constexpr std::array kCommands{
    Command{"new", "make a book", new_form, "The book"},
    Command{"journal", "list what was posted, when and why", journal_form},
    Command{"verify", "check the book for damage, or against an old digest", verify_form},
    Command{"rebuild", "work all totals out again from what was posted", rebuild_form},
    Command{"copy", "make a dated safety copy", copy_form},
    Command{"restore", "go back to a copy, or see what that would lose", restore_form},
    Command{"salvage", "save what can be read of a damaged book", salvage_form},
    Command{"sign", "sign the newest entry with a key of your own", sign_form},
    Command{"check", "check day sheets without posting them", check_form, "Day sheets"},
    Command{"post", "post day sheets, or a mill file, into the book", post_form},
    Command{"show", "print a posted sheet, or an earlier revision of it", show_form},
    Command{"report", "answer a question from the book", report_form, "Answers"},
    Command{"packet", "the week's set of reports as one workbook or page", packet_form},
    Command{"bill", "what waits to be billed, or the draft for one job", bill_form, "Bills and papers"},
    Command{"issue", "issue an invoice, or the ticket of a yard sale", issue_form},
    Command{"divide", "divide a job's lumber by its shares", divide_form},
    Command{"pay", "take a payment or a deposit, or give a refund", pay_form},
    Command{"credit", "credit an invoice, or cancel it", credit_form},
    Command{"write-off", "write off what will not be paid", write_off_form},
    Command{"waive", "let a charge go, with a note", waive_form},
    Command{"load", "a load slip for bundles that leave", load_form},
    Command{"paper", "print a tally, statement, agreement, quote, blank sheet, or an issued paper again",
            paper_form},
    Command{"owed", "who owes what, since when", owed_form},
    Command{"export", "plain tables for the bookkeeper", export_form},
    Command{"explain", "which price holds for a piece, and why", explain_form},
    Command{"measure", "count board feet", measure_form, "Without a book"},
    Command{"scale", "scale logs by a log rule", scale_form},
    Command{"help", "these pages; help sheet: how a day sheet is written", help_form, "Help"},
};

constexpr std::size_t kLongestArgument = 10'000;  ///< bytes

/// What is typed on the command line is kept and printed: reasons, notes, names. A file that is there may be called by
/// bytes that are no UTF-8, as older systems have them.
void refuse_unfit(const std::vector<std::string>& arguments) {
  for (const std::string& argument : arguments) {
    if (argument.size() > kLongestArgument)
      throw WrongUsage("one thing of " + std::to_string(argument.size()) + " bytes, where " +
                       std::to_string(kLongestArgument) + " is the most; write it shorter");
    if (find_unfit(argument) == std::string::npos) continue;
    if (is_utf8(argument))
      throw WrongUsage(in_quotes(argument) + ": a character that cannot be printed; leave it out");
    const bool option = argument.starts_with("--") && argument.find('=') != std::string::npos;
    std::error_code ignored;
    if (!std::filesystem::exists(option ? argument.substr(argument.find('=') + 1) : argument, ignored))
      throw WrongUsage(in_quotes(argument) + ": bytes that are no UTF-8 text; type it in UTF-8");
  }
}

int parse_and_do(const std::vector<std::string>& arguments, Session& session, bool& changes) {
  refuse_unfit(arguments);
  const CommandLine line = read_command_line(arguments, common_rows(session.book_file, session.today_text));
  if (line.misread) throw WrongUsage(complaint(line, arguments));
  if (line.wants_version) {
    session.out() << "kerfbook " KERFBOOK_VERSION "\n";
  } else if (line.wants_page) {
    session.out() << (line.command == nullptr ? help_page() : help_page(*line.command));
  } else {
    changes = line.form.changes;
    if (!session.today_text.empty()) static_cast<void>(session.today());  // a slip there is always told
    line.form.deed(session);
  }
  session.out().flush();
  if (!session.out() || !session.context().out) throw Failed("the output could not be written");
  return static_cast<int>(Exit::done);
}

}  // namespace

std::span<const Command> commands() {
  return kCommands;
}

Rows common_rows(std::string& book_file, std::string& today_text) {
  return {{"-b, --book FILE", &book_file, "the book (or set KERFBOOK_BOOK)"},
          {"--today DAY", &today_text, "the day it is, instead of what the clock says"},
          {"--version", {}, "which kerfbook this is"},
          {"-h, --help", {}, "show this page"}};
}

int run(const std::vector<std::string>& arguments, Context& context) {
  Session session(context);
  bool changes = false;
  const auto tell = [&](const std::string& message, Exit code) {
    context.out.flush();
    session.err() << "kerfbook: " << message << "\n";
    return static_cast<int>(code);
  };
  // What is done is said of whatever ends the command afterwards; that nothing is, of a machine that failed.
  const auto end = [&](const std::string& message, Exit code, bool late = false) {
    if (!session.done().empty()) return tell(message + "; " + session.done(), Exit::failed);
    return tell(message + (code == Exit::failed && changes && !late ? "; nothing was changed" : ""), code);
  };
  try {
    return parse_and_do(arguments, session, changes);
  } catch (const book::DocumentRefused& refused) {
    context.out.flush();
    session.err() << show_all(refused.found(), refused.name(), refused.text());
    for (const auto& other : refused.others()) {
      session.err() << show_all(other.found(), other.name(), other.text());
    }
    if (refused.others().empty()) return tell(refused.what(), refused.code());
    return tell(std::to_string(refused.others().size() + 1) + " files have errors; nothing was posted",
                refused.code());
  } catch (const FailedLate& error) {
    return end(error.what(), error.code(), true);
  } catch (const Error& error) {
    return end(error.what(), error.code());
  } catch (const std::overflow_error&) {
    return end(std::string(kTooLarge), Exit::refused);
  } catch (const SQLite::Exception& error) {
    if (is_overflow(error.what())) return end(std::string(kTooLarge), Exit::refused);
    return end(std::string("the book could not be used: ") + error.what(), Exit::failed);
  } catch (const std::exception& error) {
    return end(std::string("this should not have happened: ") + error.what(), Exit::failed);
  }
}

}  // namespace kerfbook::command
