// command.h -- what a command is given, the table of commands, and run(), which is the whole program but for
// main. Nothing here asks the clock, the terminal or the environment by itself: Context hands all of them in.
#pragma once

#include <functional>
#include <iosfwd>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/input.h"
#include "book/book.h"
#include "command/form.h"
#include "command/plain_stream.h"
#include "render/document.h"
#include "render/renderer.h"

namespace kerfbook::billing {
struct Paper;
}

namespace kerfbook::command {

/// The world outside, handed in by main or by a test.
struct Context {
  std::istream& in;
  std::ostream& out;  ///< results, and nothing else
  std::ostream& err;  ///< diagnostics, progress, questions
  std::function<Day()> today;
  std::function<std::string()> time_of_day;                                   ///< "20:14:07", local
  std::function<std::optional<std::string>(const std::string&)> environment;  ///< nullopt when not set
  bool out_is_terminal = false;
  int terminal_width = 0;  ///< 0 = not a terminal
};

/// One run of the program: the context, and what the common options said.
class Session {
 public:
  explicit Session(Context& context) : context_(context), out_(context.out), err_(context.err) {}

  std::string book_file;   ///< -b; empty = KERFBOOK_BOOK
  std::string today_text;  ///< --today

  [[nodiscard]] Context& context() const { return context_; }
  /// For words. What is rendered goes to the context's own output.
  [[nodiscard]] std::ostream& out() const { return out_; }
  [[nodiscard]] std::ostream& err() const { return err_; }
  [[nodiscard]] Day today() const;  ///< --today, else the clock. WrongUsage when --today is no day
  /// The book's file: -b, else KERFBOOK_BOOK. WrongUsage when neither is there.
  [[nodiscard]] std::string book_path() const;
  [[nodiscard]] bool names_book() const;
  [[nodiscard]] book::Book open_book(bool read_only) const;
  [[nodiscard]] book::OpenOptions open_options(bool read_only) const;
  /// Something is done and stays so, whatever fails from now on, as "receipt 1 posted", and what follows from that. The
  /// last that is said counts.
  void did(const std::string& what, const std::string& then = {}) const;
  [[nodiscard]] const std::string& done() const { return done_; }  ///< empty = nothing
  /// How this mill writes things, and how wide the terminal is.
  [[nodiscard]] render::Style style(const book::Mill& mill) const;

 private:
  Context& context_;
  mutable PlainStream out_;
  mutable PlainStream err_;
  mutable std::string done_;
};

/// --as and -o, the same for every command that answers with tables.
struct Output {
  std::string format;  ///< empty = by the file's suffix, else text
  std::string file;    ///< empty = standard output
};
Rows output_rows(Output& output);
/// What --as says, else the file's ending, else text. WrongUsage for an unknown format (with the nearest).
const render::Format& chosen_format(const Output& output);

class OutputFile;

/// Where a command's answer goes. A command that posts makes it before it posts: WrongUsage for an unknown format (with
/// the nearest) or a workbook to a terminal, Refused for a file that cannot be one, Failed where none can be written.
class Answer {
 public:
  Answer(const Output& output, const Session& session);
  Answer(const Answer&) = delete;
  Answer& operator=(const Answer&) = delete;
  ~Answer();
  /// Renders and writes, a file whole or not at all.
  void give(const render::Document& document);
  /// A paper just posted. Says first what was posted ("receipt 3 posted"), as which entry, and how it is printed again
  /// (`again`; empty where it is not), which any failure from then on says too.
  void give_posted(const book::Book& book, const billing::Paper& paper, const std::string& what,
                   const std::string& again);

 private:
  const Session& session_;
  const render::Format& format_;
  std::string name_;                  ///< of the file, for the word that it is written
  std::unique_ptr<OutputFile> file_;  ///< absent: standard output
};

/// A paper made from the book as it stands: its small print says up to which entry that was.
render::Document with_mark(render::Document document, const book::Book& book);
/// For an answer that posts nothing.
void write_document(const render::Document& document, const Output& output, const Session& session);

/// A file's bytes; `-` is standard input. Refused, naming it, when it cannot be read or is longer than the limit.
std::string read_text(const std::string& file, const InputLimit& limit, const Session& session);

struct Command {
  std::string_view name;
  std::string_view what;        ///< one line for the list of commands
  Form (*form)();               ///< its words and options, its page, and the deed
  std::string_view group = {};  ///< the heading it begins in that list; empty = under the last
};
/// Every command, in the order help lists them. A command is one file and one row here.
std::span<const Command> commands();
/// Options that go with every command; --help is the last of them.
Rows common_rows(std::string& book_file, std::string& today_text);

/// The whole program. `arguments` without the program's name. Returns the exit code (base/error.h).
int run(const std::vector<std::string>& arguments, Context& context);

}  // namespace kerfbook::command
