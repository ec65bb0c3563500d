// text_test.cpp -- words, lines, the nearest word, widths on a screen.
#include "base/text.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <vector>

namespace {

using namespace kerfbook;
using Words = std::vector<std::string>;

TEST_CASE("lines end with LF or CRLF, and the end of the last line makes no empty line") {
  const auto lines = split_lines("job TER\r\n2x6 5/10\n\nnote");
  REQUIRE(lines.size() == 4);
  CHECK(lines[0] == "job TER");
  CHECK(lines[1] == "2x6 5/10");
  CHECK(lines[2].empty());
  CHECK(lines[3] == "note");
  CHECK(split_lines("a\n").size() == 1);
  CHECK(split_lines("").empty());
}

TEST_CASE("words are parted by any number of blanks and tabs") {
  CHECK(split_words("  2x6\tsel   5/10 \r\n") == Words{"2x6", "sel", "5/10"});
  CHECK(split_words(" \t ").empty());
  CHECK(join({"2x6", "sel"}, " ") == "2x6 sel");
  CHECK(join({}, ", ").empty());
  CHECK(trim("\t 2x6 \r\n") == "2x6");
}

TEST_CASE("case is folded for ASCII letters only") {
  CHECK(lower("JOB Ter ÅÄ") == "job ter ÅÄ");
  CHECK(same_word("Species", "sPECIES"));
  CHECK_FALSE(same_word("site", "sites"));
}

TEST_CASE("the nearest word is found within a third of its length, and none beyond") {
  const Words known{"species", "grade", "job", "log", "DF", "WH"};
  CHECK(nearest("speceis", known) == "species");
  CHECK(nearest("grad", known) == "grade");
  CHECK(nearest("jbo", known) == "job");  // two letters swapped are one slip
  CHECK(nearest("bjo", known).empty());   // two slips in three letters
  CHECK(nearest("jab", known) == "job");
  CHECK(nearest("DG", known) == "DF");
  CHECK(nearest("df", known) == "DF");
  CHECK(nearest("meter", known).empty());
  CHECK(nearest("", known).empty());
  CHECK(nearest("log", {}).empty());
}

TEST_CASE("a wide character takes two columns, a combining mark none") {
  CHECK(screen_width("Sallow Fork") == 11);
  CHECK(screen_width("½″×") == 3);
  CHECK(screen_width("é") == 1);
  CHECK(screen_width("e\xCC\x81") == 1);
  CHECK(screen_width("木材") == 4);
  CHECK(screen_width("") == 0);
}

TEST_CASE("padding and clipping count columns, not bytes") {
  CHECK(pad_right("½", 3) == "½  ");
  CHECK(pad_left("½", 3) == "  ½");
  CHECK(pad_left("long", 2) == "long");
  CHECK(clip("Sallow Fork", 6) == "Sallo…");
  CHECK(clip("Sallow", 6) == "Sallow");
  CHECK(screen_width(clip("木材木材", 5)) <= 5);
}

TEST_CASE("only well-formed UTF-8 passes: no overlong forms, surrogates or cut characters") {
  CHECK(is_utf8("½ ″ × 木 \xF0\x9F\x8C\xB2"));
  CHECK(is_utf8("\xEF\xBF\xBD"));  // the replacement character itself is a character
  for (const char* bytes : {"\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80",
                            "\xE2\x82", "\xFF", "abc\xC2"}) {
    CHECK_FALSE(is_utf8(bytes));
  }
}

/// What a terminal could take for a command, what turns writing round, what XML cannot hold, and bytes that are no text.
const std::vector<std::pair<std::string, std::string>> kUnfit{{"\x1B[31m", "\\x1B[31m"},
                                                              {"\r", "\\x0D"},
                                                              {std::string(1, '\0'), "\\x00"},
                                                              {"\x7F", "\\x7F"},
                                                              {"\xC2\x9B", "\\u009B"},
                                                              {"\xE2\x80\xAE", "\\u202E"},
                                                              {"\xE2\x81\xA6", "\\u2066"},
                                                              {"\xE2\x80\x8F", "\\u200F"},
                                                              {"\xD8\x9C", "\\u061C"},
                                                              {"\xEF\xBF\xBE", "\\uFFFE"},
                                                              {"\xEF\xBF\xBF", "\\uFFFF"},
                                                              {"\xED\xA0\x80", "\\xED\\xA0\\x80"},
                                                              {"\xFF", "\\xFF"},
                                                              {"\xE2\x82", "\\xE2\\x82"},
                                                              {"\xE2\x80\xA8", "\\u2028"}};

TEST_CASE("what is not fit to print is found, left out of what is shown, and written out in messages") {
  for (const auto& one : kUnfit) {
    const std::string& typed = one.first;
    const std::string& written = one.second;
    CAPTURE(written);
    CHECK(find_unfit("½" + typed + "x") == 2);
    CHECK(find_unfit(fit_to_print("½" + typed + "x")) == std::string_view::npos);
    CHECK(written_out("½" + typed + "x") == "½" + written + "x");
  }
  for (const char* fit : {"½ ″ × 木 \xF0\x9F\x8C\xB2", "a\tb\nc", "\xEF\xBF\xBD", ""}) {
    CHECK(find_unfit(fit) == std::string_view::npos);
    CHECK(fit_to_print(fit) == fit);
    CHECK(written_out(fit) == fit);
  }
  CHECK(written_out("\xEF\xBB\xBFsheet\r\n") == "\xEF\xBB\xBFsheet\r\n");
}

TEST_CASE("a line to point at has as many characters as before, whatever stands in it") {
  CHECK(in_columns("a\tb\x1B\xE2\x80\xAE\xFF½") == "a b???½");
  CHECK(rc::check("characters", [](const std::string& bytes) {
    const auto count = [](const std::string& text) { return characters_before(text, text.size()); };
    RC_ASSERT(count(in_columns(bytes)) == count(bytes));
    RC_ASSERT(find_unfit(in_columns(bytes)) == std::string_view::npos);
    RC_ASSERT(find_unfit(fit_to_print(bytes)) == std::string_view::npos);
    const std::size_t at = byte_of_character(bytes, 3);
    RC_ASSERT(characters_before(bytes, at) == std::min(3, count(bytes)));
  }));
}

TEST_CASE("places are counted in characters") {
  CHECK(characters_before("½x6", 2) == 1);
  CHECK(characters_before("½x6", 3) == 2);
  CHECK(characters_before("2x6", 99) == 3);
}

TEST_CASE("no bytes make a reader of text throw or run past the end") {
  CHECK(rc::check("bytes", [](const std::string& bytes) {
    RC_ASSERT(screen_width(bytes) >= 0);
    is_utf8(bytes);
    RC_ASSERT(characters_before(bytes, bytes.size()) <= static_cast<int>(bytes.size()));
    RC_ASSERT(screen_width(clip(bytes, 5)) <= 5);
  }));
}

TEST_CASE("the words of a text joined by blanks are the same words again") {
  CHECK(rc::check("words", [] {
    const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("ab \t\r\n")));
    const Words words = split_words(text);
    RC_ASSERT(split_words(join(words, " ")) == words);
  }));
}

TEST_CASE("a name of one letter is no slip of another, and a word nobody misspells has none near") {
  CHECK(nearest("B", {"A"}).empty());
  CHECK(nearest(std::string(65, 'x'), {std::string(65, 'x')}).empty());
}

}  // namespace
