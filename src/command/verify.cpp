// verify.cpp -- `kerfbook verify` checks the book for damage; `kerfbook rebuild` works all totals out again
// from the journal.
#include <iterator>
#include <ostream>

#include "base/count.h"
#include "base/error.h"
#include "command/commands.h"

namespace kerfbook::command {
namespace {

void verify(const Session& session) {
  const book::Book open = session.open_book(true);
  const auto findings = open.verify();
  for (const auto& finding : findings) session.err() << session.book_path() << ": " << finding.what << "\n";
  if (!findings.empty()) {
    throw Failed(session.book_path() +
                 ": the book is damaged; keep this file as it is, and go back to a copy, or "
                 "try kerfbook rebuild on a copy of it");
  }
  const auto entries = open.journal();
  session.out() << session.book_path() << ": no damage, nothing altered; "
                << counted(std::ssize(entries), "entry", "entries")
                << (entries.empty() ? "" : ", the last with digest " + entries.back().digest.substr(0, 12))
                << "\n";
}

void rebuild(const Session& session) {
  book::Book open = session.open_book(false);
  open.rebuild();
  session.out() << session.book_path() << ": all totals worked out again from "
                << counted(std::ssize(open.journal()), "entry", "entries") << " of the journal\n";
}

}  // namespace

Form verify_form() {
  return {.footer =
              "Checks that the file is sound, that nothing posted was altered since (by its digests), and "
              "that every total still follows from what was posted. Changes nothing.\n\n"
              "  kerfbook -b mill.book verify",
          .deed = [](const Session& session) { verify(session); }};
}

Form rebuild_form() {
  return {.footer =
              "For a book that verify finds damaged; try it on a copy. Throws every total away and works all "
              "of them out again from what was posted, which stays as it is.\n\n"
              "  kerfbook -b mill.book rebuild",
          .deed = [](const Session& session) { rebuild(session); }};
}

}  // namespace kerfbook::command
