// sign.cpp -- `kerfbook sign --key FILE`: the newest entry signed with a key kept outside the book, into a small file of
// its own; `--new-key FILE` makes the key. `verify --signed` checks it.
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <ostream>

#include "base/error.h"
#include "book/signature.h"
#include "command/commands.h"
#include "command/output_file.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::string key;
  std::string new_key;
  std::string out;
};

constexpr ::mode_t kForTheOwner = 0600;
constexpr ::mode_t kForAll = 0644;

/// A file that was not there before, with these rights from its first moment on.
void write_new(const std::string& file, const std::string& text, ::mode_t rights) {
  const int handle = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, rights);
  if (handle < 0 && errno == EEXIST)
    throw Refused(file + ": is there already, and a key is never written over");
  if (handle < 0) throw Failed(file + ": cannot be written (" + std::strerror(errno) + ")");
  const bool done = ::write(handle, text.data(), text.size()) == static_cast<::ssize_t>(text.size()) &&
                    ::fsync(handle) == 0;
  const int fault = errno;
  ::close(handle);
  if (done) return;
  ::unlink(file.c_str());
  throw Failed(file + ": cannot be written (" + std::strerror(fault) + ")");
}

void make_key(const std::string& file, const Session& session) {
  const std::string open_half = file + ".public";
  if (::access(open_half.c_str(), F_OK) == 0)
    throw Refused(open_half + ": is there already, and a key is never written over");
  const book::SigningKey key = book::make_signing_key();
  write_new(file, book::secret_key_text(key), kForTheOwner);
  write_new(open_half, book::public_key_text(key), kForAll);
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

void sign(const Asked& asked, const Session& session) {
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
    throw Failed(session.book_path() +
                 ": the book is damaged (kerfbook verify tells where); nothing was signed");
  std::string file = asked.out;
  if (file.empty()) {
    file = session.book_path() + ".entry" + std::to_string(newest.entry) + ".signed";
    if (::access(file.c_str(), F_OK) == 0)
      throw Refused(file + ": is there already; this entry was signed before, or give another name with -o");
  }
  OutputFile(file).write(book::signed_mark_text(newest, session.open_options(true).now(), key));
  session.out() << file << ": signed with key " << book::printed_digest(key.known) << "\n  "
                << book::mark_words(newest) << "\n";
}

}  // namespace

Form sign_form() {
  auto asked = std::make_shared<Asked>();
  return {.rows = Rows{{"--key FILE", &asked->key, "sign with this key"},
                       {"--new-key FILE", &asked->new_key, "make a key, and its public half as FILE.public"},
                       {"-o, --out FILE", &asked->out, "write the signature to this file (beside the book)"}},
          .footer =
              "The digests say what the book held; a signature says also who said so: the holder of the key. "
              "The newest entry is signed, and by its digest all before it, into a small file of its own. "
              "kerfbook verify --signed FILE --key PUBLIC checks it, years later too. Ed25519, RFC 8032.\n\n"
              "  kerfbook sign --new-key mill.key\n"
              "  kerfbook sign --new-key mill.key && kerfbook -b mill.book sign --key mill.key",
          .deed = [asked](const Session& session) { sign(*asked, session); }};
}

}  // namespace kerfbook::command
