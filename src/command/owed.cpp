// owed.cpp -- `kerfbook owed`: receivables with their age.
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/period.h"
#include "office/office.h"

namespace kerfbook::command {
namespace {

struct OwedAsk {
  Output output;
};

void answer(const OwedAsk& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  auto document =
      billing::receivables_document(book.mill(), billing::ledger_on(book, session.today()), session.today());
  document.style = session.style(book.mill());
  write_document(document, asked.output, session);
}

}  // namespace

Form owed_form() {
  auto asked = std::make_shared<OwedAsk>();
  return {.rows = output_rows(asked->output),
          .footer = "  kerfbook -b mill.book owed",
          .deed = [asked](const Session& session) { answer(*asked, session); }};
}

}  // namespace kerfbook::command
