// words_test.cpp -- a word that is kept for scripts and read by people in another form.
#include <doctest/doctest.h>

#include <string>

#include "render/renderer.h"

namespace {

using namespace kerfbook::render;

std::string in_capitals(std::string_view kept) {
  std::string words(kept);
  for (char& c : words) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return words;
}

Document named() {
  Document document;
  document.name = "names";
  Table table;
  table.name = "names";
  table.columns = {{.name = "kept", .heading = "Kept"}, {.name = "shown", .heading = "Shown"}};
  table.columns[1].words = in_capitals;
  table.rows = {{{std::string("plain"), std::string("oak")}, false}, {{std::string("plain"), {}}, false}};
  document.tables.push_back(table);
  return document;
}

bool holds(const std::string& text, const char* words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("a column's words stand where people read, and the word kept where scripts do") {
  for (const char* name : {"text", "html"}) {
    const std::string out = find_format(name)->render(named());
    CHECK_MESSAGE(holds(out, "OAK"), name);
    CHECK_MESSAGE(!holds(out, "oak"), name);
    CHECK_MESSAGE(holds(out, "plain"), name);
  }
  for (const char* name : {"csv", "json"}) {
    const std::string out = find_format(name)->render(named());
    CHECK_MESSAGE(holds(out, "oak"), name);
    CHECK_MESSAGE(!holds(out, "OAK"), name);
  }
}
