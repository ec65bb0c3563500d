// unfinished.h -- the name a file has while it is in the making.
#pragma once

#include <filesystem>

namespace kerfbook {

/// ".mill.book.part1234" beside "mill.book", for this program. Nothing is there: what killed programs left of the same
/// file is cleared.
std::filesystem::path unfinished_name(const std::filesystem::path& file);

}  // namespace kerfbook
