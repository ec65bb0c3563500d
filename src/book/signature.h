// signature.h -- a newest entry signed with a key that is kept outside the book (Ed25519, RFC 8032): who has the key said
// so. Texts in, texts out; it knows no file and no store.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/input.h"
#include "book/digest.h"

namespace kerfbook::book {

constexpr InputLimit kSignatureLimit{"a key or a signature", 4096, "is it the right file?"};

/// A key as its file holds it: 64 small hex digits each.
struct SigningKey {
  std::string secret;  ///< empty when only the public half is there
  std::string known;   ///< the public half, by which others know the signer
};

/// A key nobody has had before.
SigningKey make_signing_key();
/// The key to a secret half of 64 hex digits.
SigningKey signing_key_of(const std::string& secret);
/// The text of the file that signs, and of the one that others may have.
std::string secret_key_text(const SigningKey& key);
std::string public_key_text(const SigningKey& key);
/// Reads either of them. nullopt when it is neither, or its halves do not belong together.
std::optional<SigningKey> read_signing_key(std::string_view text);

/// The signature of any bytes: 128 hex digits.
std::string sign_bytes(std::string_view bytes, const SigningKey& key);
bool is_signed(std::string_view bytes, const std::string& signature, const std::string& known);

/// What is written beside a book: its newest entry, when it was signed, and by which key.
struct SignedMark {
  Mark mark;       ///< with all digits
  std::string at;  ///< local day and time
  std::string known;
  bool good = false;  ///< the signature is that of these words by this key
};
std::string signed_mark_text(const Mark& mark, const std::string& at, const SigningKey& key);
/// nullopt when it is no such text.
std::optional<SignedMark> read_signed_mark(std::string_view text);

}  // namespace kerfbook::book
