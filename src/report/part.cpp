#include "report/part.h"

#include <map>
#include <set>
#include <stdexcept>

#include "base/text.h"

namespace kerfbook::report {
namespace {

constexpr std::string_view kPart = "-- part: ";
constexpr std::string_view kGiven = "--   ";

using Words = std::map<std::string, std::string, std::less<>>;

/// `--   step = week`; false when the line is none.
bool take_word(std::string_view line, Words& words) {
  const std::size_t equals = line.find(" = ");
  if (!line.starts_with(kGiven) || equals == std::string_view::npos) return false;
  words.emplace(trim(line.substr(kGiven.size(), equals - kGiven.size())), trim(line.substr(equals + 3)));
  return true;
}

std::string filled(std::string_view part, const Words& words, std::string_view name) {
  std::string out;
  std::set<std::string_view> used;
  while (true) {
    const std::size_t open = part.find('{');
    out += part.substr(0, open);
    if (open == std::string_view::npos) break;
    const std::size_t close = part.find('}', open);
    const auto word =
        close == std::string_view::npos ? part.substr(open) : part.substr(open + 1, close - open - 1);
    const auto found = words.find(word);
    if (found == words.end())
      throw std::logic_error("report part " + std::string(name) + ": {" + std::string(word) +
                             "} is not given");
    used.insert(found->first);
    out += found->second;
    part.remove_prefix(close + 1);
  }
  for (const auto& [word, value] : words) {
    if (!used.contains(word))
      throw std::logic_error("report part " + std::string(name) + ": {" + word + "} stands nowhere in it");
  }
  return out;
}

}  // namespace

std::string with_parts(std::string_view text, const PartNamed& part_named) {
  std::string out;
  std::string_view name;
  Words words;
  const auto put_in = [&] {
    if (name.empty()) return;
    const std::string_view part = part_named(name);
    if (part.empty()) throw std::logic_error("there is no report part " + std::string(name));
    const std::size_t remark = part.find("\n\n");  // what the part is and takes, for who changes it
    out += filled(remark == std::string_view::npos ? part : part.substr(remark + 2), words, name);
    name = {};
    words.clear();
  };
  for (const auto line : split_lines(text)) {
    if (!name.empty() && take_word(line, words)) continue;
    put_in();
    if (line.starts_with(kPart)) {
      name = trim(line.substr(kPart.size()));
    } else {
      out += std::string(line) + "\n";
    }
  }
  put_in();
  return out;
}

}  // namespace kerfbook::report
