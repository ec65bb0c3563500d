// journal.h -- the journal: every text ever posted, in order, chained by digests. Entries are only ever appended.
// What an entry means for the other tables is worked out in projector.h.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/book.h"
#include "book/store.h"

namespace kerfbook::book {

/// The number behind an entry's; of the greatest there is, which only a file changed by hand can hold, itself.
constexpr std::int64_t number_after(std::int64_t entry) {
  return entry == std::numeric_limits<std::int64_t>::max() ? entry : entry + 1;
}

/// What is wrong with an entry, named by its number. guarded() puts the book's name in front.
class JournalFault : public Failed {
 public:
  using Failed::Failed;
};

std::string_view word_of(EntryKind kind);  ///< as the journal stores it: "mill", "sheet", "paper"

/// A sheet's subject: "2026-05-05", "2026-05-05 shift 2".
struct SheetKey {
  Day day;
  int shift = 1;
  auto operator<=>(const SheetKey&) const = default;
};
std::string subject_of(SheetKey key);
std::optional<SheetKey> read_subject(std::string_view subject);  ///< nullopt when it is no sheet's
EntryKind kind_of(std::string_view subject);                     ///< "mill", a sheet's, else a paper's

/// The digest before the first entry: 64 zeros.
std::string first_digest();
/// SHA-256, hex, of the digest before and every field of the entry but its own digest.
std::string digest_of(const std::string& before, const Entry& entry);
Mark mark_of(const Entry& entry);

class Journal {
 public:
  explicit Journal(Store& store) : store_(store) {}

  /// Appends a text as the next revision of its subject, and gives back the entry as it stands. `keeps_rules`: a
  /// corrected sheet whose logs keep the rules of the revision before it.
  Entry append(EntryKind kind, std::string_view subject, std::string_view body, std::string_view why,
               std::string_view at, bool keeps_rules = false);
  /// Puts back an entry as it was, number and digest included: for a rebuild in another file.
  void copy(const Entry& entry);

  /// Every entry in order, one at a time: a book of many years need not be in memory at once.
  void each(const std::function<void(const Entry&)>& take) const;
  [[nodiscard]] std::optional<Entry> current(std::string_view subject) const;
  /// All revisions of a subject up to and including entry `upto`, first to last.
  [[nodiscard]] std::vector<Entry> revisions(std::string_view subject, std::int64_t upto) const;
  [[nodiscard]] std::optional<Entry> entry(std::int64_t number) const;
  /// The entry of the mill file that was in force when entry `number` was posted; 0 = none yet.
  [[nodiscard]] std::int64_t mill_entry_before(std::int64_t number) const;
  [[nodiscard]] Mark newest() const;
  [[nodiscard]] std::int64_t last() const;  ///< number of the newest entry; 0 = none

 private:
  Store& store_;
};

}  // namespace kerfbook::book
