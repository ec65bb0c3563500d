// fuzz_paper.cpp -- the text of a paper in the journal, damaged in any way, is refused with a sentence or is a paper that
// is written and read back as itself.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/error.h"
#include "fuzz/demand.h"
#include "paper/paper.h"

using namespace kerfbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  billing::Paper paper;
  try {
    paper = billing::read_paper(text);
  } catch (const Failed&) {
    return 0;
  }
  const std::string written = billing::write_paper(paper);
  fuzz::demand(billing::write_paper(billing::read_paper(written)) == written,
               "a paper changes when written again", text);
  return 0;
}
