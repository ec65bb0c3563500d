// words.h -- the tables of words the book has met: sites, species, grades, customers, jobs, set-ups, sizes.
// A line of a sheet holds a word's number. A word is written once, in the spelling first met; the case of its
// letters makes no difference. Words are only ever added, in the order of the journal, so their numbers follow
// from the journal alone.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/store.h"
#include "measure/size.h"

namespace kerfbook::book {

enum class WordKind : std::uint8_t { site, species, grade, customer, job, setup };
std::string_view table_of(WordKind kind);  ///< "site", "species", ...

class Words {
 public:
  explicit Words(Store& store) : store_(store) {}

  /// The word's number, added when it is new; nullopt for an empty word (not said).
  std::optional<Id> find_or_add(WordKind kind, std::string_view word);
  /// The word's number; nullopt when the book has not met it.
  std::optional<Id> find(WordKind kind, std::string_view word);
  Id find_or_add(const measure::Size& size);
  /// Every word of a kind, in the order met. Not to be called once a line: it reads the whole table.
  std::vector<std::string> all(WordKind kind);
  /// The word itself.
  std::string word(WordKind kind, Id id);

  /// Notes on words added since the last call: "species DG is new to the book".
  std::vector<std::string> take_notes();
  /// What is remembered of the tables is dropped: after a rollback, or when another writer may have added words.
  void forget();

 private:
  static constexpr std::size_t kKinds = 6;
  Store& store_;
  std::array<std::map<std::string, Id, std::less<>>, kKinds> known_;  ///< by word in small letters
  std::map<measure::Size, Id> sizes_;
  std::vector<std::string> notes_;
};

}  // namespace kerfbook::book
