#include "answer.h"

#include <stdlib.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <stdexcept>

#include "command/command.h"
#include "slurp.h"

namespace reckoning {
namespace {

namespace fs = std::filesystem;

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  Json whole() {
    Json value = any();
    blank();
    if (at_ != text_.size()) fail();
    return value;
  }

 private:
  [[noreturn]] void fail() const {
    throw std::runtime_error("no json at character " + std::to_string(at_) + ": " +
                             std::string(text_.substr(at_, 40)));
  }
  void blank() {
    while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_])) != 0) ++at_;
  }
  bool take(char c) {
    blank();
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }
  void must(char c) {
    if (!take(c)) fail();
  }
  bool word(std::string_view what) {
    if (text_.substr(at_, what.size()) != what) return false;
    at_ += what.size();
    return true;
  }

  Json any() {
    blank();
    if (take('{')) return object();
    if (take('[')) return list();
    Json value;
    if (at_ < text_.size() && text_[at_] == '"') {
      value.kind = Json::Kind::text;
      value.text = quoted();
    } else if (word("null")) {
      value.kind = Json::Kind::null;
    } else if (word("true") || word("false")) {
      value.kind = Json::Kind::truth;
      value.text = text_[at_ - 2] == 'u' ? "true" : "false";
    } else {
      value.kind = Json::Kind::number;
      const auto end = text_.find_first_not_of("-0123456789.", at_);
      value.text = std::string(text_.substr(at_, end - at_));
      if (value.text.empty()) fail();
      at_ += value.text.size();
    }
    return value;
  }

  Json object() {
    Json value;
    value.kind = Json::Kind::object;
    if (take('}')) return value;
    do {
      blank();
      std::string name = quoted();
      must(':');
      value.names.push_back(std::move(name));
      value.list.push_back(any());
    } while (take(','));
    must('}');
    return value;
  }

  Json list() {
    Json value;
    value.kind = Json::Kind::list;
    if (take(']')) return value;
    do value.list.push_back(any());
    while (take(','));
    must(']');
    return value;
  }

  /// Escapes but for quotes and strokes are kept as they stand: no answer is compared by them.
  std::string quoted() {
    must('"');
    std::string text;
    while (at_ < text_.size() && text_[at_] != '"') {
      if (text_[at_] == '\\') ++at_;
      text += text_[at_++];
    }
    must('"');
    return text;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

}  // namespace

const Json& Json::at(std::string_view name) const {
  static const Json kNull;
  for (std::size_t i = 0; i < names.size(); ++i)
    if (names[i] == name) return list[i];
  return kNull;
}

Json read_json(std::string_view text) {
  return Reader(text).whole();
}

Desk::Desk(std::string today) : today_(std::move(today)) {
  const fs::path shared_memory = "/dev/shm";
  const fs::path parent = fs::is_directory(shared_memory) ? shared_memory : fs::temp_directory_path();
  folder_ = (parent / "kerfbook-season-XXXXXX").string();
  if (::mkdtemp(folder_.data()) == nullptr) throw std::runtime_error("no folder for a book");
}

Desk::~Desk() {
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
}

std::string Desk::file(const std::string& name, const std::string& text) const {
  const std::string path = folder_ + "/" + name;
  std::ofstream(path, std::ios::binary) << text;
  return path;
}

std::string Desk::text_in(const std::string& file) {
  return kerfbook::tests::slurp(file);
}

Did Desk::ask(const std::vector<std::string>& words) const {
  std::istringstream in;
  std::ostringstream out;
  std::ostringstream err;
  kerfbook::command::Context context{
      .in = in,
      .out = out,
      .err = err,
      .today = [this] { return *kerfbook::read_day(today_); },
      .time_of_day = [] { return std::string("20:00:00"); },
      .environment = [this](const std::string& name) -> std::optional<std::string> {
        if (name == "KERFBOOK_BOOK") return folder_ + "/mill.book";
        return std::nullopt;
      },
      .out_is_terminal = false,
      .terminal_width = 0,
  };
  Did did;
  did.code = kerfbook::command::run(words, context);
  did.out = out.str();
  did.err = err.str();
  return did;
}

std::string Desk::done(const std::vector<std::string>& words) const {
  const Did did = ask(words);
  if (did.code == 0) return did.out;
  std::string all;
  for (const auto& word : words) all += " " + word;
  throw std::runtime_error("refused:" + all + "\n" + did.err);
}

Json Desk::answer(std::vector<std::string> words) const {
  words.insert(words.end(), {"--as", "json"});
  return read_json(done(words));
}

}  // namespace reckoning
