// verify.cpp -- `kerfbook verify` checks the book for damage, and holds it against digests and signatures of earlier days;
// `kerfbook rebuild` works all totals out again from the journal.
#include <iterator>
#include <ostream>

#include "base/count.h"
#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/signature.h"
#include "command/commands.h"

namespace kerfbook::command {
namespace {

struct VerifyAsk {
  std::vector<std::string> expected;
  std::vector<std::string> notes;  ///< files that `sign` wrote
  std::string key;
};

/// What the book is held against: a digest, and where it comes from.
struct Witness {
  book::Expected expected;
  std::string from;   ///< a file that is signed; empty = written down
  std::string proof;  ///< what else is then proved
};

Witness read_witness(const std::string& typed) {
  if (const auto expected = book::read_expected(typed)) return {*expected, "", ""};
  throw WrongUsage("--expect takes an entry and its digest as they are printed, 41:3f9a12c077be or " +
                   in_quotes("entry 41, digest 3f9a 12c0 77be") + ", " + std::to_string(book::kLeastDigits) +
                   " digits or more; not " + in_quotes(typed));
}

std::string known_signer(const std::string& file, const Session& session) {
  if (file.empty()) return "";
  if (const auto key = book::read_signing_key(read_text(file, book::kSignatureLimit, session)))
    return key->known;
  throw Refused(file + ": is no key; give the file that kerfbook sign --new-key made, or its public half");
}

Witness read_note(const std::string& file, const std::string& signer, const Session& session) {
  const auto note = book::read_signed_mark(read_text(file, book::kSignatureLimit, session));
  if (!note) throw Refused(file + ": is not a file that kerfbook sign wrote");
  if (!note->good) throw Failed(file + ": its signature does not fit its words; something in it was changed");
  if (!signer.empty() && note->known != signer)
    throw Failed(file + ": is signed with another key, " + book::printed_digest(note->known));
  const std::string whose = signer.empty() ? "somebody with the key " + book::printed_digest(note->known) +
                                                 " (whose that is, --key with the mill's public key proves)"
                                           : "a holder of that key";
  return {{note->mark.entry, note->mark.digest},
          file,
          whose + " signed entry " + std::to_string(note->mark.entry) + "; the day " + note->at +
              " is the signer's word"};
}

/// Why the book is not the one the digest was taken from; empty when it is.
std::string disagreement(const Witness& witness, const book::Book& open) {
  const auto& [number, digits] = witness.expected;
  const std::string of =
      "entry " + std::to_string(number) + (witness.from.empty() ? "" : " of " + witness.from);
  const auto entry = open.entry(number);
  if (!entry)
    return of + " is not there, the newest is " + std::to_string(open.newest().entry) +
           ": since that digest was written down entries were cut off the end, or it is another book's";
  if (entry->digest.starts_with(digits)) return "";
  return of + " has the digest " + book::printed_digest(entry->digest) + ", not " +
         book::printed_digest(digits, digits.size()) +
         ": since that digest was written down this entry or one before it was changed, or the digest is "
         "another book's, or was misread";
}

void say_what_is_proved(const std::vector<Witness>& witnesses, const book::Book& open, std::ostream& out) {
  const book::Mark newest = open.newest();
  if (newest.entry == 0) return;
  out << "Proved: each entry follows on the one before it, and every total follows from the entries.\n";
  std::int64_t proved = 0;
  for (const Witness& one : witnesses) {
    const auto& [number, digits] = one.expected;
    proved = std::max(proved, number);
    out << "Proved: nothing in entries 1 to " << number << " was changed since "
        << (one.from.empty() ? "that digest was written down" : one.from + " was signed") << " (all "
        << digits.size() << " digits agree).\n";
    if (!one.proof.empty()) out << "Proved: " << one.proof << ".\n";
  }
  if (proved > 0) {
    out << "Not proved: who wrote the entries; that none after " << proved
        << " was changed or cut off the end (a digest printed later tells).\n";
    return;
  }
  out << "Not proved: who wrote the entries; that this is the book of an earlier day. Whoever can write the\n"
         "  file can write all of it anew, or cut entries off its end. A digest that was printed or written "
         "down\n"
         "  before tells: kerfbook verify --expect "
      << newest.entry << ":" << newest.digest.substr(0, book::kLeastDigits) << "\n";
}

void verify(const VerifyAsk& asked, const Session& session) {
  std::vector<Witness> witnesses;
  for (const std::string& one : asked.expected) witnesses.push_back(read_witness(one));
  if (!asked.key.empty() && asked.notes.empty())
    throw WrongUsage("--key goes with --signed FILE, which it is held against");
  const std::string signer = known_signer(asked.key, session);
  for (const std::string& file : asked.notes) witnesses.push_back(read_note(file, signer, session));
  const book::Book open = session.open_book(true);
  const book::Still still(open);
  const std::string path = session.book_path();
  const auto findings = open.verify();
  for (const auto& finding : findings) session.err() << path << ": " << finding.what << "\n";
  std::size_t wrong = 0;
  for (const Witness& one : witnesses) {
    const std::string why = disagreement(one, open);
    if (why.empty()) continue;
    ++wrong;
    session.err() << path << ": " << why << "\n";
  }
  if (!findings.empty())
    throw Failed(path + ": " + std::string(book::kUnsound) + "; keep this file as it is, and " +
                 std::string(book::kGoBack) + ", or try kerfbook rebuild on a copy of it");
  if (wrong > 0) throw Failed(path + ": is not the book that was written down");
  session.out() << path << ": no damage found; " << counted(open.newest().entry, "entry", "entries") << "\n";
  if (open.newest().entry > 0) session.out() << "  " << book::mark_words(open.newest()) << "\n";
  say_what_is_proved(witnesses, open, session.out());
}

void rebuild(const Session& session) {
  book::Book open = session.open_book(false);
  open.rebuild();
  session.did("all totals are worked out again");
  session.out() << session.book_path() << ": all totals worked out again from "
                << counted(open.newest().entry, "entry", "entries") << " of the journal\n";
}

}  // namespace

Form verify_form() {
  auto asked = std::make_shared<VerifyAsk>();
  return {.rows = Rows{{"--expect ENTRY:DIGEST", &asked->expected,
                        "an entry and its digest as they were printed; as often as there are"},
                       {"--signed FILE", &asked->notes, "a file that sign wrote; as often as there are"},
                       {"--key FILE", &asked->key,
                        "with --signed: the key it must be signed with, or its public half"}},
          .footer =
              "Checks that the file is sound, that each entry follows on the one before it (by its digest), "
              "and that every total still follows from what was posted; says what that proves, and what it "
              "does not. Changes nothing.\n\n"
              "  kerfbook -b mill.book verify\n\n"
              "With a digest from an old invoice, or from a notebook, it also proves that nothing up to that "
              "entry was changed since, as:\n"
              "    kerfbook verify --expect \"entry 41, digest 3f9a 12c0 77be 04d1\"",
          .deed = [asked](const Session& session) { verify(*asked, session); }};
}

Form rebuild_form() {
  return {.footer =
              "For a book that verify finds damaged; try it on a copy. Throws every total away and works all "
              "of them out again from what was posted, which stays as it is.\n\n"
              "  kerfbook -b mill.book rebuild",
          .deed = [](const Session& session) { rebuild(session); },
          .changes = true};
}

}  // namespace kerfbook::command
