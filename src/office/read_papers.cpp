// read_papers.cpp -- papers out of the book, no more of each than is needed.
#include "book/store.h"
#include "office/office.h"

namespace kerfbook::billing {

std::vector<Paper> papers_of(const book::Book& book) {
  std::vector<Paper> papers;
  book::Store store(book.database());
  const auto take = [&](const book::Row& row) {
    Paper paper;
    paper.kind = read_paper_kind(row.text(0)).value();
    paper.number = row.number(1);
    paper.called = row.text(2);
    paper.day = Day{static_cast<std::int32_t>(row.number(3))};
    if (const auto due = row.maybe(4)) paper.due = Day{static_cast<std::int32_t>(*due)};
    paper.job = row.text(5);
    paper.customer = row.text(6);
    paper.amount = {row.number(7)};
    paper.invoice = row.maybe(8).value_or(0);
    paper.cancels = row.number(9) != 0;
    paper.method = row.text(10);
    paper.note = row.text(11);
    papers.push_back(std::move(paper));
  };
  store.each(
      "SELECT kind, number, called, day, due, job, customer, amount, invoice, cancels, method, note FROM "
      "v_paper "
      "ORDER BY entry",
      take);
  return papers;
}

Ledger ledger_on(const book::Book& book, Day day) {
  std::vector<Paper> papers = papers_of(book);
  std::erase_if(papers, [&](const Paper& paper) { return day < paper.day; });
  return play(papers);
}

std::vector<Paper> papers_about(const book::Book& book, const std::string& job, const std::string& customer) {
  std::vector<std::string> bodies;
  book::Store store(book.database());
  // SQLite leaves the document out: it is most of the text, and a draft has no use for it.
  store.each(
      "SELECT json_remove(j.body, '$.document') FROM paper p JOIN journal j ON j.entry = p.entry "
      "WHERE p.kind IN ('invoice', 'division', 'credit', 'waiver') AND p.job = ? COLLATE NOCASE "
      "AND (p.job <> '' OR p.customer = ? COLLATE NOCASE) ORDER BY p.entry",
      [&](const book::Row& row) { bodies.push_back(row.text(0)); }, job, customer);
  std::vector<Paper> papers;
  papers.reserve(bodies.size());
  for (const std::string& body : bodies) papers.push_back(read_paper(body));
  return papers;
}

}  // namespace kerfbook::billing
