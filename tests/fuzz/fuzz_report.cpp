// fuzz_report.cpp -- any bytes at all may be handed over as a report file: what is wrong in its header is told at its
// line, and fitting its SELECTs to what was asked moves no byte of them.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "fuzz/demand.h"
#include "report/filters.h"
#include "report/report.h"

using namespace kerfbook;

namespace {

void moves_nothing(const std::string& sql, const report::Parameters& parameters) {
  const std::string made = report::fitted(sql, parameters);
  fuzz::demand(made.size() == sql.size(), "a fitted SELECT has another length", sql);
  for (std::size_t i = 0; i < sql.size(); ++i)
    fuzz::demand((made[i] == '\n') == (sql[i] == '\n'), "a fitted SELECT has other lines", sql);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const report::ReportFile file = report::read_report(text, "fuzz.sql");
  fuzz::places_are_in(file.faults, text);
  const report::Parameters none{
      {"from", std::int64_t{-1'000'000}}, {"to", std::int64_t{1'000'000}}, {"job", {}}, {"job_id", {}}};
  const report::Parameters some{
      {"from", std::int64_t{1}}, {"to", std::int64_t{2}}, {"job", std::string("A")}};
  moves_nothing(std::string(text), none);
  for (const auto& table : file.tables) {
    for (const auto* parameters : {&none, &some}) {
      moves_nothing(table.sql, *parameters);
      moves_nothing(table.notes_sql, *parameters);
    }
  }
  return 0;
}
