#include "book/log_rows.h"

#include "base/checked_sum.h"

namespace kerfbook::book {
namespace {

using measure::System;

std::string_view state_of(const sheet::LogLine& line) {
  if (line.received) return "received";
  return line.left_on_mill ? "left" : "sawn";
}

/// What is known of one log.
struct Log {
  std::optional<std::string> tag;
  std::optional<LogSpec> spec;
  bool borrowed = false;
  std::optional<scaling::Scale> scale;  ///< absent when not measured, or the rule needs a reading not taken
  std::optional<std::int64_t> content;
};

void add_to(RunTotals& run, const Log& log) {
  ++run.logs;
  run.content = checked_sum(run.content, log.content.value_or(0));
  if (!log.scale) {
    ++run.unscaled_logs;
    return;
  }
  run.gross = checked_sum(run.gross, log.scale->gross);
  run.net = checked_sum(run.net, log.scale->net);
}

}  // namespace

std::optional<LogSpec> borrowed_spec(Store& store, const std::string& tag, SheetKey key, int number) {
  std::optional<LogSpec> spec;
  store.each(
      "SELECT spec, metric FROM log WHERE tag = ? AND state <> 'sawn' AND spec IS NOT NULL "
      "AND (day, shift, number) < (?, ?, ?) ORDER BY day DESC, shift DESC, number DESC LIMIT 1",
      [&](const Row& row) { spec = read_spec(row.text(0), row.number(1) != 0); }, tag, key.day, key.shift,
      number);
  return spec;
}

void LogWriter::write(const sheet::DatedFact& fact, const sheet::LogLine& line, RunTotals& run) {
  Log log;
  const auto tags = sheet::spread(line);
  if (fact.item < tags.size()) log.tag = tags[fact.item];
  if (line.measure) {
    log.spec = LogSpec{*line.measure, line.defects};
  } else if (log.tag) {
    log.spec = borrowed_spec(store_, *log.tag, key_, fact.number);
    log.borrowed = log.spec.has_value();
    if (log.spec) log.spec->defects.insert(log.spec->defects.end(), line.defects.begin(), line.defects.end());
  }
  if (log.spec) {
    log.scale = scaled(*log.spec, *run.practice, then_.units);
    log.content = scaling::content(log.spec->measure, taper_).cubic_feet;
  }

  const auto spec = log.spec ? std::optional(write_spec(*log.spec)) : std::nullopt;
  const auto diameter = log.spec ? mean_small_end(log.spec->measure) : std::nullopt;
  const auto length = log.spec ? std::optional(log.spec->measure.length) : std::nullopt;
  const auto of_scale = [&](std::int64_t scaling::Scale::*figure) {
    return log.scale ? std::optional((*log.scale).*figure) : std::nullopt;
  };
  store_.run(
      "INSERT INTO log (day, shift, number, run, tag, state, spec, borrowed, diameter, length, metric, "
      "practice, gross, "
      "deduction, net, cull, content, defect, origin) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
      key_.day, key_.shift, fact.number, run.run, log.tag, state_of(line), spec, log.borrowed,
      diameter ? std::optional(diameter->count) : std::nullopt,
      length ? std::optional(length->count) : std::nullopt,
      length ? std::optional(length->system == System::metric) : std::nullopt,
      log.scale ? std::optional(run.practice->name) : std::nullopt, of_scale(&scaling::Scale::gross),
      of_scale(&scaling::Scale::deduction), of_scale(&scaling::Scale::net),
      log.scale ? std::optional(log.scale->cull) : std::nullopt, log.content,
      said(defect_words(log.spec ? log.spec->defects : line.defects)), said(line.origin));
  if (state_of(line) == "sawn") add_to(run, log);
}

}  // namespace kerfbook::book
