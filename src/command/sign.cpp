// sign.cpp -- `kerfbook sign --key FILE`: the newest entry signed with a key kept outside the book, into a small file of
// its own; `--new-key FILE` makes the key. `verify --signed` checks it.
#include <sys/stat.h>
#include <unistd.h>

#include <ostream>

#include "base/error.h"
#include "book/copy.h"
#include "book/signature.h"
#include "command/commands.h"
#include "command/output_file.h"

namespace kerfbook::command {
namespace {

struct SignAsk {
  std::string key;
  std::string new_key;
  std::string out;
};

constexpr unsigned kForTheOwner = 0600;
constexpr unsigned kForAll = 0644;

void take_back(const std::string& file) {
  if (::unlink(file.c_str()) != 0)
    throw FailedLate(file +
                     ": is there, but not sure to last; look at the disk, remove it and make the key again");
}

/// Whole and on the disk, or not there.
void write_half(OutputFile& half, const std::string& file, const std::string& text) {
  try {
    half.write(text);
  } catch (const FailedLate&) {
    take_back(file);
    throw Failed(file + ": could not be put on the disk");
  }
}

/// Both halves or neither.
void make_key(const std::string& file, const Session& session) {
  const std::string open_half = file + ".public";
  OutputFile open(open_half, kForAll);
  OutputFile secret(file, kForTheOwner);
  const book::SigningKey key = book::make_signing_key();
  write_half(secret, file, book::secret_key_text(key));
  try {
    write_half(open, open_half, book::public_key_text(key));
  } catch (const Error&) {
    take_back(file);
    throw;
  }
  session.did(file + " is made");
  session.out() << file
                << ": a new key; whoever has this file can sign for this mill, and a lost one cannot be\n"
                << "  replaced. Keep it away from the book, and a second copy of it locked up.\n"
                << open_half << ": its public half, for anyone who is to check what was signed\n";
}

book::SigningKey read_key(const std::string& file, const Session& session) {
  const auto key = book::read_signing_key(read_text(file, book::kSignatureLimit, session));
  if (!key) throw Refused(file + ": is no key; kerfbook sign --new-key FILE makes one");
  if (key->secret.empty()) throw Refused(file + ": is the public half of a key; it takes the other to sign");
  struct ::stat now {};
  if (::stat(file.c_str(), &now) == 0 && (now.st_mode & 077) != 0)
    session.err() << "note: " << file << " can be read by others on this machine; chmod 600 it\n";
  return *key;
}

void sign(const SignAsk& asked, const Session& session) {
  if (asked.key.empty() == asked.new_key.empty())
    throw WrongUsage("give --key FILE to sign with, or --new-key FILE to make one");
  if (!asked.new_key.empty()) return make_key(asked.new_key, session);
  const book::SigningKey key = read_key(asked.key, session);
  const book::Book open = session.open_book(true);
  const book::Still still(open);
  const book::Mark newest = open.newest();
  if (newest.entry == 0)
    throw Refused(session.book_path() + ": nothing has been posted yet that could be signed");
  if (!open.verify().empty())
    throw Failed(session.book_path() + ": " + std::string(book::kUnsound) + " (kerfbook verify tells where)");
  std::string file = asked.out;
  if (file.empty()) {
    file = session.book_path() + ".entry" + std::to_string(newest.entry) + ".signed";
    if (::access(file.c_str(), F_OK) == 0)
      throw Refused(file + ": is there already; this entry was signed before, or give another name with -o");
  }
  OutputFile(file).write(book::signed_mark_text(newest, session.open_options(true).now(), key));
  session.did(file + " is written");
  session.out() << file << ": signed with key " << book::printed_digest(key.known) << "\n  "
                << book::mark_words(newest) << "\n";
}

}  // namespace

Form sign_form() {
  auto asked = std::make_shared<SignAsk>();
  return {.rows = Rows{{"--key FILE", &asked->key, "sign with this key"},
                       {"--new-key FILE", &asked->new_key, "make a key, and its public half as FILE.public"},
                       {"-o, --out FILE", &asked->out, "write the signature to this file (beside the book)"}},
          .footer =
              "The digests say what the book held; a signature says also who said so: the holder of the key. "
              "The newest entry is signed, and by its digest all before it, into a small file of its own. "
              "kerfbook verify --signed FILE --key PUBLIC checks it, years later too. Ed25519, RFC 8032.\n\n"
              "  kerfbook sign --new-key mill.key\n"
              "  kerfbook sign --new-key mill.key && kerfbook -b mill.book sign --key mill.key",
          .deed = [asked](const Session& session) { sign(*asked, session); },
          .changes = true};
}

}  // namespace kerfbook::command
