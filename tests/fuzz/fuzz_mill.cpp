// fuzz_mill.cpp -- any bytes at all may be handed over as a mill file: what is wrong is told at its place, nothing fails,
// and every job of a file without an error is found by its code.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "fuzz/demand.h"
#include "mill/mill.h"
#include "price/job_terms.h"

using namespace kerfbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const book::ReadMill got = book::read_mill(text);
  fuzz::places_are_in(got.found, text);
  fuzz::places_are_in(billing::check_money(text), text);
  if (has_error(got.found)) return 0;
  for (const auto& job : got.mill.jobs)
    fuzz::demand(book::find_job(got.mill, job.code) != nullptr, "a job that is not found", text);
  return 0;
}
