// embedded.h -- the .sql files of schema/ and reports/, built into the program.
#pragma once

#include <span>
#include <string_view>

namespace kerfbook::book {

struct EmbeddedFile {
  std::string_view path;  ///< "schema/001_book.sql", "reports/production.sql"
  std::string_view text;
};

/// All of them, in order of path.
std::span<const EmbeddedFile> embedded_files();

}  // namespace kerfbook::book
