#include "book/digest.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"

namespace kerfbook::book {

Sha256::Sha256() {
  crypto_hash_sha256_init(&state_);
}

void Sha256::add(std::string_view bytes) {
  crypto_hash_sha256_update(&state_, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
}

void Sha256::add_field(std::string_view bytes) {
  add(fmt::format("{}:", bytes.size()));
  add(bytes);
}

std::string Sha256::hex() {
  std::array<unsigned char, crypto_hash_sha256_BYTES> sum{};
  crypto_hash_sha256_final(&state_, sum.data());
  std::string text;
  text.reserve(2 * sum.size());
  for (const unsigned char byte : sum) text += fmt::format("{:02x}", byte);
  return text;
}

std::string printed_digest(std::string_view digest, std::size_t digits) {
  constexpr std::size_t kGroup = 4;
  std::string out;
  for (std::size_t at = 0; at < std::min(digits, digest.size()); at += kGroup) {
    if (at > 0) out += ' ';
    out += digest.substr(at, kGroup);
  }
  return out;
}

std::string mark_words(const Mark& mark) {
  return fmt::format("entry {}, digest {}", mark.entry, printed_digest(mark.digest));
}

std::string mark_of_paper(const Mark& mark) {
  return "Book " + mark_words(mark);
}

std::string mark_of_state(const Mark& mark) {
  return mark.entry == 0 ? std::string() : "Book up to " + mark_words(mark);
}

namespace {

/// Takes a word off the front, with the blanks behind it.
void drop_word(std::string& text, std::string_view word) {
  if (text.starts_with(word)) text = trim(std::string_view(text).substr(word.size()));
}

}  // namespace

std::optional<Expected> read_expected(std::string_view text) {
  std::string rest = lower(trim(text));
  for (const std::string_view word : {"book", "up to", "entry"}) drop_word(rest, word);
  Expected expected;
  std::size_t at = 0;
  constexpr std::int64_t kMost = 999'999'999;
  for (; at < rest.size() && rest[at] >= '0' && rest[at] <= '9'; ++at) {
    expected.entry = expected.entry * 10 + (rest[at] - '0');
    if (expected.entry > kMost) return std::nullopt;
  }
  rest = trim(std::string_view(rest).substr(at));
  if (expected.entry == 0 || rest.empty() || (rest.front() != ':' && rest.front() != ','))
    return std::nullopt;
  rest = trim(std::string_view(rest).substr(1));
  drop_word(rest, "digest");
  for (const char c : rest) {
    if (c == ' ') continue;
    if ((c < '0' || c > '9') && (c < 'a' || c > 'f')) return std::nullopt;
    expected.digits += c;
  }
  constexpr std::size_t kAll = 2 * crypto_hash_sha256_BYTES;
  if (expected.digits.size() < kLeastDigits || expected.digits.size() > kAll) return std::nullopt;
  return expected;
}

}  // namespace kerfbook::book
