// round_trip_test.cpp -- what the writer prints, the reader reads back, whatever a sheet holds.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "sheet/generators.h"
#include "sheet/read.h"
#include "sheet/support.h"
#include "sheet/write.h"

using namespace kerfbook;
using namespace kerfbook::sheet;

namespace {

void survives(const Sheet& sheet, const ReadOptions& options) {
  const std::string text = write(sheet, options);
  const ReadSheet got = read(text, options);
  if (has_error(got.found)) RC_FAIL(show_all(got.found, "sheet", text));
  RC_LOG() << text;
  RC_ASSERT(got.sheet == sheet);
  RC_ASSERT(write(got.sheet, options) == text);
}

}  // namespace

TEST_CASE(
    "a sheet of any facts read from its own print is the same sheet, in an inch book and in a metric one") {
  CHECK(rc::check("inch book", [] { survives(generate::sheet(), {false, 2}); }));
  CHECK(rc::check("metric book", [] { survives(generate::sheet(), {true, 2}); }));
}

TEST_CASE("every kind of fact survives being printed and read by itself") {
  for (std::size_t kind = 0; kind < std::variant_size_v<Fact>; ++kind) {
    CAPTURE(kind);
    CHECK(rc::check("kind " + std::to_string(kind), [kind] {
      const bool metric = generate::chance(2);
      Sheet sheet{make_day(2026, 5, 5), 1, "", {{generate::fact(kind), generate::remark(), {}}}};
      RC_ASSERT(sheet.lines.front().fact.index() == kind);
      survives(sheet, {metric, 2});
    }));
  }
}

TEST_CASE("the demo week's sheets print byte for byte as they were written") {
  for (const char* day : {"2026-05-04", "2026-05-05", "2026-05-06", "2026-05-07", "2026-05-08"}) {
    const std::string text = read_file(std::string("demo_data/") + day + ".sheet");
    CHECK(write(read(text).sheet) == text);
  }
}
