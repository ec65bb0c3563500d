// show.cpp -- `kerfbook show DAY`: a sheet as it was posted; `kerfbook journal`: what was posted, when and
// why.
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "render/renderer.h"

namespace kerfbook::command {
namespace {

struct ShowAsk {
  std::string subject;
  int shift = 1;
  int revision = 0;  ///< 0 = the one in force
};

std::string subject_of(const ShowAsk& asked, const book::Book& open) {
  if (asked.subject == "mill") return asked.subject;
  const auto day = read_day(asked.subject);
  if (!day)
    throw WrongUsage("show takes a day as 2026-05-05, or the word mill; not " + in_quotes(asked.subject));
  std::string subject = asked.subject + (asked.shift > 1 ? " shift " + std::to_string(asked.shift) : "");
  if (open.current(subject)) return subject;
  std::string newest;
  for (const Day posted : open.days()) {
    if (posted <= *day || newest.empty()) newest = write_day(posted);
  }
  throw Refused(subject + ": no sheet of that day is in the book" +
                (newest.empty() ? "" : "; the nearest before it is " + newest));
}

void show_sheet(const ShowAsk& asked, const Session& session) {
  const book::Book open = session.open_book(true);
  const std::string subject = subject_of(asked, open);
  const auto revisions = open.revisions(subject);
  const int wanted = asked.revision == 0 ? static_cast<int>(revisions.size()) : asked.revision;
  if (wanted < 1 || wanted > static_cast<int>(revisions.size())) {
    throw Refused(subject + ": there is no revision " + std::to_string(wanted) + "; there are " +
                  std::to_string(revisions.size()));
  }
  const book::Entry& entry = revisions[static_cast<std::size_t>(wanted - 1)];
  session.out() << entry.body;
  if (!entry.body.ends_with('\n')) session.out() << "\n";
  for (const auto& one : revisions) {
    session.err() << "revision " << one.revision << ", posted " << one.at
                  << (one.why.empty() ? "" : ": " + one.why)
                  << (one.revision == wanted ? " (shown above)" : "")
                  << (&one == &revisions.back() && one.revision != wanted ? " (the one that counts)" : "")
                  << "\n";
  }
}

std::string_view word_of(book::EntryKind kind) {
  switch (kind) {
    case book::EntryKind::mill:
      return "mill file";
    case book::EntryKind::sheet:
      return "sheet";
    case book::EntryKind::paper:
      return "paper";
  }
  return "";
}

/// In a list the first digits are enough to find an entry by; csv and json have all of them.
std::string first_digits(std::string_view digest) {
  return book::printed_digest(digest, book::kLeastDigits);
}

render::Document journal_document(const book::Book& open, const Session& session) {
  render::Document document;
  document.name = "journal";
  document.title = "Journal";
  document.subtitle = open.mill().name;
  document.meaning = "Every change to the book, in the order it was made. An entry is never changed.";
  document.style = session.style(open.mill());
  document.made_on = write_day(session.today());
  render::Table table;
  table.name = "journal";
  table.columns = {{.name = "entry", .heading = "Entry", .kind = render::ColumnKind::count},
                   {.name = "posted", .heading = "Posted"},
                   {.name = "kind", .heading = "Kind"},
                   {.name = "subject", .heading = "Of"},
                   {.name = "revision", .heading = "Revision", .kind = render::ColumnKind::count},
                   {.name = "why", .heading = "Why"},
                   {.name = "digest", .heading = "Digest", .words = first_digits}};
  table.when_empty = "nothing has been posted yet";
  for (const auto& entry : open.journal()) {
    table.rows.push_back({{entry.number, entry.at, std::string(word_of(entry.kind)), entry.subject,
                           std::int64_t{entry.revision},
                           entry.why.empty() ? render::Cell{} : render::Cell{entry.why}, entry.digest}});
  }
  document.tables.push_back(std::move(table));
  return document;
}

}  // namespace

Form show_form() {
  auto asked = std::make_shared<ShowAsk>();
  return {.rows = Rows{{"DAY", &asked->subject, "the day, as 2026-05-05; or mill for the mill file"},
                       {"--shift N", &asked->shift, "the second sheet of a day is shift 2"},
                       {"--revision N", &asked->revision, "an earlier revision: 1 is the first posting"}},
          .footer =
              "Prints exactly what was posted. To correct a day, print it into a file, change the file and "
              "post it with --why; to begin a new day like it, change the day in the file too.\n\n"
              "  kerfbook -b mill.book show 2026-05-07 > 2026-05-07.sheet\n"
              "  kerfbook -b mill.book show 2026-05-07 --revision 1",
          .deed = [asked](const Session& session) { show_sheet(*asked, session); }};
}

Form journal_form() {
  auto output = std::make_shared<Output>();
  return {.rows = output_rows(*output),
          .footer = "  kerfbook -b mill.book journal",
          .deed = [output](const Session& session) {
            const book::Book open = session.open_book(true);
            write_document(journal_document(open, session), *output, session);
          }};
}

}  // namespace kerfbook::command
