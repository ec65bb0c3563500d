#include "command/form.h"

#include "base/text.h"

namespace kerfbook::command {

Rows operator+(Rows first, const Rows& then) {
  first.insert(first.end(), then.begin(), then.end());
  return first;
}

Row must(Row row) {
  row.must = true;
  return row;
}

Row one_of(Row row, std::vector<std::string> (*choices)()) {
  row.choices = choices;
  return row;
}

bool is_option(const Row& row) {
  return row.written.starts_with('-');
}

bool is_flag(const Row& row) {
  return is_option(row) && value_of(row).empty();
}

bool is_required(const Row& row) {
  return is_option(row) ? row.must : !row.written.starts_with('[');
}

std::vector<std::string> names_of(const Row& row) {
  std::vector<std::string> names;
  for (std::string word : split_words(row.written)) {
    if (is_option(row) && !word.starts_with('-')) continue;  // its value
    const std::size_t from = word.find_first_not_of('[');
    names.push_back(word.substr(from, word.find_first_of(",.]", from) - from));
  }
  return names;
}

std::string name_of(const Row& row) {
  return names_of(row).back();
}

std::string value_of(const Row& row) {
  const auto words = split_words(row.written);
  return is_option(row) && !words.back().starts_with('-') ? words.back() : "";
}

}  // namespace kerfbook::command
