// result.h -- the value of something read, or the slip that kept it from being read.
// For what is expected to go wrong: words a tired person types. g++ 12 has no std::expected.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace kerfbook {

/// Why a text could not be read, in words for the person who typed it.
struct Slip {
  std::string what;     ///< what is wrong
  std::string instead;  ///< what would be right; may be empty
  int at = 0;           ///< characters from the start of the text read to the trouble; 0 = its start
  bool operator==(const Slip&) const = default;
};

/// A T or a Slip. `if (auto got = read_x(...)) use(*got); else tell(got.slip());`
template <class T>
class Result {
 public:
  Result(T value)
      : held_(std::move(value)) {}  // NOLINT(google-explicit-constructor): reads as `return value;`
  Result(Slip slip)
      : held_(std::move(slip)) {}  // NOLINT(google-explicit-constructor): reads as `return Slip{}`

  explicit operator bool() const noexcept { return std::holds_alternative<T>(held_); }
  const T& operator*() const { return std::get<T>(held_); }
  T& operator*() { return std::get<T>(held_); }
  const T* operator->() const { return &std::get<T>(held_); }
  T* operator->() { return &std::get<T>(held_); }
  [[nodiscard]] const Slip& slip() const { return std::get<Slip>(held_); }

 private:
  std::variant<T, Slip> held_;
};

}  // namespace kerfbook
