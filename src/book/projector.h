// projector.h -- from the journal to the tables. One function works an entry in, and posting, rebuilding and
// verifying all use it, so that a rebuilt book equals the original row for row.
//
// What the rows of a sheet follow from, and nothing else:
//   its own revisions, each read in the units of the mill file in force when it was posted;
//   for the scales of its logs the mill file in force when it was first posted, or when it was last asked to be scaled
//   anew (a scale once given stays, whatever rule the mill takes up later and whatever else of the sheet is corrected);
//   the newest mill file, for sizes really cut and for the taper of logs;
//   of a job that one of the two files has no more, the last file before it that had the job;
//   earlier sheets, for the measure of a log received or left there and for the set-up carried over.
// An entry that changes what other sheets follow from makes those stale; settle() works them out anew.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "book/mills.h"
#include "sheet/sheet.h"

namespace kerfbook::book {

/// A sheet as one entry of the journal has it.
struct SheetEntry {
  SheetKey key;
  int revision = 1;
  std::int64_t entry = 0;
  std::int64_t mill_entry =
      0;  ///< mill file in force when it was posted, which says how it is read; 0 = none
  std::int64_t rules_entry = 0;  ///< mill file whose rules scale its logs; 0 = none
  std::string why;
  bool metric = false;  ///< what its plain numbers were read as
  sheet::Sheet sheet;
};

using PaperProjection = std::function<void(SQLite::Database&, const Entry&)>;

class Projector {
 public:
  Projector(Store& store, const Journal& journal, PaperProjection papers)
      : store_(store), journal_(journal), words_(store), mills_(journal), papers_(std::move(papers)) {}

  /// Works in an entry that stands in the journal, all earlier ones being worked in.
  void apply(const Entry& entry);
  /// Works out anew every sheet that entries since the last call made stale. To be called before a commit.
  void settle();

  /// The newest mill file worked in.
  const Mill& mill() { return mills_.at(mill_entry_); }
  [[nodiscard]] std::int64_t mill_entry() const { return mill_entry_; }
  Mills& mills() { return mills_; }
  Words& words() { return words_; }

  /// Begins from what the book holds now: another writer may have been there, or a rollback.
  void refresh();
  /// Drops what is remembered of a transaction that was undone: all is as it was at the last refresh().
  void forget();
  /// Works every entry of the journal in, every other table being empty. Inside a transaction.
  void rebuild();

 private:
  void apply_mill(const Entry& entry);
  void apply_sheet(const Entry& entry);
  void project(SheetKey key);
  [[nodiscard]] std::vector<SheetEntry> revisions(SheetKey key);
  SheetEntry read(const Entry& entry, SheetKey key);

  Store& store_;
  const Journal& journal_;
  Words words_;
  Mills mills_;
  PaperProjection papers_;
  std::int64_t mill_entry_ = 0;
  std::int64_t upto_ = 0;  ///< newest entry worked in
  struct {
    std::int64_t upto = 0;
    std::int64_t mill_entry = 0;
  } begun_;  ///< the two above when the transaction began
  std::set<SheetKey> stale_;
};

/// Every table that is worked out from the journal, in order of name.
std::vector<std::string> projected_tables(Store& store);

}  // namespace kerfbook::book
