// new.cpp -- `kerfbook new BOOK [--mill FILE]`: an empty book, or one that knows the mill from the start.
#include <ostream>

#include "base/error.h"
#include "command/commands.h"
#include "command/sheet_files.h"

namespace kerfbook::command {
namespace {

struct NewAsk {
  std::string book;
  std::string mill;
};

void make(const NewAsk& asked, const Session& session) {
  std::optional<book::Document> mill;
  if (!asked.mill.empty())
    mill = book::Document{asked.mill, read_text(asked.mill, book::kMillLimit, session)};
  const auto made = book::Book::create(asked.book, session.open_options(false), mill);
  session.did(asked.book + " is made");
  if (mill) session.err() << show_all(look_at_mill(mill->text), mill->name, mill->text);
  session.out() << asked.book << ": a new book for " << made.mill().name << "\n";
  if (mill) session.out() << "  " << book::mark_words(made.newest()) << "\n";
}

}  // namespace

Form new_form() {
  auto asked = std::make_shared<NewAsk>();
  return {.rows = Rows{{"BOOK", &asked->book, "the file to make; it must not exist yet"},
                       {"--mill FILE", &asked->mill, "a mill file (TOML): names, sizes, customers, jobs"}},
          .footer =
              "Nothing has to be set up first. A mill file can be posted later, as often as it changes.\n\n"
              "  kerfbook new mill.book --mill hargan.toml",
          .deed = [asked](const Session& session) { make(*asked, session); },
          .changes = true};
}

}  // namespace kerfbook::command
