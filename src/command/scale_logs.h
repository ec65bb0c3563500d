// scale_logs.h -- the logs that `kerfbook scale` is asked about, from words or from a CSV file. They are read as the log
// lines of a day sheet are, so whatever a sheet takes is taken here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/input.h"
#include "scaling/scaling.h"

namespace kerfbook::command {

constexpr InputLimit kLogListLimit{"a list of logs", 1 << 20, "part it into several"};

struct AskedLog {
  std::string spec;    ///< the measures as typed: `12x32 segments 12,14`
  std::string defect;  ///< the defects as typed, one after another, "; " between them; may be empty
  std::string tag;     ///< may be empty
  scaling::LogMeasure measure;
  std::vector<scaling::Defect> defects;
  int line = 0;  ///< of the file; of words the count of the log
};

struct ReadLogs {
  std::vector<AskedLog> logs;
  std::vector<Diagnostic> found;
  std::string text;  ///< what the places of `found` count in
};

/// Words from the shell: a log begins at each spec that is no defect's box; an argument with blanks in it is a log.
ReadLogs logs_of_words(const std::vector<std::string>& words, bool metric);
/// A CSV text whose first record names its columns: `log` (as a sheet writes it), or `diameter` and `length`; and, in any
/// order and all of them optional, tag, large, mid, girth, segments, defect, reason. WrongUsage when it has no such head.
/// Refused when there are more logs than are scaled at once.
ReadLogs logs_of_csv(std::string_view csv, bool metric);

}  // namespace kerfbook::command
