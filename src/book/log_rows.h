// log_rows.h -- the rows of a sheet's logs: measure (own or borrowed), scale, content.
#pragma once

#include "book/runs.h"
#include "sheet/raw_log.h"

namespace kerfbook::book {

/// The newest measure of a log tag received or left half-sawn on a line before (key, number).
std::optional<LogSpec> borrowed_spec(Store& store, const std::string& tag, SheetKey key, int number);

class LogWriter {
 public:
  LogWriter(Store& store, SheetKey key, const Mill& then, const scaling::Taper& taper)
      : store_(store), key_(key), then_(then), taper_(taper) {}

  /// Writes the row of one log and adds it to its run. A log counts on the day it is finished. Defects found in
  /// sawing a log received earlier come on top of those it was received with.
  void write(const sheet::DatedFact& fact, const sheet::LogLine& line, RunTotals& run);

 private:
  Store& store_;
  SheetKey key_;
  const Mill& then_;
  const scaling::Taper& taper_;
};

}  // namespace kerfbook::book
