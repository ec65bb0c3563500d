#include "book/toml_table.h"

#include <algorithm>
#include <stdexcept>

#include "base/text.h"

namespace {

/// A text on which the library's own claims about itself do not hold.
struct NotToml : std::runtime_error {
  using std::runtime_error::runtime_error;
};

[[noreturn]] void claim_broken(const char* claim) {
  throw NotToml(claim);
}

}  // namespace

// Header-only, so that the program loads no shared library for it. Some broken texts ("[=") prove wrong what toml++ 3.3
// claims; a release build would take the claim for granted and run into undefined behaviour, so it is held to it here.
#undef NDEBUG
#define TOML_ASSERT(claim) ((claim) ? static_cast<void>(0) : claim_broken(#claim))
#define TOML_HEADER_ONLY 1
#include <toml++/toml.h>

namespace kerfbook::book {
namespace {

Place place_of(const toml::source_region& region) {
  return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

/// The part of a line between two columns (from 1, in characters; `past` not included).
std::string cut_out(std::string_view line, std::size_t from, std::size_t past) {
  std::string part;
  std::size_t column = 0;
  for (const char c : line) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++column;
    if (column >= from && column < past) part.push_back(c);
  }
  return part;
}

TomlKind kind_of(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::string:
      return TomlKind::text;
    case toml::node_type::integer:
    case toml::node_type::floating_point:
      return TomlKind::number;
    case toml::node_type::boolean:
      return TomlKind::flag;
    case toml::node_type::date:
      return TomlKind::day;
    case toml::node_type::array:
      return TomlKind::list;
    case toml::node_type::table:
      return TomlKind::table;
    default:
      return TomlKind::other;
  }
}

/// Copies the library's tree, with the digits of numbers taken from the lines themselves.
class Copier {
 public:
  explicit Copier(std::string_view text) : lines_(split_lines(text)) {}

  TomlNode copy(const toml::node& from) {
    TomlNode node;
    node.kind = kind_of(from);
    node.place = place_of(from.source());
    if (const auto* table = from.as_table()) {
      copy_entries(*table, node);
    } else if (const auto* list = from.as_array()) {
      for (const auto& item : *list) node.inside.push_back(copy(item));
    } else {
      copy_scalar(from, node);
    }
    return node;
  }

 private:
  void copy_entries(const toml::table& table, TomlNode& node) {
    for (const auto& [key, value] : table) {
      node.inside.push_back(copy(value));
      node.inside.back().key = std::string(key.str());
      node.inside.back().key_place = place_of(key.source());
    }
    std::stable_sort(node.inside.begin(), node.inside.end(),
                     [](const TomlNode& a, const TomlNode& b) { return a.key_place < b.key_place; });
  }

  void copy_scalar(const toml::node& from, TomlNode& node) {
    const std::string typed = typed_at(from.source());
    if (const auto* text = from.as_string()) {
      node.written = std::string(trim(text->get()));
      // quotes with nothing escaped between them: a slip's place can be counted from the quote
      const std::size_t inside = typed.size() > 1 ? typed.find(node.written, 1) : std::string::npos;
      node.inset = inside == std::string::npos ? 0 : characters_before(typed, inside);
    } else {
      node.written = typed;
      if (node.kind == TomlKind::number) std::erase(node.written, '_');
    }
  }

  [[nodiscard]] std::string typed_at(const toml::source_region& at) const {
    if (at.begin.line == 0 || at.begin.line > lines_.size()) return "";
    const std::string_view line = lines_[at.begin.line - 1];
    const std::size_t past = at.end.line == at.begin.line ? at.end.column : line.size() + 1;
    return std::string(trim(cut_out(line, at.begin.column, past)));
  }

  std::vector<std::string_view> lines_;
};

/// Characters past ASCII may stand in quotes and remarks only. Found here and not by the library, for a better answer
/// (curly quotes out of a word processor, kerf = ½) and because toml++ 3.3 runs into undefined behaviour on them.
class OutsideQuotes {
 public:
  explicit OutsideQuotes(std::string_view text) : text_(text) {}

  std::vector<Diagnostic> find() {
    while (at_ < text_.size()) {
      if (closing_.empty()) {
        outside();
      } else {
        inside();
      }
    }
    return std::move(found_);
  }

 private:
  [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }
  [[nodiscard]] bool past_ascii(std::size_t at) const {
    return at < text_.size() && static_cast<unsigned char>(text_[at]) >= 0x80;
  }

  void outside() {
    const char c = text_[at_];
    if (past_ascii(at_)) return note();
    if (c == '#') {
      closing_ = "\n";
    } else if (c == '"' || c == '\'') {
      // the library would not take it for quotes, and what stands in them for a bare value
      if (std::string_view("\n=[,.{").find(before_) == std::string_view::npos) return note();
      const bool triple = rest().starts_with(std::string(3, c));
      closing_ = rest().substr(0, triple ? 3 : 1);
      if (triple) step(2);
    }
    if (c != ' ' && c != '\t' && c != '\r') before_ = c;
    step(1);
  }

  void inside() {
    if (text_[at_] == '\\' && closing_[0] == '"') {
      step(1);
      if (past_ascii(at_)) return note();
      step(1);
    } else if (rest().starts_with(closing_)) {
      const char quote = closing_[0];
      const bool triple = closing_.size() == 3;
      step(closing_.size());
      while (triple && rest().starts_with(quote)) step(1);  // """He said "no"""""
      closing_ = {};
      before_ = quote;
    } else {
      if (text_[at_] == '\n' && closing_.size() == 1) {  // never closed: the library will say so
        closing_ = {};
        before_ = '\n';
      }
      step(1);
    }
  }

  void step(std::size_t bytes) {
    for (; bytes > 0 && at_ < text_.size(); --bytes, ++at_) {
      const auto byte = static_cast<unsigned char>(text_[at_]);
      if (byte == '\n') {
        place_ = {place_.line + 1, 1};
      } else if ((byte & 0xC0U) != 0x80U) {
        ++place_.column;
      }
    }
  }

  /// One finding a line is enough: marks come in pairs.
  void note() {
    std::size_t bytes = 1;
    while (past_ascii(at_ + bytes) && (static_cast<unsigned char>(text_[at_ + bytes]) & 0xC0U) == 0x80U)
      ++bytes;
    const std::string mark(text_.substr(at_, bytes));
    if (mark == "\"" || mark == "'") return note_quote(mark);
    const bool quote = mark == "“" || mark == "”" || mark == "„" || mark == "‘" || mark == "’";
    if (found_.empty() || found_.back().place.line != place_.line) {
      found_.push_back(
          {Severity::error, place_, in_quotes(mark) + " stands outside quotes",
           quote ? "write plain quotes: \"...\"" : "put what is written with it in quotes: \"...\""});
    }
    step(bytes);
  }

  void note_quote(const std::string& mark) {
    if (found_.empty() || found_.back().place.line != place_.line) {
      found_.push_back({Severity::error, place_, in_quotes(mark) + " stands in the middle of a value",
                        "put the whole value in quotes: \"...\""});
    }
    before_ = mark[0];
    step(1);
  }

  std::string_view text_;
  std::size_t at_ = 0;
  char before_ = '\n';        ///< outside quotes: the last mark that is no blank
  std::string_view closing_;  ///< what ends the quotes or the remark we are in; empty = in neither
  Place place_{1, 1};
  std::vector<Diagnostic> found_;
};

/// Of a text that is not UTF-8: the first line that is not.
Diagnostic not_utf8(std::string_view text) {
  int line = 1;
  for (const std::string_view one : split_lines(text)) {
    if (!is_utf8(one)) break;
    ++line;
  }
  return {Severity::error, {line, 0}, "the text is not UTF-8 here", "save the file as UTF-8"};
}

/// A place within the text: the library puts the end of a text one past it.
Place within(std::string_view text, Place place) {
  const auto lines = split_lines(text);
  place.line = std::min(place.line, static_cast<int>(lines.size()));
  if (place.line < 1) return {};
  const std::string_view line = lines[static_cast<std::size_t>(place.line) - 1];
  place.column = std::min(place.column, static_cast<int>(characters_before(line, line.size())) + 1);
  return place;
}

/// The line at which the library gives up on a text: the first lines up to it are the shortest on which it does.
int last_line_read(std::string_view text) {
  int line = 0;
  for (std::size_t end = 0; end < text.size();) {
    end = std::min(text.find('\n', end), text.size() - 1) + 1;
    ++line;
    try {
      static_cast<void>(toml::parse(text.substr(0, end)));
    } catch (const toml::parse_error&) {
    } catch (const NotToml&) {
      return line;
    }
  }
  return line;
}

constexpr const char* kHowToml = "write key = \"value\" lines under [table] headers";
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

}  // namespace

const TomlNode* TomlNode::find(std::string_view wanted) const {
  const auto at =
      std::find_if(inside.begin(), inside.end(), [&](const TomlNode& n) { return n.key == wanted; });
  return at == inside.end() ? nullptr : &*at;
}

TomlFile read_toml(std::string_view text) {
  TomlFile file;
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  if (!is_utf8(text)) {
    file.found.push_back(not_utf8(text));
    return file;
  }
  file.found = OutsideQuotes(text).find();
  if (!file.found.empty()) return file;
  try {
    file.root = Copier(text).copy(toml::parse(text));
  } catch (const toml::parse_error& error) {
    file.found.push_back({Severity::error, within(text, place_of(error.source())),
                          "this is not TOML: " + std::string(error.description()), kHowToml});
  } catch (const NotToml&) {
    file.found.push_back({Severity::error, {last_line_read(text), 0}, "this is not TOML", kHowToml});
  }
  return file;
}

const TomlNode* TomlTable::take(std::string_view key) {
  asked_.emplace_back(key);
  const TomlNode* node = table_->find(key);
  const bool blank = node != nullptr && node->kind == TomlKind::text && node->written.empty();
  return blank ? nullptr : node;
}

std::vector<const TomlNode*> TomlTable::take_list(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return {};
  if (node->kind != TomlKind::list) return {node};
  std::vector<const TomlNode*> all;
  for (const TomlNode& one : node->inside) all.push_back(&one);
  return all;
}

bool TomlTable::is_scalar(const TomlNode& node) {
  if (node.kind == TomlKind::text || node.kind == TomlKind::number) return true;
  wrong(node, "a text is wanted here", "write it in quotes: \"...\"");
  return false;
}

void TomlTable::wrong(const TomlNode& node, std::string what, std::string instead) {
  file_->found.push_back({Severity::error, node.place, std::move(what), std::move(instead)});
}

void TomlTable::wrong(const TomlNode& node, const Slip& slip) {
  const Place place{node.place.line, node.place.column + node.inset + slip.at};
  file_->found.push_back({Severity::error, place, slip.what, slip.instead});
}

void TomlTable::wrong_at(std::string_view key, std::string what, std::string instead) {
  const TomlNode* node = table_->find(key);
  wrong(node != nullptr ? *node : *table_, std::move(what), std::move(instead));
}

void TomlTable::doubtful_at(std::string_view key, std::string what, std::string instead) {
  wrong_at(key, std::move(what), std::move(instead));
  file_->found.back().severity = Severity::warning;
}

std::string TomlTable::text(std::string_view key) {
  const TomlNode* node = take(key);
  return node != nullptr && is_scalar(*node) ? node->written : "";
}

std::vector<std::string> TomlTable::words(std::string_view key) {
  return read_list<std::string>(key, [](std::string_view word) -> Result<std::string> {
    if (word.empty()) return Slip{"an empty text in a list", "leave it out", 0};
    return std::string(word);
  });
}

std::optional<bool> TomlTable::flag(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (node->kind == TomlKind::flag) return node->written == "true";
  wrong(*node, in_quotes(key) + " is yes or no", "write true or false, without quotes");
  return std::nullopt;
}

std::optional<std::int64_t> TomlTable::whole(std::string_view key, std::int64_t least, std::int64_t most) {
  return read<std::int64_t>(key, [&](std::string_view written) -> Result<std::int64_t> {
    const auto got = read_decimal(written, 0);
    if (got && *got >= Rational(least) && *got <= Rational(most)) return got->rounded(0);
    return Slip{in_quotes(key) + " is " + in_quotes(written),
                "write a whole number from " + std::to_string(least) + " to " + std::to_string(most), 0};
  });
}

std::optional<Rational> TomlTable::number(std::string_view key, int max_places) {
  return read<Rational>(key, [&](std::string_view written) { return read_decimal(written, max_places); });
}

std::optional<Day> TomlTable::day(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return std::nullopt;
  if (const auto day = read_day(node->written)) return day;
  wrong(*node, in_quotes(key) + " is no day", "write it as 2026-05-04");
  return std::nullopt;
}

std::optional<TomlTable> TomlTable::table(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return std::nullopt;
  const std::string name(key);
  if (node->kind == TomlKind::table) return TomlTable(*node, "[" + name + "]", *file_);
  if (node->kind == TomlKind::list) {
    wrong(*node, "[[" + name + "]] stands once", "write [" + name + "], with single brackets");
  } else {
    wrong(*node, in_quotes(name) + " is a table", "write " + name + " = { ... } or [" + name + "]");
  }
  return std::nullopt;
}

std::vector<TomlTable> TomlTable::tables(std::string_view key) {
  const TomlNode* node = take(key);
  if (node == nullptr) return {};
  const std::string name = "[[" + std::string(key) + "]]";
  if (node->kind != TomlKind::list) {
    wrong(*node, name + " may stand more than once", "write " + name + ", with double brackets");
    return {};
  }
  std::vector<TomlTable> all;
  for (const TomlNode& one : node->inside) {
    if (one.kind == TomlKind::table) {
      all.emplace_back(one, name, *file_);
    } else {
      wrong(one, name + " is a table", "write " + name + " above its own keys");
    }
  }
  return all;
}

void TomlTable::finish() {
  for (const TomlNode& entry : table_->inside) {
    if (std::find(asked_.begin(), asked_.end(), entry.key) != asked_.end()) continue;
    const std::string near = nearest(entry.key, asked_);
    file_->found.push_back(
        {Severity::error, entry.key_place, in_quotes(entry.key) + " is no key of " + what_,
         near.empty() ? "its keys are " + join(asked_, ", ") : "did you mean " + near + "?"});
  }
}

}  // namespace kerfbook::book
