// read_toml.cpp -- the text of a TOML file becomes a tree; the one place that knows the TOML library.
#include "mill/toml_table.h"

#include <algorithm>
#include <stdexcept>

#include "base/text.h"
#include "mill/mill.h"

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
  const bool plain = std::none_of(line.begin(), line.end(), [](char c) { return (c & 0x80) != 0; });
  if (plain) return from > line.size() ? "" : std::string(line.substr(from - 1, past - from));
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
  Copier(std::string_view text, std::vector<Diagnostic>& found) : lines_(split_lines(text)), found_(found) {}

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
      if (find_unfit(key.str()) != std::string_view::npos)
        found_.push_back(
            {Severity::error, place_of(key.source()), "a character that cannot be printed", "leave it out"});
    }
    std::stable_sort(node.inside.begin(), node.inside.end(),
                     [](const TomlNode& a, const TomlNode& b) { return a.key_place < b.key_place; });
    for (std::size_t i = 0; i < node.inside.size(); ++i) node.by_key.push_back(i);
    std::sort(node.by_key.begin(), node.by_key.end(),
              [&](std::size_t a, std::size_t b) { return node.inside[a].key < node.inside[b].key; });
  }

  void copy_scalar(const toml::node& from, TomlNode& node) {
    const std::string typed = typed_at(from.source());
    if (const auto* text = from.as_string()) {
      node.written = std::string(trim(text->get()));
      node.blanks = node.written.empty() && !text->get().empty();
      if (find_unfit(node.written) !=
          std::string_view::npos)  // written as \u001B, it would come out of every paper
        found_.push_back({Severity::error, node.place, "a character that cannot be printed", "leave it out"});
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
  std::vector<Diagnostic>& found_;
};

constexpr int kDeepest = 20;    ///< brackets within brackets: the library calls itself for each
constexpr int kMostParts = 20;  ///< of a key, as a.b.c: each is a table within the one before

/// What the library must not be given, found by one look over the text. Characters past ASCII may stand in quotes and remarks only. Found here and not by the library, for a better answer
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
    if (is_too_deep(c)) return;
    step(1);
  }

  /// Then nothing more is looked at.
  bool is_too_deep(char c) {
    if (c == '[' || c == '{') ++depth_;
    if ((c == ']' || c == '}') && depth_ > 0) --depth_;
    if (c == '.') ++parts_;
    if (std::string_view("\n=,[{").find(c) != std::string_view::npos) parts_ = 1;
    if (depth_ <= kDeepest && parts_ <= kMostParts) return false;
    found_.push_back(
        depth_ > kDeepest
            ? Diagnostic{Severity::error, place_, "brackets within brackets, more than 20 deep", "close them"}
            : Diagnostic{Severity::error, place_, "a key of more than 20 parts",
                         "a mill file's keys have two or three"});
    at_ = text_.size();
    return true;
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
  int depth_ = 0;
  int parts_ = 1;
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

/// Does the library give up on this text?
bool breaks(std::string_view text) {
  try {
    static_cast<void>(toml::parse(text));
  } catch (const toml::parse_error&) {
  } catch (const NotToml&) {
    return true;
  }
  return false;
}

/// The line at which the library gives up on a text. It reads from the front and gives up at the same place of every
/// longer text, so the place is found by halving.
int last_line_read(std::string_view text) {
  const auto lines = split_lines(text);
  std::size_t good = 0;
  std::size_t bad = lines.size();
  while (bad - good > 1) {
    const std::size_t middle = good + (bad - good) / 2;
    const auto up_to = static_cast<std::size_t>(lines[middle].data() - text.data());
    (breaks(text.substr(0, up_to)) ? bad : good) = middle;
  }
  return static_cast<int>(bad);
}

constexpr std::size_t kLongestMillLine = 4000;  ///< bytes
constexpr std::ptrdiff_t kMostMillLines = 100'000;

std::optional<Diagnostic> past_limits(std::string_view text) {
  const auto whole = [](const std::string& what) {
    return Diagnostic{Severity::error, {}, what, std::string(kMillLimit.instead)};
  };
  if (text.size() > kMillLimit.most)
    return whole("longer than a mill file may be, " + shown_bytes(kMillLimit.most));
  if (std::count(text.begin(), text.end(), '\n') > kMostMillLines)
    return whole("more lines than a mill file may have, " + grouped({kMostMillLines, 0}));
  int line = 0;
  for (const std::string_view one : split_lines(text)) {
    ++line;
    if (one.size() > kLongestMillLine)
      return Diagnostic{Severity::error,
                        {line, 0},
                        "a line of " + std::to_string(one.size()) + " bytes, where " +
                            std::to_string(kLongestMillLine) + " is the most",
                        "write the list on several lines"};
  }
  return std::nullopt;
}

constexpr const char* kHowToml = "write key = \"value\" lines under [table] headers";
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

}  // namespace

TomlFile read_toml(std::string_view text) {
  TomlFile file;
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  if (!is_utf8(text)) {
    file.found.push_back(not_utf8(text));
    return file;
  }
  if (auto limit = past_limits(text)) {
    file.found.push_back(*limit);
    return file;
  }
  file.found = OutsideQuotes(text).find();
  if (!file.found.empty()) return file;
  try {
    file.root = Copier(text, file.found).copy(toml::parse(text));
  } catch (const toml::parse_error& error) {
    file.found.push_back({Severity::error, within(text, place_of(error.source())),
                          "this is not TOML: " + std::string(error.description()), kHowToml});
  } catch (const NotToml&) {
    file.found.push_back({Severity::error, {last_line_read(text), 0}, "this is not TOML", kHowToml});
  }
  return file;
}

}  // namespace kerfbook::book
