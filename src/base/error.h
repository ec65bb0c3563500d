// error.h -- the errors that end a command, each with the exit code a script sees.
// What can be wrong inside a sheet is not an error but a Diagnostic (diagnostic.h).
#pragma once

#include <stdexcept>
#include <string>

namespace kerfbook {

enum class Exit : int {
  done = 0,     ///< what was asked is done
  refused = 1,  ///< the input was understood as wrong; nothing was changed
  usage = 2,    ///< the command line itself is wrong
  failed = 3,   ///< the book or the machine failed
};

/// Ends a command. The message is one sentence: where, what, and what would be right.
class Error : public std::runtime_error {
 public:
  Error(Exit code, const std::string& message) : std::runtime_error(message), code_(code) {}
  [[nodiscard]] Exit code() const noexcept { return code_; }

 private:
  Exit code_;
};

class Refused : public Error {
 public:
  explicit Refused(const std::string& message) : Error(Exit::refused, message) {}
};

class WrongUsage : public Error {
 public:
  explicit WrongUsage(const std::string& message) : Error(Exit::usage, message) {}
};

/// Nothing was changed, and the message need not say so.
class Failed : public Error {
 public:
  explicit Failed(const std::string& message) : Error(Exit::failed, message) {}
};

/// It failed when what was to be done was done, or may have been: the message says which.
class FailedLate : public Failed {
 public:
  using Failed::Failed;
};

}  // namespace kerfbook
