// fuzz_sheet.cpp -- any bytes at all may be handed to the sheet's reader. It must not fail, must place what it finds
// inside the text, and what it reads without an error must print and read back as itself.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "fuzz/demand.h"
#include "sheet/check.h"
#include "sheet/facts.h"
#include "sheet/read.h"
#include "sheet/write.h"

using namespace kerfbook;
using fuzz::demand;
using fuzz::places_are_in;

namespace {

void read_as(std::string_view text, const sheet::ReadOptions& options) {
  const sheet::ReadSheet got = sheet::read(text, options);
  places_are_in(got.found, text);
  for (const Diagnostic& found : got.found)
    demand(found.place.line == 0 || found.place.column >= 1, "a diagnostic without its column", text);
  if (has_error(got.found)) return;
  const std::string written = sheet::write(got.sheet, options);
  const sheet::ReadSheet again = sheet::read(written, options);
  demand(!has_error(again.found), "what was written is not read", written);
  demand(again.sheet == got.sheet, "what was written reads as another sheet", written);
  demand(sheet::write(again.sheet, options) == written, "the second print differs from the first", written);
  sheet::Known known;
  known.metric = options.metric;
  sheet::check(got.sheet, known, *scaling::find_practice("international-quarter"));
  sheet::facts(got.sheet);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  read_as(text, {false, 2});
  read_as(text, {true, 2});
  sheet::peek_day(text);
  return 0;
}
