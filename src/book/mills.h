// mills.h -- every mill file of the journal, and what one of them says of the jobs of its time.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "book/journal.h"
#include "book/words.h"
#include "mill/mill.h"

namespace kerfbook::book {

/// The mill file by journal entry, each read once.
class Mills {
 public:
  explicit Mills(const Journal& journal) : journal_(journal) {}
  /// Entry 0 is the mill of a book without a mill file. Throws Failed when the entry cannot be read.
  const Mill& at(std::int64_t entry);
  void forget() { read_.clear(); }

 private:
  const Journal& journal_;
  std::map<std::int64_t, std::unique_ptr<Mill>> read_;
};

/// One mill file, and of a job that it has no more what the last file before it said. A job is taken out of the file
/// when it is done, and its days are to stay as they were; what a file says of a job otherwise than before is meant.
class MillInForce {
 public:
  MillInForce(Store& store, Words& words, Mills& mills, std::int64_t entry)
      : store_(store), words_(words), mills_(mills), entry_(entry), file_(mills.at(entry)) {}

  [[nodiscard]] const Mill& file() const { return file_; }
  /// The practice the job's logs are scaled under: its own, else this file's house practice.
  const scaling::Practice& practice_for(std::string_view job);
  /// The target section of a nominal size cut for the job; nullopt = nominal plus the set-up's oversize.
  std::optional<measure::Size> target_for(std::string_view job, const measure::Size& nominal);
  /// True when `next` gives the same volumes for every sheet: units, target sizes and log taper.
  bool has_volumes_of(const Mill& next);

 private:
  struct Found {
    const Mill* mill = nullptr;  ///< the file that says it
    const JobEntry* job = nullptr;
  };
  /// Nothing for a job that no file up to this one has.
  const Found& find(std::string_view job);

  Store& store_;
  Words& words_;
  Mills& mills_;
  std::int64_t entry_;
  const Mill& file_;
  std::map<std::string, Found, std::less<>> found_;  ///< by code in small letters
};

}  // namespace kerfbook::book
