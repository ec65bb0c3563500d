// signature_test.cpp -- signatures are Ed25519 to the letter, and a signed entry with a changed word is no longer good.
#include <doctest/doctest.h>

#include "base/error.h"
#include "book/signature.h"

using namespace kerfbook;
using namespace kerfbook::book;

TEST_CASE("a message signed with a published key has the signature published for it, and no other") {
  struct Vector {
    std::string secret;
    std::string known;
    std::string message;
    std::string signature;
  };
  // source: RFC 8032, 7.1, tests 1 to 3
  for (const Vector& one :
       {Vector{
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", "",
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46"
            "bd25bf5f0595bbe24655141438e7a100b"},
        Vector{
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "\x72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c"
            "387b2eaeb4302aeeb00d291612bb0c00"},
        Vector{
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "\xaf\x82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc659"
            "4a7c15e9716ed28dc027beceea1ec40a"}}) {
    const SigningKey key = signing_key_of(one.secret);
    CHECK(key.known == one.known);
    CHECK(sign_bytes(one.message, key) == one.signature);
    CHECK(is_signed(one.message, one.signature, one.known));
    CHECK_FALSE(is_signed(one.message + ".", one.signature, one.known));
    for (std::size_t at = 0; at < one.signature.size(); at += 9) {
      std::string other = one.signature;
      other[at] = other[at] == '0' ? '1' : '0';
      CHECK_FALSE(is_signed(one.message, other, one.known));
    }
  }
}

TEST_CASE(
    "a key is read back from either of its files, only the secret one signs, and no two keys are alike") {
  const SigningKey key = make_signing_key();
  CHECK(make_signing_key().secret != key.secret);
  const auto secret = read_signing_key(secret_key_text(key));
  REQUIRE(secret);
  CHECK(secret->secret == key.secret);
  CHECK(secret->known == key.known);
  const auto open = read_signing_key(public_key_text(key));
  REQUIRE(open);
  CHECK(open->known == key.known);
  CHECK(open->secret.empty());
  CHECK(public_key_text(key).find(key.secret) == std::string::npos);
  CHECK_THROWS_AS(sign_bytes("words", *open), const Refused&);
}

TEST_CASE("what is no key, or a key of two halves that do not belong together, is not taken for one") {
  const SigningKey key = make_signing_key();
  SigningKey mixed = key;
  mixed.known = make_signing_key().known;
  for (const std::string& text :
       {std::string(), std::string("secret ") + key.secret, secret_key_text(mixed),
        secret_key_text(key).substr(0, 150), "kerfbook signing key, public\npublic " + key.known.substr(1)}) {
    CAPTURE(text);
    CHECK_FALSE(read_signing_key(text));
  }
}

TEST_CASE("a signed entry is good as it was written, and not with any one of its words changed") {
  const SigningKey key = make_signing_key();
  const Mark mark{41, std::string(64, 'a')};
  const std::string text = signed_mark_text(mark, "2026-05-08 20:14:07", key);
  const auto read = read_signed_mark(text);
  REQUIRE(read);
  CHECK(read->good);
  CHECK(read->mark.entry == 41);
  CHECK(read->mark.digest == mark.digest);
  CHECK(read->at == "2026-05-08 20:14:07");
  CHECK(read->known == key.known);
  for (std::size_t at = 0; at < text.size(); ++at) {
    std::string other = text;
    other[at] = other[at] == '1' ? '2' : '1';
    if (other == text) continue;
    CAPTURE(other);
    const auto hurt = read_signed_mark(other);
    const bool still_good = hurt && hurt->good;
    CHECK_FALSE(still_good);
  }
  CHECK_FALSE(read_signed_mark("a letter"));
}
