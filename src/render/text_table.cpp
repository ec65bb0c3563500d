#include "render/text_table.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "base/text.h"

namespace kerfbook::render {
namespace {

constexpr int kGap = 2;
constexpr int kLeastWords = 8;      ///< a column of words is not shrunk below this
constexpr int kReadableWords = 22;  ///< words so long are hardly ever cut short
constexpr int kHeadingLines = 3;    ///< a heading may stand on so many lines before its column is widened
constexpr std::string_view kBold = "\033[1m";
constexpr std::string_view kStruck = "\033[9m";
constexpr std::string_view kPlain = "\033[0m";

std::vector<std::string> heading_lines(const std::string& heading, int width) {
  std::vector<std::string> lines;
  for (const std::string& word : split_words(heading)) {
    if (!lines.empty() && screen_width(lines.back()) + 1 + screen_width(word) <= width) {
      lines.back() += " " + word;
    } else {
      lines.push_back(word);
    }
  }
  return lines;
}

int widest_word(const std::string& heading) {
  int widest = 0;
  for (const std::string& word : split_words(heading)) widest = std::max(widest, screen_width(word));
  return widest;
}

int natural_column(const TextTable& table, std::size_t i) {
  const TextColumn& column = table.columns[i];
  int width = std::max(widest_word(column.heading), screen_width(column.unit));
  for (const auto* lines : {&table.lines, &table.feet}) {
    for (const TextLine& line : *lines) width = std::max(width, screen_width(line.cells[i]));
  }
  while (static_cast<int>(heading_lines(column.heading, width).size()) > kHeadingLines) ++width;
  return width;
}

std::vector<int> natural_columns(const TextTable& table) {
  std::vector<int> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) widths.push_back(natural_column(table, i));
  return widths;
}

int total_width(const std::vector<int>& widths) {
  const int gaps = widths.empty() ? 0 : kGap * (static_cast<int>(widths.size()) - 1);
  return std::accumulate(widths.begin(), widths.end(), gaps);
}

/// What the foot says is not cut short: it is the name of a total.
int least_words(const TextTable& table, std::size_t i) {
  int width = kLeastWords;
  for (const TextLine& foot : table.feet) width = std::max(width, screen_width(foot.cells[i]));
  return width;
}

/// Takes columns off the widest words until all fits or no words are left to shrink.
void shrink(const TextTable& table, std::vector<int>& widths, int width) {
  while (total_width(widths) > width) {
    std::size_t widest = widths.size();
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const bool candidate = table.columns[i].may_shrink && widths[i] > least_words(table, i);
      if (candidate && (widest == widths.size() || widths[i] > widths[widest])) widest = i;
    }
    if (widest == widths.size()) return;
    --widths[widest];
  }
}

/// Whether the first `columns` cells tell every line from every other.
bool tells_lines_apart(const TextTable& table, std::size_t columns) {
  std::set<std::vector<std::string>> met;
  return std::all_of(table.lines.begin(), table.lines.end(), [&](const TextLine& line) {
    return met.insert({line.cells.begin(), line.cells.begin() + static_cast<std::ptrdiff_t>(columns)}).second;
  });
}

/// How many columns are repeated in every block, so that a line continued below is known again: the fewest words and
/// days at the left that tell the lines apart, when they leave half the width; else the first column.
std::size_t repeated_columns(const TextTable& table, const std::vector<int>& widths, int width) {
  int used = 0;
  for (std::size_t i = 0; i < widths.size() && !table.columns[i].right; ++i) {
    used += widths[i] + kGap;
    if (used > width / 2) break;
    if (tells_lines_apart(table, i + 1)) return i + 1;
  }
  return 1;
}

/// One stretch of columns that fits the width, with the widths they have in it.
struct Stretch {
  std::vector<std::size_t> columns;
  std::vector<int> widths;  ///< of all columns of the table

  [[nodiscard]] int used() const {
    int sum = -kGap;
    for (const std::size_t i : columns) sum += kGap + widths[i];
    return sum;
  }
  /// Words that were shortened take what room is left in this stretch.
  void fill(const std::vector<int>& natural, int width) {
    for (const std::size_t i : columns) {
      widths[i] += std::clamp(width - used(), 0, natural[i] - widths[i]);
    }
  }
};

/// Columns of the given widths cut into stretches that fit, each begun by the columns that head the lines.
std::vector<Stretch> cut(const TextTable& table, const std::vector<int>& widths, int width) {
  std::vector<Stretch> out(1, {{}, widths});
  const std::size_t heads = repeated_columns(table, widths, width);
  for (std::size_t i = 0; i < widths.size(); ++i) {
    out.back().columns.push_back(i);
    if (width == 0 || out.back().used() <= width || i <= heads) continue;
    out.back().columns.pop_back();
    out.push_back({{}, widths});
    for (std::size_t head = 0; head < heads; ++head) out.back().columns.push_back(head);
    out.back().columns.push_back(i);
  }
  return out;
}

/// One stretch when all fits, else as few as possible. Words are shortened below kReadableWords only where that saves
/// a stretch.
std::vector<Stretch> stretches(const TextTable& table, int width) {
  const std::vector<int> natural = natural_columns(table);
  if (width == 0 || total_width(natural) <= width) return cut(table, natural, width);
  std::vector<int> least = natural;
  shrink(table, least, width);
  std::vector<int> readable = natural;
  for (std::size_t i = 0; i < readable.size(); ++i) {
    if (table.columns[i].may_shrink) readable[i] = std::min(readable[i], kReadableWords);
  }
  std::vector<Stretch> tight = cut(table, least, width);
  std::vector<Stretch> out = cut(table, readable, width);
  const auto fits = [&](const Stretch& one) { return one.used() <= width; };
  if (out.size() > tight.size() || !std::all_of(out.begin(), out.end(), fits)) out = std::move(tight);
  for (Stretch& one : out) one.fill(natural, width);
  return out;
}

std::string placed(const std::string& text, int width, bool right) {
  const std::string fitted = clip(text, width);
  return right ? pad_left(fitted, width) : pad_right(fitted, width);
}

std::string without_end_blanks(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

struct Block {
  const TextTable& table;
  const std::vector<int>& widths;
  const std::vector<std::size_t>& columns;

  /// One line: `text(column)` in each column's place.
  template <class Text>
  [[nodiscard]] std::string line(Text text) const {
    std::string out;
    for (const std::size_t i : columns) {
      if (i != columns.front()) out += std::string(kGap, ' ');
      out += placed(text(i), widths[i], table.columns[i].right);
    }
    return without_end_blanks(std::move(out));
  }

  [[nodiscard]] std::string rule(char mark) const {
    return line([&](std::size_t i) { return std::string(static_cast<std::size_t>(widths[i]), mark); }) + "\n";
  }
};

/// Headings stand at the foot of their lines, the units in a line of their own under them.
std::string headings(const Block& block, bool colour) {
  std::size_t deepest = 0;
  bool units = false;
  for (const std::size_t i : block.columns) {
    const TextColumn& column = block.table.columns[i];
    deepest = std::max(deepest, heading_lines(column.heading, block.widths[i]).size());
    units = units || !column.unit.empty();
  }
  std::string out;
  for (std::size_t level = deepest; level > 0; --level) {
    const std::string line = block.line([&](std::size_t i) {
      const auto lines = heading_lines(block.table.columns[i].heading, block.widths[i]);
      return level <= lines.size() ? lines[lines.size() - level] : std::string();
    });
    out += bold(line, colour) + "\n";
  }
  if (units) out += block.line([&](std::size_t i) { return block.table.columns[i].unit; }) + "\n";
  return out;
}

std::string draw_block(const Block& block, bool colour) {
  std::string out = headings(block, colour) + block.rule('-');
  for (const TextLine& row : block.table.lines) {
    const std::string line = block.line([&](std::size_t i) { return row.cells[i]; });
    out += row.struck && colour ? std::string(kStruck) + line + std::string(kPlain) : line;
    out += '\n';
  }
  if (!block.table.feet.empty()) out += block.rule('-');
  for (const TextLine& foot : block.table.feet) {
    out += bold(block.line([&](std::size_t i) { return foot.cells[i]; }), colour) + "\n";
  }
  return out;
}

}  // namespace

int natural_width(const TextTable& table) {
  return total_width(natural_columns(table));
}

std::string draw(const TextTable& table, int width, bool colour) {
  std::string out;
  for (const Stretch& stretch : stretches(table, width)) {
    if (!out.empty()) out += '\n';
    out += draw_block({table, stretch.widths, stretch.columns}, colour);
  }
  return out;
}

std::string draw_boxes(const TextTable& table) {
  constexpr int kForAPencil = 9;
  std::vector<std::string> heads;
  std::vector<int> widths = natural_columns(table);
  std::string rule = "+";
  for (std::size_t i = 0; i < widths.size(); ++i) {
    const TextColumn& column = table.columns[i];
    heads.push_back(column.heading + (column.unit.empty() ? "" : ", " + column.unit));
    widths[i] = std::max({widths[i], kForAPencil, screen_width(heads.back())});
    rule += std::string(static_cast<std::size_t>(widths[i]) + 2, '-') + "+";
  }
  rule += "\n";
  const auto row = [&](const std::vector<std::string>& cells) {
    std::string line = "|";
    for (std::size_t i = 0; i < widths.size(); ++i) line += " " + pad_right(cells[i], widths[i]) + " |";
    return line + "\n" + rule;
  };
  std::string out = rule + row(heads);
  for (const TextLine& line : table.lines) out += row(line.cells);
  return out;
}

std::string wrapped(const std::string& text, int width, int indent) {
  std::string out;
  std::string line;
  for (const std::string& word : split_words(text)) {
    if (!line.empty() && screen_width(line) + 1 + screen_width(word) > width) {
      out += line + "\n";
      line = std::string(static_cast<std::size_t>(indent), ' ') + word;
    } else {
      line += (line.empty() ? "" : " ") + word;
    }
  }
  return line.empty() ? out : out + line + "\n";
}

std::string bold(const std::string& text, bool colour) {
  return colour && !text.empty() ? std::string(kBold) + text + std::string(kPlain) : text;
}

}  // namespace kerfbook::render
