// copy.cpp -- `kerfbook copy`: a dated safety copy of the book, proved. `kerfbook restore COPY`: what putting one back would
// lose, and, with --replace, doing it.
#include <ostream>

#include "base/count.h"
#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/journal.h"
#include "book/restore.h"
#include "command/commands.h"

namespace kerfbook::command {
namespace {

struct CopyAsked {
  std::string into;
  bool keep_all = false;
};

void copy(const CopyAsked& asked, const Session& session) {
  const book::Book open = session.open_book(true);
  const auto copied = book::copy_book(open, asked.into, session.open_options(true).now(), asked.keep_all);
  session.did(copied.file.string() + " is made");
  session.out() << copied.file.string() << ": a copy of " << session.book_path()
                << ", read again and found sound\n";
  if (copied.newest.entry > 0) session.out() << "  " << book::mark_words(copied.newest) << "\n";
  for (const auto& file : copied.removed) session.out() << "older copy removed: " << file.string() << "\n";
  for (const auto& why : copied.kept) session.err() << "note: older copy kept: " << why << "\n";
}

struct RestoreAsked {
  std::string copy;
  bool replace = false;
};

void list_copies(const Session& session) {
  const std::filesystem::path folder = book::copies_folder(session.book_path());
  const auto copies = book::all_copies(session.book_path(), folder);
  for (const auto& one : copies) session.out() << one.string() << "\n";
  if (copies.empty()) session.out() << folder.string() << ": no copies here; kerfbook copy makes one\n";
}

void list_entries(const std::string& heading, const std::vector<book::Entry>& entries, std::ostream& out) {
  if (entries.empty()) return;
  out << heading << ", " << counted(std::ssize(entries), "entry", "entries") << ":\n";
  for (const auto& entry : entries) {
    out << "  " << pad_left(std::to_string(entry.number), 4) << "  " << entry.at << "  "
        << pad_right(word_of(entry.kind), 5) << "  " << fit_to_print(entry.subject);
    if (entry.revision > 1) out << ", revision " << entry.revision;
    out << "\n";
  }
}

void tell(const book::Compared& compared, const RestoreAsked& asked, const Session& session) {
  std::ostream& out = session.out();
  out << asked.copy << ": this copy is sound; " << counted(compared.copy_newest.entry, "entry", "entries")
      << "\n";
  if (compared.copy_newest.entry > 0) out << "  " << book::mark_words(compared.copy_newest) << "\n";
  if (!compared.book_there) {
    out << session.book_path() << ": there is no book there now; nothing would be lost\n";
    return;
  }
  if (compared.book_damaged)
    out << compared.damage << "\nWhat follows is what could be found in it page by page.\n";
  if (compared.alike > 0) out << "Entries 1 to " << compared.alike << " are the same in both.\n";
  list_entries("In the book and not in the copy, so it would be lost", compared.only_book, out);
  list_entries("In the copy and not in the book, so it would come", compared.only_copy, out);
  if (compared.only_book.empty())
    out << (compared.book_damaged ? "Nothing else was found that would be lost.\n"
                                  : "Nothing would be lost.\n");
}

void restore(const RestoreAsked& asked, const Session& session) {
  if (asked.copy.empty()) {
    if (asked.replace) throw WrongUsage("--replace with which copy? kerfbook restore lists them");
    return list_copies(session);
  }
  const auto options = session.open_options(false);
  const auto compared = book::compare_copy(session.book_path(), asked.copy, options);
  tell(compared, asked, session);
  if (!asked.replace) {
    session.out() << "Nothing was changed. To put the copy in the place of the book, add --replace.\n";
    return;
  }
  const auto old = book::restore_copy(session.book_path(), asked.copy, options);
  session.did(session.book_path() + " is put back");
  session.out() << session.book_path() << ": is now that copy"
                << (old.empty() ? std::string() : "; the book that was there is kept as " + old.string())
                << "\n";
}

}  // namespace

Form copy_form() {
  auto asked = std::make_shared<CopyAsked>();
  return {
      .rows = Rows{{"--into FOLDER", &asked->into, "where to, as a stick (BOOK.copies beside the book)"},
                   {"--keep-all", &asked->keep_all, "remove no older copies"}},
      .footer =
          "The copy is read again and found sound before it gets its name. Then older copies of this book "
          "in that folder are thinned out: all of the last 7 days stay, one a week for 8 weeks before, one "
          "a month for ever. Others posting meanwhile do no harm.\n\n"
          "  kerfbook -b mill.book copy\n"
          "  kerfbook -b mill.book copy --into stick",
      .deed = [asked](const Session& session) { copy(*asked, session); },
      .changes = true};
}

Form restore_form() {
  auto asked = std::make_shared<RestoreAsked>();
  return {
      .rows =
          Rows{{"[COPY]", &asked->copy, "a copy of the book; without it, those beside the book are listed"},
               {"--replace", &asked->replace, "do it; the book that was there is kept under a dated name"}},
      .footer =
          "Says what the copy holds against the book: the days and papers that would be lost, and those "
          "that would come back. Only with --replace is anything changed.\n\n"
          "  kerfbook -b mill.book restore\n\n"
          "A copy on a stick, first looked at, then put in the place of the book:\n"
          "    kerfbook -b mill.book restore stick/mill.book.2026-05-08-201407.copy\n"
          "    kerfbook -b mill.book restore stick/mill.book.2026-05-08-201407.copy --replace",
      .deed = [asked](const Session& session) { restore(*asked, session); },
      .changes = true};
}

}  // namespace kerfbook::command
