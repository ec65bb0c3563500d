#include "render/log_end.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "render/html_text.h"

namespace kerfbook::render {
namespace {

constexpr double kAcross = 400;  ///< of the larger end, in the drawing's units
constexpr double kMargin = 6;
/// The page's colours where it has them; a drawing that stands alone is grey. A style of its own, as nothing else has boards.
constexpr const char* kLook =
    "<style>.log-end{max-width:27rem;min-width:0}.log-end .board{fill:var(--band,#e4e4e4)}"
    ".log-end .short-board{fill:var(--paper,#fff)}.log-end rect,.log-end .small-end{stroke:var(--ink,#222)}"
    ".log-end .large-end{stroke:var(--soft,#777)}.log-end text{fill:var(--soft,#555);font-size:13px}"
    ".log-end .on-board{fill:var(--ink,#222)}</style>";
constexpr double kLegend = 44;         ///< room below for what the lines mean
constexpr double kLetter = 13;         ///< height of the words
constexpr double kLetterWidth = 0.62;  ///< of a letter against its height, for the widest of usual ones

class Drawing {
 public:
  explicit Drawing(const LogEnd& end) : end_(end), widest_(std::max(end.small_end, end.large_end)) {}

  std::string svg() {
    const double side = kAcross + 2 * kMargin;
    out_ = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart log-end\" viewBox=\"0 0 {:.0f} {:.0f}\" "
        "role=\"img\"><title>{}</title><desc>{}</desc>{}",
        side, side + kLegend, escaped(end_.title), escaped(description()), kLook);
    if (end_.large_end > end_.small_end) circle(end_.large_end, "large-end", " stroke-dasharray=\"4 4\"");
    circle(end_.small_end, "small-end", "");
    for (const auto& board : end_.boards) draw(board);
    legend(side);
    return out_ + "</svg>";
  }

 private:
  [[nodiscard]] double scaled(double length) const { return length * kAcross / widest_; }
  [[nodiscard]] double placed(double at) const { return kMargin + kAcross / 2 + scaled(at); }

  /// "3 of 2x6, 16 ft; 1 of 1x4, 12 ft", in the order they lie.
  [[nodiscard]] std::string description() const {
    std::vector<std::string> order;
    std::map<std::string, int> count;
    for (const auto& board : end_.boards)
      if (count[board.in_full]++ == 0) order.push_back(board.in_full);
    std::string words;
    for (const auto& in_full : order)
      words += fmt::format("{}{} of {}", words.empty() ? "" : "; ", count[in_full], in_full);
    return words.empty() ? "no boards" : words;
  }

  void circle(double diameter, const char* line, const char* dashes) {
    out_ += fmt::format(
        "<circle class=\"{}\" cx=\"{:.2f}\" cy=\"{:.2f}\" r=\"{:.2f}\" fill=\"none\" "
        "stroke-width=\"2\"{}/>",
        line, placed(0), placed(0), scaled(diameter / 2), dashes);
  }

  void draw(const LogEndBoard& board) {
    out_ += fmt::format(
        "<rect class=\"{}\" x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\"{}>"
        "<title>{}</title></rect>",
        board.shorter ? "short-board" : "board", placed(board.left), placed(board.top), scaled(board.across),
        scaled(board.down), board.shorter ? " stroke-dasharray=\"5 3\"" : "", escaped(board.in_full));
    write(board);
  }

  /// The size along the longer side of the board, smaller if need be, and not at all where it could not be read.
  void write(const LogEndBoard& board) {
    const bool upright = board.down > board.across;
    const double along = scaled(upright ? board.down : board.across);
    const double over = scaled(upright ? board.across : board.down);
    const double letters = std::max<double>(1, static_cast<double>(board.size.size()));
    const double height = std::min({kLetter, over * 0.8, along * 0.9 / (letters * kLetterWidth)});
    if (height < 7) return;
    const double x = placed(board.left + board.across / 2);
    const double y = placed(board.top + board.down / 2);
    const std::string turn = upright ? fmt::format(" transform=\"rotate(-90 {:.2f} {:.2f})\"", x, y) : "";
    out_ += fmt::format(
        "<text class=\"on-board\" x=\"{:.2f}\" y=\"{:.2f}\" text-anchor=\"middle\" "
        "dominant-baseline=\"central\" "
        "style=\"font-size:{:.1f}px\"{}>{}</text>",
        x, y, height, turn, escaped(board.size));
  }

  void legend(double side) {
    const bool any_short =
        std::any_of(end_.boards.begin(), end_.boards.end(), [](const auto& board) { return board.shorter; });
    double y = side + kLetter;
    const auto line = [&](const char* words) {
      out_ += fmt::format("<text x=\"{:.0f}\" y=\"{:.0f}\" font-size=\"{:.0f}\">{}</text>", kMargin, y,
                          kLetter, words);
      y += 1.5 * kLetter;
    };
    if (end_.large_end > end_.small_end) line("full circle: small end; broken circle: large end");
    if (any_short) line("broken outline: shorter board, out of the taper");
  }

  const LogEnd& end_;
  double widest_;
  std::string out_;
};

}  // namespace

std::string log_end_svg(const LogEnd& end) {
  if (std::max(end.small_end, end.large_end) <= 0) return "";
  return Drawing(end).svg();
}

}  // namespace kerfbook::render
