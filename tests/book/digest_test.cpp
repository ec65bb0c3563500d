// digest_test.cpp -- the digest of the journal is SHA-256 to the letter, and what is printed of it is read again as it was
// printed.
#include <doctest/doctest.h>

#include "book/digest.h"
#include "book/journal.h"
#include "book/shelf.h"

using namespace kerfbook::book;
using kerfbook::tests::Shelf;

namespace {

std::string sha256(std::string_view text) {
  Sha256 sum;
  sum.add(text);
  return sum.hex();
}

}  // namespace

TEST_CASE("SHA-256 gives the digests published for it") {
  // source: NIST, Cryptographic Standards and Guidelines, example values for FIPS 180-4: SHA-256
  CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  // source: NIST, additional test vectors for FIPS 180-4: a byte bd; a million zero bytes
  CHECK(sha256("\xbd") == "68325720aabd7c82f30f554b313d0570c95accbb7dc4b5aae11204c08ffe732b");
  CHECK(sha256(std::string(1'000'000, '\0')) ==
        "d29751f2649b32ff572b5e0a9f541ea660a50f94ff0beedfb0b692b924cc8025");
  CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("a digest fed in pieces is that of the whole") {
  Sha256 sum;
  for (const char c : std::string("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"))
    sum.add({&c, 1});
  CHECK(sum.hex() == "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

TEST_CASE("each form in which an entry's digest is printed is read again, in whole and in part") {
  const Mark mark{41, sha256("abc")};
  CHECK(mark_words(mark) == "entry 41, digest ba78 16bf 8f01 cfea 4141 40de 5dae 2223");
  for (const std::string& text :
       {mark_words(mark), mark_of_paper(mark), mark_of_state(mark), "41:" + mark.digest.substr(0, 32),
        std::string(" 41 : BA7816BF8F01CFEA414140DE5DAE2223 "),
        std::string("entry 41:ba7816bf 8f01cfea 414140de 5dae2223"),
        std::string("41, ba78 16bf 8f01 cfea 4141 40de 5dae 2223")}) {
    CAPTURE(text);
    const auto read = read_expected(text);
    REQUIRE(read);
    CHECK(read->entry == 41);
    CHECK(read->digits == mark.digest.substr(0, 32));
  }
  CHECK(read_expected("41:ba78 16bf 8f01").value().digits == "ba7816bf8f01");
  CHECK(read_expected("41:" + mark.digest).value().digits == mark.digest);
  CHECK(mark_of_state({}).empty());
}

TEST_CASE("what is no entry with at least twelve hex digits is not taken for one") {
  for (const char* text : {"", "41", "41:", "41:ba7816bf8f0", "0:ba7816bf8f01", "ba7816bf8f01",
                           "x41:ba7816bf8f01", "41:ba7816bf8f0g", "41 ba7816bf8f01", "41:41:ba7816bf8f01",
                           "-4:ba7816bf8f01", "9999999999999999999999:ba7816bf8f01"}) {
    CAPTURE(text);
    CHECK_FALSE(read_expected(text));
  }
  CHECK_FALSE(read_expected("41:" + std::string(65, 'a')));
}

TEST_CASE(
    "a post says the entry it is, the same text again the entry that holds it, and the newest is the last") {
  const Shelf shelf;
  auto book = shelf.new_book();
  CHECK(book.newest().entry == 0);
  const auto first = book.post_sheet("sheet 2026-06-01\n2x6 5/12\n", "").mark;
  CHECK(first.entry == 1);
  CHECK(first.digest == book.journal().front().digest);
  const auto paper = book.post_paper("a paper", "its text", "");
  CHECK(paper.entry == 2);
  CHECK(book.newest().digest == paper.digest);
  CHECK(book.post_sheet("sheet 2026-06-01\n2x6 5/12\n", "").mark.digest == first.digest);
  CHECK(book.entry(1).value().digest == first.digest);
  CHECK_FALSE(book.entry(3));
}
