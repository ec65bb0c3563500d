// post.cpp -- `kerfbook post SHEET... [--why TEXT]`: sheets and mill files into the book, all of them or
// none.
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <ostream>

#include "base/count.h"
#include "base/error.h"
#include "base/text.h"
#include "book/journal.h"
#include "command/commands.h"
#include "command/help.h"
#include "command/sheet_files.h"
#include "office/office.h"

namespace kerfbook::command {
namespace {

struct PostAsk {
  std::vector<std::string> files;
  std::string why;
  bool rescale = false;
};

/// "109 pieces, 1,560.67 bf on 32 lines; 12 logs": what the sawyer holds against the footing of his paper
/// sheet.
std::string footing(const book::Book& open, const std::string& subject) {
  const auto totals = open.day_totals(subject);
  if (!totals) return "";
  return counted(totals->pieces, "piece") + ", " + grouped(shown(measure::board_feet(totals->lumber), 2)) +
         " bf on " + counted(totals->lines, "tally line") + "; " + counted(totals->logs, "log") + " sawn";
}

/// A new word that the checker has spoken of already ("site 'Tervan farm' is new; did you mean ...?") need not be
/// told twice as "site Tervan farm is new to the book".
bool is_told(const std::vector<Diagnostic>& found, const std::string& note) {
  const std::size_t blank = note.find(' ');
  const std::size_t end = note.rfind(" is new");
  if (blank == std::string::npos || end == std::string::npos || end <= blank) return false;
  const std::string said =
      note.substr(0, blank + 1) + in_quotes(note.substr(blank + 1, end - blank - 1)) + " is new";
  return std::any_of(found.begin(), found.end(), [&](const Diagnostic& one) { return one.what == said; });
}

/// The sheet a post put into the book; absent for a mill file, and where nothing was added.
std::optional<billing::SheetKey> sheet_of(const book::Posted& posted) {
  const auto sheet = book::read_subject(posted.subject);
  if (!sheet || posted.outcome == book::Outcome::unchanged) return std::nullopt;
  return billing::SheetKey{sheet->day, sheet->shift};
}

void tell(const book::Posted& posted, const book::Document& document, const book::Book& open,
          const Session& session) {
  session.err() << show_all(posted.found, document.name, document.text);
  for (const auto& note : posted.notes) {
    if (!is_told(posted.found, note)) session.err() << document.name << ": note: " << note << "\n";
  }
  std::ostream& out = session.out();
  out << posted.subject << ": ";
  switch (posted.outcome) {
    case book::Outcome::posted:
      out << "posted";
      break;
    case book::Outcome::revised:
      out << "posted as revision " << posted.revision;
      break;
    case book::Outcome::unchanged:
      out << "already in the book, nothing added";
      break;
  }
  const std::string foot = footing(open, posted.subject);
  if (!foot.empty()) out << "; " << foot;
  out << "\n  " << book::mark_words(posted.mark) << "\n";
}

/// After all is told that was posted: looking for it may fail.
void warn(const std::vector<book::Posted>& posted, const std::vector<book::Document>& documents,
          const book::Book& open, const Session& session) {
  std::vector<billing::SheetKey> sheets;
  for (const auto& one : posted) {
    if (const auto sheet = sheet_of(one)) sheets.push_back(*sheet);
  }
  const auto warnings = billing::stock_warnings(open, sheets);
  for (std::size_t i = 0; i < posted.size(); ++i) {
    const auto sheet = sheet_of(posted[i]);
    const auto found = sheet ? warnings.find(*sheet) : warnings.end();
    if (found == warnings.end()) continue;
    for (const std::string& warning : found->second)
      session.err() << documents[i].name << ": warning: " << warning << "\n";
  }
}

void post_all(const PostAsk& asked, const Session& session) {
  const auto documents = read_documents(asked.files, session);
  book::Book open = session.open_book(false);
  const auto posted = open.post_all(documents, asked.why, asked.rescale);
  for (std::size_t i = 0; i < posted.size(); ++i) tell(posted[i], documents[i], open, session);
  warn(posted, documents, open, session);
}

}  // namespace

Form post_form() {
  auto asked = std::make_shared<PostAsk>();
  return {.rows = Rows{{"SHEET...", &asked->files, "day sheets or mill files (.toml); - is standard input"},
                       {"--why TEXT", &asked->why,
                        "the reason, when a day or a mill file already posted is changed"},
                       {"--rescale", &asked->rescale,
                        "scale the logs of a day posted before by the log rules of today's mill file; else "
                        "they keep theirs"}},
          .footer =
              "All of them are posted or none. Posting the same sheet twice adds nothing. A mill file posted "
              "again needs no reason when it only adds: a customer, a job, a price, a species, a size.\n\n"
              "  kerfbook -b mill.book post 2026-05-05.sheet\n\n"
              "To correct a day, or to begin a new one from it, print it into a file, change the file and "
              "post it:\n"
              "  kerfbook -b mill.book show 2026-05-07 > 2026-05-07.sheet\n"
              "  kerfbook -b mill.book post 2026-05-07.sheet --why \"bundle count: 23, not 32\"\n\n"
              "The lines of a sheet, an example of each (kerfbook help sheet tells all):\n",
          .more = sheet_lines,
          .deed = [asked](const Session& session) { post_all(*asked, session); },
          .changes = true};
}

}  // namespace kerfbook::command
