// answer.h -- the program's own answers: its json read with every number kept as the text it was printed as.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace reckoning {

/// A value of json. A number is its text, so that a figure is judged as it stands there.
struct Json {
  enum class Kind { null, truth, number, text, list, object };
  Kind kind = Kind::null;
  std::string text;                ///< of a number, a text or a truth
  std::vector<Json> list;          ///< of a list; of an object its members' values
  std::vector<std::string> names;  ///< of an object's members

  [[nodiscard]] const Json& at(std::string_view name) const;  ///< a null where there is no such member
  [[nodiscard]] bool is_null() const { return kind == Kind::null; }
};

/// Throws std::runtime_error where it is no json.
Json read_json(std::string_view text);

/// What a command did.
struct Did {
  int code = 0;
  std::string out;
  std::string err;
};

/// A book in a folder of its own, asked in process through the program's one entry.
class Desk {
 public:
  explicit Desk(std::string today);
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;
  ~Desk();

  /// A command with its words; the book is named for it.
  Did ask(const std::vector<std::string>& words) const;
  /// The same, that must be done: throws std::runtime_error with what it said otherwise.
  std::string done(const std::vector<std::string>& words) const;
  /// The json a command answers with.
  [[nodiscard]] Json answer(std::vector<std::string> words) const;
  /// A file in the desk's folder: its path, and with a text written into it.
  [[nodiscard]] std::string path(const std::string& name) const { return folder_ + "/" + name; }
  [[nodiscard]] std::string file(const std::string& name, const std::string& text) const;
  [[nodiscard]] static std::string text_in(const std::string& file);

  void set_today(std::string day) { today_ = std::move(day); }
  [[nodiscard]] const std::string& today() const { return today_; }

 private:
  std::string folder_;
  std::string today_;
};

}  // namespace reckoning
