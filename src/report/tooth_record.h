// tooth_record.h -- what the worker tooth-life reads: the sheets' lumber and the work on saws in their order, and the pace of the mill
// by it. Lumber is in board feet.
// Inside the room; knows no database.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "report/workers.h"
#include "tuning/tooth_lives.h"

namespace kerfbook::report {

/// Fewer worn sharpenings of a saw (or of one side of a comparison) than these tell nothing: common practice, no source.
constexpr std::int64_t kWornToTell = 10;

struct SawnSheet {
  std::int64_t day = 0;
  std::int64_t shift = 0;
  double minutes = 0;
  double bf = 0;
};

/// A tally line or a work, in the order of the record.
struct RecordEntry {
  std::tuple<std::int64_t, std::int64_t, std::int64_t> place;  ///< day, shift, number
  tuning::SawRecord what;
};

/// Of the inputs `sheets`, `sawn` and `work`. A day's sawing hours are shared out by its lumber.
std::vector<SawnSheet> sheets_of(const Given& given);
std::vector<RecordEntry> record_of(const Given& given, const std::vector<SawnSheet>& sheets);

/// What a tooth costs for a saw, whole money, by the input `rates`: its own rate, or the one for all.
std::optional<double> price_of_tooth(const Given& given, const std::string& saw);
/// Of the input `stops`: how long a stop for teeth takes on average; nullopt when there was none.
std::optional<double> minutes_of_stop(const Given& given);

/// Fills the table with the pace of each sheet and the lumber since the head saw was sharpened, and says what it comes to; nothing
/// of no sheets, and of too few of them a note alone. Of the input `stops` it takes how long a stop for teeth is.
std::string add_pace(const std::vector<RecordEntry>& record, const std::vector<SawnSheet>& sheets,
                     const Given& given, WorkedTable& table);

}  // namespace kerfbook::report
