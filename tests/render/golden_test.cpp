// Every format over documents that try it: a full one, one with every kind of cell, a grid, one with no rows.
#include "render/golden.h"

#include <string>

#include "render/outputs.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

void check_goldens(const std::string& name, const Document& document) {
  for (const std::string format : {"text", "csv", "json", "html"}) {
    const Format* found = find_format(format);
    REQUIRE(found != nullptr);
    check_golden("render", name + std::string(found->suffix), found->render(document));
  }
  check_golden("render", name + ".xlsx.cells", listing(read_workbook(render_xlsx(document))));
}

}  // namespace

TEST_CASE("A week of production prints as it did in every format") {
  check_goldens("production", production_week());
}

TEST_CASE("Every kind of cell prints as it did in every format") {
  check_goldens("cells", every_cell());
}

TEST_CASE("A tally with a grid, a struck line and a second table prints as it did in every format") {
  check_goldens("tally", tally_week());
}

TEST_CASE("Lines that do not add to their totals as printed are told in every format as they were") {
  check_goldens("thirds", thirds());
}

TEST_CASE("A document without rows prints as it did in every format") {
  check_goldens("no_rows", no_rows());
}

TEST_CASE("A paper with parties, a head, sums and lines to sign prints as it did in every format") {
  check_goldens("paper", paper());
}

TEST_CASE("On a screen of 80 columns words are shortened and the last columns go below") {
  Document document = production_week();
  document.style.width = 80;
  check_golden("render", "production_80.txt", render_text(document));
}

}  // namespace kerfbook::render
