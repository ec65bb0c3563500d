#include "book/signature.h"

#include <fmt/format.h>
#include <sodium/core.h>
#include <sodium/crypto_sign.h>
#include <sodium/randombytes.h>
#include <sodium/utils.h>

#include <array>
#include <cstdint>

#include "base/error.h"
#include "base/exact.h"
#include "base/text.h"

namespace kerfbook::book {
namespace {

constexpr std::string_view kSecretHead = "kerfbook signing key, secret";
constexpr std::string_view kPublicHead = "kerfbook signing key, public";
constexpr std::string_view kMarkHead = "kerfbook signed entry";
constexpr std::size_t kDigestDigits = 64;

using Seed = std::array<unsigned char, crypto_sign_SEEDBYTES>;
using Known = std::array<unsigned char, crypto_sign_PUBLICKEYBYTES>;
using Both = std::array<unsigned char, crypto_sign_SECRETKEYBYTES>;
using Signature = std::array<unsigned char, crypto_sign_BYTES>;

template <std::size_t N>
std::string hex(const std::array<unsigned char, N>& bytes) {
  std::string text;
  for (const unsigned char byte : bytes) text += fmt::format("{:02x}", byte);
  return text;
}

/// nullopt unless the text is exactly so many bytes of hex.
template <std::size_t N>
std::optional<std::array<unsigned char, N>> bytes_of(std::string_view text) {
  std::array<unsigned char, N> bytes{};
  std::size_t many = 0;
  if (text.size() != 2 * N ||
      sodium_hex2bin(bytes.data(), N, text.data(), text.size(), nullptr, &many, nullptr) != 0 || many != N)
    return std::nullopt;
  return bytes;
}

/// A key in full, wiped when it is done with.
struct Pair {
  Known known{};
  Both both{};
  explicit Pair(const Seed& seed) { crypto_sign_seed_keypair(known.data(), both.data(), seed.data()); }
  Pair(const Pair&) = delete;
  Pair& operator=(const Pair&) = delete;
  ~Pair() { sodium_memzero(both.data(), both.size()); }
};

const unsigned char* as_bytes(std::string_view text) {
  return reinterpret_cast<const unsigned char*>(text.data());
}

/// What follows a word at the beginning of a line; empty when no line begins so.
std::string_view after(std::string_view text, std::string_view word) {
  for (std::string_view line : split_lines(text)) {
    if (line.starts_with(word) && line.size() > word.size() && line[word.size()] == ' ')
      return trim(line.substr(word.size()));
  }
  return {};
}

std::string_view first_line(std::string_view text) {
  return trim(text.substr(0, text.find('\n')));
}

/// The words that are signed: all of the text above the signature.
std::string words_to_sign(const Mark& mark, std::string_view at, std::string_view known) {
  return fmt::format("{}\nentry {}\ndigest {}\nat {}\nkey {}\n", kMarkHead, mark.entry, mark.digest, at,
                     known);
}

}  // namespace

SigningKey make_signing_key() {
  if (sodium_init() < 0) throw Failed("this machine has no random numbers to make a key of");
  Seed seed{};
  randombytes_buf(seed.data(), seed.size());
  SigningKey key = signing_key_of(hex(seed));
  sodium_memzero(seed.data(), seed.size());
  return key;
}

SigningKey signing_key_of(const std::string& secret) {
  const auto seed = bytes_of<crypto_sign_SEEDBYTES>(secret);
  if (!seed) throw Refused("a secret key has 64 hex digits");
  const Pair pair(*seed);
  return {secret, hex(pair.known)};
}

std::string secret_key_text(const SigningKey& key) {
  return fmt::format(
      "{}\n"
      "Whoever has this file can sign for this mill. Keep it away from the book. A lost key cannot be "
      "replaced.\n"
      "secret {}\npublic {}\n",
      kSecretHead, key.secret, key.known);
}

std::string public_key_text(const SigningKey& key) {
  return fmt::format("{}\nAnyone may have this file: it checks what the secret half has signed.\npublic {}\n",
                     kPublicHead, key.known);
}

std::optional<SigningKey> read_signing_key(std::string_view text) {
  const bool secret = first_line(text) == kSecretHead;
  if (!secret && first_line(text) != kPublicHead) return std::nullopt;
  SigningKey key{secret ? std::string(after(text, "secret")) : std::string(),
                 std::string(after(text, "public"))};
  if (!bytes_of<crypto_sign_PUBLICKEYBYTES>(key.known)) return std::nullopt;
  if (secret &&
      (!bytes_of<crypto_sign_SEEDBYTES>(key.secret) || signing_key_of(key.secret).known != key.known))
    return std::nullopt;
  return key;
}

std::string sign_bytes(std::string_view bytes, const SigningKey& key) {
  const auto seed = bytes_of<crypto_sign_SEEDBYTES>(key.secret);
  if (!seed) throw Refused("this is the public half of the key; it takes the secret one to sign");
  const Pair pair(*seed);
  Signature signature{};
  crypto_sign_detached(signature.data(), nullptr, as_bytes(bytes), bytes.size(), pair.both.data());
  return hex(signature);
}

bool is_signed(std::string_view bytes, const std::string& signature, const std::string& known) {
  const auto made = bytes_of<crypto_sign_BYTES>(signature);
  const auto by = bytes_of<crypto_sign_PUBLICKEYBYTES>(known);
  return made && by &&
         crypto_sign_verify_detached(made->data(), as_bytes(bytes), bytes.size(), by->data()) == 0;
}

std::string signed_mark_text(const Mark& mark, const std::string& at, const SigningKey& key) {
  const std::string words = words_to_sign(mark, at, key.known);
  return words + "signature " + sign_bytes(words, key) + "\n";
}

std::optional<SignedMark> read_signed_mark(std::string_view text) {
  if (first_line(text) != kMarkHead) return std::nullopt;
  SignedMark read;
  const auto entry = read_decimal(after(text, "entry"), 0);
  if (!entry) return std::nullopt;
  read.mark = {entry->rounded(0), std::string(after(text, "digest"))};
  read.at = after(text, "at");
  read.known = after(text, "key");
  if (read.mark.entry < 1 || read.mark.digest.size() != kDigestDigits) return std::nullopt;
  read.good = is_signed(words_to_sign(read.mark, read.at, read.known), std::string(after(text, "signature")),
                        read.known);
  return read;
}

}  // namespace kerfbook::book
