#include "render/text_bar.h"

#include <algorithm>
#include <cmath>

namespace kerfbook::render {
namespace {

constexpr const char* kEighths[] = {"", "▏", "▎", "▍", "▌", "▋", "▊", "▉"};

std::string repeated(const char* mark, int times) {
  std::string out;
  for (int i = 0; i < times; ++i) out += mark;
  return out;
}

std::string rightward(double columns) {
  const int eighths = static_cast<int>(std::lround(columns * 8));
  return repeated("█", eighths / 8) + kEighths[eighths % 8];
}

std::string about_axis(double value, double per_column, int left) {
  const int below = value < 0 ? static_cast<int>(std::lround(-value / per_column)) : 0;
  const std::string bar = value > 0 ? rightward(value / per_column) : "";
  return std::string(static_cast<std::size_t>(left - std::min(left, below)), ' ') +
         repeated("█", std::min(left, below)) + "│" + bar;
}

}  // namespace

std::vector<std::string> bars(const std::vector<std::optional<double>>& values, int width) {
  double least = 0;
  double most = 0;
  for (const auto& value : values) {
    least = std::min(least, value.value_or(0));
    most = std::max(most, value.value_or(0));
  }
  std::vector<std::string> out;
  const double span = most - least;
  const double per_column = span / (least < 0 ? width - 1 : width);
  const int left = span > 0 ? static_cast<int>(std::lround(-least / per_column)) : 0;
  for (const auto& value : values) {
    if (!value || span <= 0) {
      out.emplace_back();
    } else {
      out.push_back(least < 0 ? about_axis(*value, per_column, left) : rightward(*value / per_column));
    }
  }
  return out;
}

}  // namespace kerfbook::render
