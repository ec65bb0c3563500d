// fuzz_csv.cpp -- any bytes at all may be handed over as a list of logs: it is refused in a sentence, or what is wrong is told
// at its line, or each of its logs is one that is written and read back as itself.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/error.h"
#include "command/csv_rows.h"
#include "command/scale_logs.h"
#include "fuzz/demand.h"

using namespace kerfbook;
using fuzz::demand;

namespace {

void read_as(std::string_view text, bool metric) {
  command::ReadLogs read;
  try {
    read = command::logs_of_csv(text, metric);
  } catch (const Error& refused) {
    demand(!std::string_view(refused.what()).empty(), "refused without a word", text);
    return;
  }
  fuzz::places_are_in(read.found, read.text);
  if (has_error(read.found)) return;
  for (const auto& log : read.logs) {
    const std::string written = scaling::write_log_spec(log.measure, metric);
    scaling::LogMeasure ends;  // girth, middle and segments stand in words of their own
    ends.small = log.measure.small;
    ends.large = log.measure.large;
    ends.length = log.measure.length;
    const auto again = scaling::read_log_spec(written, metric);
    demand(again && *again == ends, ("written as " + written + " a log reads as something else").c_str(),
           text);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  for (const auto& record : command::csv_records(text))
    demand(record.line >= 1 && !record.fields.empty(), "a record of nothing", text);
  read_as(text, false);
  read_as(text, true);
  return 0;
}
