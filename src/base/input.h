// input.h -- the one door through which texts and pictures come in from outside: no more of them is read than their kind
// may be long, whatever stands behind the name: a file, a pipe, a device without an end.
#pragma once

#include <cstddef>
#include <iosfwd>
#include <string>
#include <string_view>

namespace kerfbook {

/// How long one kind of input may be.
struct InputLimit {
  std::string_view kind;     ///< in a sentence: "a day sheet"
  std::size_t most;          ///< bytes
  std::string_view instead;  ///< what to do with a longer one
};

/// A file's bytes. Refused, naming the file: a folder, what cannot be read, and what is longer than the limit, which is
/// not read to its end. A file that says how long it is is not read at all then.
std::string read_input(const std::string& file, const InputLimit& limit);

/// The rest of an open stream; `name` is what messages call it. Refused when there is more than the limit, or when the
/// stream breaks off.
std::string read_input(std::istream& stream, std::string_view name, const InputLimit& limit);

/// "4 MiB", "200 KiB", "900 bytes": a limit as messages tell it.
std::string shown_bytes(std::size_t bytes);

}  // namespace kerfbook
