// outputs_formula.cpp -- the few formulas the workbooks hold, worked out exactly from the cells they name.
#include <cctype>
#include <stdexcept>

#include "render/outputs.h"

namespace kerfbook::render {
namespace {

/// Reads a formula from left to right. sum := product (+|- product)*, product := one (*|/ one)*,
/// one := number | cell | (sum) | SUM(range, ...) | ROUND(sum, places).
class Reader {
 public:
  Reader(const std::string& formula, const Sheet* sheet) : words_(formula), sheet_(sheet) {}

  Rational all() {
    const Rational value = sum();
    if (at_ != words_.size()) fail();
    return value;
  }
  [[nodiscard]] const std::vector<std::pair<int, int>>& named() const { return named_; }

 private:
  [[noreturn]] void fail() const { throw std::runtime_error("formula not understood: " + words_); }
  [[nodiscard]] char here() const { return at_ < words_.size() ? words_[at_] : '\0'; }
  bool take(char sign) {
    if (here() != sign) return false;
    ++at_;
    return true;
  }
  void need(char sign) {
    if (!take(sign)) fail();
  }

  template <class Belongs>
  std::string run(Belongs belongs) {
    const std::size_t from = at_;
    while (at_ < words_.size() && belongs(words_[at_])) ++at_;
    return words_.substr(from, at_ - from);
  }
  std::string name() {
    return run([](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; });
  }

  Rational sum() {
    Rational value = product();
    while (here() == '+' || here() == '-') {
      value = take('+') ? value + product() : (need('-'), value - product());
    }
    return value;
  }
  Rational product() {
    Rational value = one();
    while (here() == '*' || here() == '/') {
      value = take('*') ? value * one() : (need('/'), value / one());
    }
    return value;
  }
  Rational one() {
    if (take('(')) {
      const Rational value = sum();
      need(')');
      return value;
    }
    if (std::isdigit(static_cast<unsigned char>(here())) != 0)
      return number_of(
          run([](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0 || c == '.'; }));
    const std::string word = name();
    if (!take('(')) return cell(cell_of(word));
    return word == "SUM" ? ranges() : word == "ROUND" ? rounded() : (fail(), Rational());
  }

  Rational ranges() {
    Rational total;
    do {
      const auto first = cell_of(name());
      const auto last = take(':') ? cell_of(name()) : first;
      for (int row = first.first; row <= last.first; ++row) {
        for (int column = first.second; column <= last.second; ++column) total = total + cell({row, column});
      }
    } while (take(','));
    need(')');
    return total;
  }
  Rational rounded() {
    const Rational value = sum();
    need(',');
    const int places = std::stoi(name());
    need(')');
    Rational step = 1;
    for (int i = 0; i < places; ++i) step = step * Rational(10);
    return Rational(value.rounded(places)) / step;
  }

  Rational cell(std::pair<int, int> place) {
    named_.push_back(place);
    if (sheet_ == nullptr) return 1;
    const SheetCell& held = sheet_->at(place.first, place.second);
    return held.text || held.value.empty() ? Rational() : number_of(number_in_sheet(held.value));
  }

  const std::string& words_;
  const Sheet* sheet_;
  std::size_t at_ = 0;
  std::vector<std::pair<int, int>> named_;
};

}  // namespace

std::pair<int, int> cell_of(const std::string& name) {
  int column = 0;
  std::size_t i = 0;
  for (; i < name.size() && name[i] >= 'A'; ++i) column = column * 26 + (name[i] - 'A' + 1);
  return {std::stoi(name.substr(i)) - 1, column - 1};
}

Rational worked_out(const std::string& formula, const Sheet& sheet) {
  return Reader(formula, &sheet).all();
}

std::vector<std::pair<int, int>> named_in(const std::string& formula) {
  Reader reader(formula, nullptr);
  reader.all();
  return reader.named();
}

}  // namespace kerfbook::render
