// verify.cpp -- `kerfbook verify` proves that the book is whole; `kerfbook rebuild` works it out from the
// journal.
#include <CLI/CLI.hpp>
#include <ostream>

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
                 ": the book is not whole; keep this file as it is, and go back to a copy or "
                 "try kerfbook rebuild on a copy of it");
  }
  const auto entries = open.journal();
  session.out() << session.book_path() << ": whole; " << entries.size() << " entries, chain unbroken"
                << (entries.empty() ? "" : ", last digest " + entries.back().digest.substr(0, 12)) << "\n";
}

void rebuild(const Session& session) {
  book::Book open = session.open_book(false);
  open.rebuild();
  session.out() << session.book_path() << ": worked out again from " << open.journal().size() << " entries\n";
}

}  // namespace

void add_verify(CLI::App& app, Session& session) {
  app.footer(
      "Checks the chain of digests, the file itself, and that everything worked out still follows from what "
      "was\n"
      "posted. Writes nothing.\n\n"
      "  kerfbook -b mill.book verify");
  app.callback([&session] { session.deed = [&session] { verify(session); }; });
}

void add_rebuild(CLI::App& app, Session& session) {
  app.footer(
      "Empties everything that is worked out and fills it again from the journal. What was posted stays.\n\n"
      "  kerfbook -b mill.book rebuild");
  app.callback([&session] { session.deed = [&session] { rebuild(session); }; });
}

}  // namespace kerfbook::command
