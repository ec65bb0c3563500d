// runs.h -- the runs of one sheet and their totals: a run is all of a sheet that has one site, job, species and
// set-up, in the order they first appear.
#pragma once

#include <deque>
#include <optional>
#include <string>

#include "book/journal.h"
#include "book/mills.h"
#include "sheet/facts.h"

namespace kerfbook::book {

/// nullopt for an empty text: what was not said is NULL in the book, never ''.
std::optional<std::string> said(const std::string& text);

struct RunTotals {
  int run = 1;
  int first_number = 0;  ///< of its first log or board in the order of the day
  std::optional<Id> site;
  std::optional<Id> job;
  std::optional<Id> species;
  std::optional<Id> setup;
  const scaling::Practice* practice = nullptr;
  std::string unit;  ///< of gross and net
  std::int64_t logs = 0;
  std::int64_t unscaled_logs = 0;
  std::int64_t gross = 0;    ///< millionths of the unit
  std::int64_t net = 0;      ///< millionths of the unit
  std::int64_t content = 0;  ///< millionths of a cubic foot
  std::int64_t lines = 0;
  std::int64_t pieces = 0;
  std::int64_t lumber = 0;
  std::int64_t wood = 0;

  void add_tally(std::int64_t more_pieces, std::int64_t more_lumber, std::int64_t more_wood);
};

class Runs {
 public:
  /// `then`: the mill file whose rules scale the logs of this sheet.
  Runs(Store& store, Words& words, SheetKey key, MillInForce& then)
      : store_(store), words_(words), key_(key), then_(then) {}

  RunTotals& of(const sheet::DatedFact& fact);             ///< begins the run when there is none yet
  std::optional<int> find(const sheet::Context& context);  ///< number of a run already begun
  void write();

 private:
  RunTotals* known(const RunTotals& like);
  RunTotals blank(const sheet::Context& context);

  Store& store_;
  Words& words_;
  SheetKey key_;
  MillInForce& then_;
  std::deque<RunTotals> runs_;  ///< a deque: references handed out stay good
};

}  // namespace kerfbook::book
