// fuzz_words.cpp -- measures, logs, days, hours, money and periods as a person types them: any bytes at
// all, a line at a time. What is read is written in one form, which reads back as itself.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/day.h"
#include "base/error.h"
#include "fuzz/demand.h"
#include "measure/money.h"
#include "measure/size.h"
#include "report/report.h"
#include "scaling/scaling.h"

using namespace kerfbook;
using fuzz::demand;

namespace {

/// Read, written, and read again.
template <class Read, class Write>
void comes_back(std::string_view text, Read read, Write write) {
  const auto got = read(text);
  if (!got) return;
  const std::string written = write(*got);
  const auto again = read(written);
  demand(again && *again == *got, ("written as " + written + " it reads as something else").c_str(), text);
  demand(write(*again) == written, "the second writing differs from the first", text);
}

void read_measures(std::string_view text) {
  comes_back(text, measure::read_inches, measure::write_inches);
  comes_back(text, measure::read_feet, measure::write_feet);
  for (const bool metric : {false, true}) {
    comes_back(
        text, [&](std::string_view t) { return measure::read_size(t, metric); },
        [&](const measure::Size& size) { return measure::write_size(size, metric); });
    comes_back(
        text, [&](std::string_view t) { return scaling::read_log_spec(t, metric); },
        [&](const scaling::LogMeasure& log) { return scaling::write_log_spec(log, metric); });
    comes_back(
        text, [&](std::string_view t) { return scaling::read_defect(t, metric); },
        [&](const scaling::Defect& defect) { return scaling::write_defect(defect, metric); });
    static_cast<void>(measure::read_mils(text, metric));
  }
  static_cast<void>(measure::read_money(text, 2));
  static_cast<void>(measure::read_millimetres(text));
}

void read_times(std::string_view text) {
  comes_back(text, read_day, write_day);
  comes_back(text, read_clock, write_clock);
  comes_back(text, read_duration, write_duration);
  static_cast<void>(read_span(text));
  try {
    const auto period = report::read_period(text, make_day(2026, 5, 8), 1, 10, 1);
    demand(period.from <= period.to, "a period that ends before it begins", text);
  } catch (const WrongUsage&) {
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  for (const auto& line : split_lines(text)) {
    read_measures(line);
    read_times(line);
  }
  return 0;
}
