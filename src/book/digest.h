// digest.h -- the digest that chains the journal, how it is printed, and how a printed one is read again. It knows no
// store.
#pragma once

#include <sodium/crypto_hash_sha256.h>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace kerfbook::book {

/// SHA-256 (FIPS 180-4), fed piece by piece.
class Sha256 {
 public:
  Sha256();
  void add(std::string_view bytes);
  /// A field as its length in bytes, a colon and its bytes, so that no two lists of fields read alike.
  void add_field(std::string_view bytes);
  std::string hex();  ///< 64 small hex digits; once, at the end

 private:
  crypto_hash_sha256_state state_{};
};

/// What names one state of a book for good: the number of an entry and its digest, which is over everything before.
struct Mark {
  std::int64_t entry = 0;  ///< 0 = a book without entries
  std::string digest;      ///< all 64 hex digits; empty when there is no entry
};

/// Of the digest's 64 hex digits so many are printed. 12 (48 bits) would do against chance and slips of the pen, and 16
/// against somebody who rewrites an old entry later and searches for a text with the same printed digits (2^64 tries).
/// But whoever keeps the book could also make two histories beforehand and look for a pair of them that agrees: that
/// takes 2 to half the bits, so 2^40 for 20 digits (days on a farm's computer) and 2^64 for 32 (out of its reach). See
/// NIST SP 800-107 Rev. 1, 5.1: a digest cut to L bits resists 2^L and 2^(L/2). The whole digest is in `journal --as json`.
constexpr std::size_t kPrintedDigits = 32;
/// A printed digest may be given back in part, but not with fewer digits: fewer could agree by chance.
constexpr std::size_t kLeastDigits = 12;

/// "3f9a 12c0 77be ...": the first `digits` of it in groups of four.
std::string printed_digest(std::string_view digest, std::size_t digits = kPrintedDigits);
/// "entry 41, digest 3f9a 12c0 ...": what each post says.
std::string mark_words(const Mark& mark);
/// The small print of a paper that is an entry itself: "Book entry 41, digest 3f9a 12c0 ...".
std::string mark_of_paper(const Mark& mark);
/// The small print of what is made from the book as it stands: "Book up to entry 41, digest ..."; empty for an empty book.
std::string mark_of_state(const Mark& mark);

/// An entry and the first digits of its digest, as somebody wrote them down.
struct Expected {
  std::int64_t entry = 0;
  std::string digits;  ///< small hex digits, kLeastDigits to 64 of them
};
/// Reads `41:3f9a12c077be` and what is printed: `entry 41, digest 3f9a 12c0 77be`. nullopt when it is neither.
std::optional<Expected> read_expected(std::string_view text);

}  // namespace kerfbook::book
