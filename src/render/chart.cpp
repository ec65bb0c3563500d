#include "render/chart.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/text.h"
#include "render/cell.h"
#include "render/html_text.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

constexpr double kWidth = 760;
constexpr double kHeight = 300;
constexpr double kLeft = 64;  ///< room for the figures of the upright axis
constexpr double kRight = 16;
constexpr double kTop = 34;     ///< room for the names of the series
constexpr double kBottom = 56;  ///< room for what the bars stand for
constexpr std::size_t kMostLabels = 14;
constexpr std::size_t kColours = 5;  ///< c0 ... c4 in the page's style

/// One row of the table, as far as it can be drawn.
struct Point {
  std::string label;
  double x = 0;  ///< scatter only
  std::vector<std::optional<double>> y;
  std::vector<std::string> said;  ///< each y as it is printed
};

struct Axis {
  double least = 0;
  double most = 1;
  double step = 1;
};

/// 1, 2 or 5 times a power of ten: the steps people count in.
double round_step(double rough) {
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double one : {1.0, 2.0, 5.0}) {
    if (one * power >= rough) return one * power;
  }
  return 10 * power;
}

Axis axis_over(double least, double most, bool from_nought) {
  if (from_nought) {
    least = std::min(least, 0.0);
    most = std::max(most, 0.0);
  }
  if (most - least < 1e-9) most = least + 1;
  Axis axis;
  axis.step = round_step((most - least) / 5);
  axis.least = std::floor(least / axis.step + 1e-9) * axis.step;
  axis.most = std::ceil(most / axis.step - 1e-9) * axis.step;
  return axis;
}

std::vector<Point> points_of(const Table& table, const Style& style) {
  const Chart& chart = *table.chart;
  std::vector<Point> points;
  for (const Row& row : table.rows) {
    if (row.struck) continue;
    Point point;
    point.label = shown_cell(row.cells[chart.x], table.columns[chart.x], style);
    if (chart.kind == ChartKind::scatter) {
      const auto x = drawn(row.cells[chart.x]);
      if (!x) continue;
      point.x = *x;
    }
    bool any = false;
    for (const std::size_t column : chart.y) {
      point.y.push_back(drawn(row.cells[column]));
      point.said.push_back(shown_cell(row.cells[column], table.columns[column], style));
      any = any || point.y.back().has_value();
    }
    if (any) points.push_back(std::move(point));
  }
  return points;
}

class Drawing {
 public:
  Drawing(const Table& table, const Style& style)
      : table_(table), chart_(*table.chart), points_(points_of(table, style)) {
    if (!points_.empty()) set_axes();
  }

  std::string svg() {
    if (points_.empty()) return "";
    out_ = fmt::format(
        "<svg class=\"chart\" viewBox=\"0 0 {} {}\" role=\"img\"><title>{}</title><desc>{}</desc>", kWidth,
        kHeight, escaped(title()), escaped(description()));
    draw_grid();
    switch (chart_.kind) {
      case ChartKind::bar:
        draw_bars();
        break;
      case ChartKind::stacked_bar:
        draw_stacks();
        break;
      case ChartKind::line:
        draw_lines();
        break;
      case ChartKind::scatter:
        draw_points();
        break;
    }
    if (chart_.kind == ChartKind::scatter) {
      draw_number_axis();
    } else {
      draw_labels();
    }
    draw_names();
    return out_ + "</svg>";
  }

 private:
  [[nodiscard]] std::string title() const {
    return chart_.title.empty() ? heading_of(table_.columns[chart_.y.front()]) : chart_.title;
  }

  /// What a person who cannot see it is told: every point in words.
  [[nodiscard]] std::string description() const {
    std::string words;
    for (const Point& point : points_) {
      words += (words.empty() ? "" : "; ") + point.label + ":";
      for (const std::string& y : point.said) words += " " + y;
    }
    return words;
  }

  void set_axes() {
    double least = 0;
    double most = 0;
    bool first = true;
    for (const Point& point : points_) {
      double stack = 0;
      for (const auto& y : point.y) {
        if (!y) continue;
        stack += *y;
        const double value = chart_.kind == ChartKind::stacked_bar ? stack : *y;
        least = first ? value : std::min(least, value);
        most = first ? value : std::max(most, value);
        first = false;
      }
    }
    up_ = axis_over(least, most, chart_.kind != ChartKind::scatter);
    if (chart_.kind != ChartKind::scatter) return;
    const auto [low, high] = std::minmax_element(points_.begin(), points_.end(),
                                                 [](const Point& a, const Point& b) { return a.x < b.x; });
    across_ = axis_over(low->x, high->x, false);
  }

  [[nodiscard]] double y_at(double value) const {
    return kTop + (kHeight - kTop - kBottom) * (up_.most - value) / (up_.most - up_.least);
  }
  [[nodiscard]] double slot() const {
    return (kWidth - kLeft - kRight) / static_cast<double>(points_.size());
  }
  [[nodiscard]] double middle(std::size_t i) const { return kLeft + slot() * (static_cast<double>(i) + 0.5); }
  [[nodiscard]] double x_at(double value) const {
    return kLeft + (kWidth - kLeft - kRight) * (value - across_.least) / (across_.most - across_.least);
  }

  void text(double x, double y, std::string_view anchor, std::string_view words) {
    out_ += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>", x, y, anchor,
                        escaped(std::string(words)));
  }

  static std::string tick_words(double value) { return grouped({std::llround(value * 100), 2}); }
  static std::string short_tick(double value) {
    std::string words = tick_words(std::abs(value) < 1e-9 ? 0 : value);
    if (words.ends_with(".00")) words.resize(words.size() - 3);
    return words;
  }

  void draw_grid() {
    for (double value = up_.least; value <= up_.most + up_.step / 2; value += up_.step) {
      const double y = y_at(value);
      const bool base = std::abs(value) < up_.step / 1000;
      out_ += fmt::format("<line class=\"{}\" x1=\"{}\" x2=\"{}\" y1=\"{:.1f}\" y2=\"{:.1f}\"/>",
                          base ? "base" : "rule", kLeft, kWidth - kRight, y, y);
      text(kLeft - 8, y + 4, "end", short_tick(value));
    }
  }

  void rect(double x, double width, double from, double to, std::size_t colour) {
    const double top = std::min(y_at(from), y_at(to));
    out_ += fmt::format("<rect class=\"c{}\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\"/>",
                        colour % kColours, x, top, width, std::abs(y_at(from) - y_at(to)));
  }

  void draw_bars() {
    const auto series = static_cast<double>(chart_.y.size());
    const double width = std::min(56.0, slot() * 0.76 / series);
    for (std::size_t i = 0; i < points_.size(); ++i) {
      for (std::size_t s = 0; s < chart_.y.size(); ++s) {
        if (!points_[i].y[s]) continue;
        rect(middle(i) + width * (static_cast<double>(s) - series / 2), width, 0, *points_[i].y[s], s);
      }
    }
  }

  void draw_stacks() {
    const double width = std::min(56.0, slot() * 0.76);
    for (std::size_t i = 0; i < points_.size(); ++i) {
      double from = 0;
      for (std::size_t s = 0; s < chart_.y.size(); ++s) {
        if (!points_[i].y[s]) continue;
        rect(middle(i) - width / 2, width, from, from + *points_[i].y[s], s);
        from += *points_[i].y[s];
      }
    }
  }

  /// A line is broken where a figure is absent: no one was there to measure.
  void draw_lines() {
    for (std::size_t s = 0; s < chart_.y.size(); ++s) {
      std::string path;
      bool on = false;
      for (std::size_t i = 0; i < points_.size(); ++i) {
        const auto& y = points_[i].y[s];
        if (y) path += fmt::format("{}{:.1f} {:.1f}", on ? "L" : "M", middle(i), y_at(*y));
        on = y.has_value();
        if (y && points_.size() <= 60) dot(middle(i), y_at(*y), s);
      }
      out_ += fmt::format("<path class=\"l{}\" d=\"{}\"/>", s % kColours, path);
    }
  }

  void dot(double x, double y, std::size_t colour) {
    out_ +=
        fmt::format("<circle class=\"c{}\" cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"4\"/>", colour % kColours, x, y);
  }

  void draw_points() {
    for (const Point& point : points_) {
      for (std::size_t s = 0; s < chart_.y.size(); ++s) {
        if (point.y[s]) dot(x_at(point.x), y_at(*point.y[s]), s);
      }
    }
    if (chart_.trend) draw_trend();
  }

  /// The least-squares line through the points of the first series.
  void draw_trend() {
    double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
    for (const Point& point : points_) {
      if (!point.y.front()) continue;
      const double y = *point.y.front();
      n += 1;
      sx += point.x;
      sy += y;
      sxx += point.x * point.x;
      sxy += point.x * y;
    }
    const double spread = n * sxx - sx * sx;
    if (n < 3 || std::abs(spread) < 1e-9) return;
    const double slope = (n * sxy - sx * sy) / spread;
    const double start = (sy - slope * sx) / n;
    const auto at = [&](double x) { return std::clamp(start + slope * x, up_.least, up_.most); };
    out_ +=
        fmt::format("<line class=\"trend\" x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\"/>",
                    x_at(across_.least), y_at(at(across_.least)), x_at(across_.most), y_at(at(across_.most)));
  }

  void draw_labels() {
    const std::size_t every = (points_.size() + kMostLabels - 1) / kMostLabels;
    const int room = static_cast<int>(slot() * static_cast<double>(every) / 8.2);
    for (std::size_t i = 0; i < points_.size(); i += every) {
      text(middle(i), kHeight - kBottom + 20, "middle", clip(points_[i].label, std::max(room, 5)));
    }
    text(kLeft + (kWidth - kLeft - kRight) / 2, kHeight - 10, "middle", with_unit(chart_.x));
  }

  void draw_number_axis() {
    for (double value = across_.least; value <= across_.most + across_.step / 2; value += across_.step) {
      text(x_at(value), kHeight - kBottom + 20, "middle", short_tick(value));
    }
    text(kLeft + (kWidth - kLeft - kRight) / 2, kHeight - 10, "middle", with_unit(chart_.x));
  }

  [[nodiscard]] std::string with_unit(std::size_t column) const {
    const Column& one = table_.columns[column];
    return one.unit.empty() ? heading_of(one) : heading_of(one) + ", " + one.unit;
  }

  /// The names of the series with their colours, above; they name the upright axis too.
  void draw_names() {
    double x = kLeft;
    for (std::size_t s = 0; s < chart_.y.size(); ++s) {
      const std::string name = with_unit(chart_.y[s]);
      out_ += fmt::format("<rect class=\"c{}\" x=\"{:.1f}\" y=\"10\" width=\"11\" height=\"11\"/>",
                          s % kColours, x);
      text(x + 17, 20, "start", name);
      x += 17 + 8.2 * screen_width(name) + 22;
    }
  }

  const Table& table_;
  const Chart& chart_;
  std::vector<Point> points_;
  Axis up_;
  Axis across_;
  std::string out_;
};

}  // namespace

std::string chart_svg(const Table& table, const Style& style) {
  if (!table.chart || table.chart->y.empty()) return "";
  if (table.chart->kind == ChartKind::line && table.rows.size() < 2) return "";  // one point is no line
  return Drawing(table, style).svg();
}

}  // namespace kerfbook::render
