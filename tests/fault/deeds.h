// deeds.h -- every command that posts or makes something that must last, each with the folder it is done in.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "command/program.h"

namespace kerfbook::tests {

inline const std::string kBook = "mill.book";
inline const std::string kToday = "2026-05-09";
inline const std::string kSecond = "1778328847";  ///< 2026-05-09 12:14:07, Greenwich

struct Deed {
  std::string name;
  std::vector<std::string> words;  ///< names of files are of the folder, which the program is started in
  std::string decides;  ///< the file that tells whether it is done; empty: nothing that can be seen
  std::vector<std::string> done_words;  ///< any of them says that it is done
  std::vector<std::string>
      again_words;  ///< what it may say when it is done once more; else it must come through
  std::function<void(const fs::path&)> prepare = {};  ///< more in the folder than all deeds have
  bool tells =
      true;  ///< a failure says whether it is done; a report's file that cannot be written says enough
  bool in_parts = false;   ///< what it makes it makes file by file, and leaves what it has made
  bool may_doubt = false;  ///< it takes what cannot be read as damage, and does without
};

const std::vector<Deed>& deeds();

/// The folder all of them begin with: a book of the demo week, with an invoice, a deposit and a load slip.
void prepare_folder(const fs::path& folder);

}  // namespace kerfbook::tests
