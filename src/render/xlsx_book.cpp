#include "render/xlsx_book.h"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <stdexcept>

#include "base/text.h"
#include "render/cell.h"
#include "render/renderer.h"
#include "render/xlsx_plan.h"
#include "render/xlsx_text.h"

namespace kerfbook::render {
namespace {

constexpr int kMostCharacters = 60;  ///< widest a column gets by its content
constexpr int kMostSheetName = 31;   ///< characters a sheet name may have
constexpr double kLineHeight = 15;   ///< points of one line of text
constexpr double kQuietLine = 0.85;  ///< of it, in smaller letters
constexpr int kUprightReport = 104;  ///< characters; a wider report is printed sideways
constexpr int kUprightPaper = 130;   ///< papers are read and filed upright
constexpr std::uint8_t kLetter = 1;  ///< paper codes of the file format
constexpr std::uint8_t kA4 = 9;

std::string day_format(DateOrder order) {
  switch (order) {
    case DateOrder::month_day_year:
      return "mm/dd/yyyy";
    case DateOrder::day_month_year:
      return "dd.mm.yyyy";
    case DateOrder::year_month_day:
      break;
  }
  return "yyyy-mm-dd";
}

/// Days from 1899-12-30, which is how a spreadsheet counts them.
double serial_day(Day day) {
  constexpr int kFirst = 25569;  // 1970-01-01
  return day.number + kFirst;
}

lxw_datetime made(const std::string& day) {
  const auto date = parts(read_day(day).value_or(Day{}));
  return {date.year, date.month, date.day, 12, 0, 0};
}

std::time_t seconds(const lxw_datetime& at) {
  std::tm when{};
  when.tm_year = at.year - 1900;
  when.tm_mon = at.month - 1;
  when.tm_mday = at.day;
  when.tm_hour = at.hour;
  return timegm(&when);
}

void dress(lxw_format* format, const Look& look) {
  if (!look.number.empty()) format_set_num_format(format, look.number.c_str());
  if (look.bold || look.head) format_set_bold(format);
  if (look.struck) format_set_font_strikeout(format);
  format_set_align(format, look.right ? LXW_ALIGN_RIGHT : LXW_ALIGN_LEFT);
  if (look.indent) format_set_indent(format, 1);
  if (look.wrap || look.head) format_set_text_wrap(format);
  if (look.points > 0) format_set_font_size(format, look.points);
  if (look.quiet) format_set_font_size(format, 9);
  if (look.ruled_above) format_set_top(format, LXW_BORDER_THIN);
  if (look.head) {
    format_set_bottom(format, LXW_BORDER_MEDIUM);
    format_set_align(format, LXW_ALIGN_VERTICAL_BOTTOM);
  } else {
    format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
  }
  if (look.boxed) {
    format_set_border(format, LXW_BORDER_THIN);
    format_set_align(format, LXW_ALIGN_VERTICAL_CENTER);
  }
  if (look.line_below) format_set_bottom(format, LXW_BORDER_THIN);
}

}  // namespace

std::string number_format(const Column& column, const Style& style) {
  if (column.kind == ColumnKind::text) return "";
  if (column.kind == ColumnKind::day) return day_format(style.dates);
  std::string digits = "#,##0";
  if (column.kind != ColumnKind::count && column.places > 0) {
    digits += "." + std::string(static_cast<std::size_t>(column.places), '0');
  }
  if (column.kind == ColumnKind::money && !style.currency.sign.empty()) {
    const std::string sign = "\"" + style.currency.sign + "\"";
    digits = style.currency.sign_after ? digits + " " + sign : sign + digits;
    return digits + ";-" + digits;
  }
  if (column.ratio && column.ratio->percent_over) return "+" + digits + ";-" + digits + ";" + digits;
  return digits;
}

Workbook::Workbook(const std::string& file, const Document& document, bool constant_memory)
    : document_(document) {
  lxw_workbook_options options{};
  options.constant_memory = constant_memory ? LXW_TRUE : LXW_FALSE;
  book_ = workbook_new_opt(file.c_str(), &options);
  std::string title = one_line(document.title);
  std::string subject = one_line(document.subtitle);
  lxw_doc_properties properties{};
  properties.title = title.data();
  properties.subject = subject.data();
  properties.created =
      seconds(made(document.made_on));  // handed in, so that the same answer gives the same file
  workbook_set_properties(book_, &properties);
}

Workbook::~Workbook() {
  if (book_ != nullptr) lxw_workbook_free(book_);
}

lxw_format* Workbook::format(const Look& look) {
  // Naming a format in every cell of plain text costs a large workbook a sixth of its time.
  if (book_->options.constant_memory && look == Look{}) return nullptr;
  auto& slot = formats_[look];
  if (slot == nullptr) {
    slot = workbook_add_format(book_);
    dress(slot, look);
  }
  return slot;
}

/// What stands before a colon is name enough, where no other worksheet has it.
lxw_worksheet* Workbook::add_sheet(const std::string& title) {
  std::string name = fit_for_name(title.substr(0, title.find(": ")), kMostSheetName);
  bool is_new = names_.insert(folded_name(name)).second;
  if (!is_new) {
    name = fit_for_name(title, kMostSheetName);
    is_new = names_.insert(folded_name(name)).second;
  }
  for (int i = 2; !is_new; ++i) {
    const std::string tail = " " + std::to_string(i);
    name = fit_for_name(title, kMostSheetName - static_cast<int>(tail.size())) + tail;
    is_new = names_.insert(folded_name(name)).second;
  }
  return workbook_add_worksheet(book_, name.c_str());
}

std::string Workbook::close() {
  const lxw_error error = workbook_close(book_);  // frees it, whatever comes of it
  book_ = nullptr;
  return error == LXW_NO_ERROR ? "" : lxw_strerror(error);
}

Cursor::Cursor(Workbook& book, const std::string& title) : book_(book), sheet_(book.add_sheet(title)) {}

Cursor::Cursor(Workbook& book, const std::string& title, const Plan& plan)
    : book_(book), sheet_(book.add_sheet(title)), plan_(&plan), widths_(plan.columns()) {}

void Cursor::take_table(std::size_t table) {
  if (plan_ != nullptr) places_ = plan_->places(table);
}

void Cursor::keep_hidden(std::size_t places) {
  constexpr int kWide = 40;  // nobody sees it: enough that no heading is broken in it
  if (plan_ == nullptr) return;
  for (std::size_t at = plan_->columns().size(); places_.size() < places; ++at) {
    const auto column = static_cast<SheetColumn>(at);
    places_.push_back({column, column, kWide});
    if (widths_.size() <= at) widths_.resize(at + 1, kWide);
    hidden_.insert(column);
  }
}

namespace {

/// Digits and the marks between them, as many characters as the number takes at most.
int number_width(const Cell& cell) {
  if (std::holds_alternative<Day>(cell)) return 10;
  const auto* count = std::get_if<std::int64_t>(&cell);
  const Decimal shown = count != nullptr ? Decimal{*count, 0} : std::get<Figure>(cell).shown();
  int width = shown.places == 0 ? 1 : 3;  // a sign, "0."
  for (std::int64_t rest = shown.units; rest != 0; rest /= 10) ++width;
  return width + (width - 1) / 4;
}

bool needs_lines(const std::string& text) {
  return text.size() > kMostCharacters || text.find('\n') != std::string::npos;
}

}  // namespace

double spreadsheet_number(const Cell& cell) {
  if (const auto* count = std::get_if<std::int64_t>(&cell)) return static_cast<double>(*count);
  if (const auto* day = std::get_if<Day>(&cell)) return serial_day(*day);
  return std::get<Figure>(cell).nearest();
}

void Cursor::put(SheetColumn column, const Cell& cell, const Look& look) {
  put(column, cell, look, book_.format(look));
}

void Cursor::put(SheetColumn column, const Cell& cell, const Look& look, lxw_format* format) {
  if (!places_.empty()) {
    put_at(places_[column], cell, look);
  } else if (is_absent(cell)) {
    worksheet_write_blank(sheet_, row, column, format);
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    write_text(column, *text, look, format);
  } else {
    worksheet_write_number(sheet_, row, column, spreadsheet_number(cell), format);
    widen(column, number_width(cell) + 2);
  }
}

void Cursor::put_text(SheetColumn column, const std::string& text, const Look& look) {
  put(column, text, look);
}

void Cursor::put_at(const Place& place, const Cell& cell, const Look& look) {
  const auto* text = std::get_if<std::string>(&cell);
  Look dressed = look;
  if (text != nullptr) {
    const int lines = lines_in(*text, look.quiet ? place.width * 6 / 5 : place.width);
    dressed.wrap = look.wrap || lines > 1;
    const double line = look.points > 0 ? look.points / 10.0 : look.quiet ? kQuietLine : 1;
    if (lines * line > 1) set_height(lines * line);
  }
  lxw_format* const format = book_.format(dressed);
  merge(place, format);
  if (text != nullptr)
    worksheet_write_string(sheet_, row, place.first, cell_text(*text).c_str(), format);
  else if (is_absent(cell))
    worksheet_write_blank(sheet_, row, place.first, format);
  else
    worksheet_write_number(sheet_, row, place.first, spreadsheet_number(cell), format);
}

/// Makes one cell of the columns a place lies over. A file in which two such ranges share a cell is refused by strict
/// readers, so this is a fault here.
void Cursor::merge(const Place& place, lxw_format* format) {
  if (place.last == place.first) return;
  if (merged_row_ != row) merged_.clear();
  merged_row_ = row;
  for (const auto& [first, last] : merged_)
    if (place.first <= last && first <= place.last)
      throw std::logic_error("a cell of the workbook is written twice");
  merged_.emplace_back(place.first, place.last);
  worksheet_merge_range(sheet_, row, place.first, row, place.last, "", format);
}

void Cursor::write_text(SheetColumn column, const std::string& text, const Look& look, lxw_format* format) {
  if (!look.wrap && needs_lines(text)) {
    Look in_lines = look;
    in_lines.wrap = true;
    format = book_.format(in_lines);
    set_height(lines_in(text, kMostCharacters - 3));
  }
  std::string room;
  worksheet_write_string(sheet_, row, column, cell_text(text, room).c_str(), format);
  const auto known = column < widths_.size() ? static_cast<std::size_t>(widths_[column]) : 0;
  if (!look.wrap && text.size() + 2 > known) widen(column, screen_width(text) + 2);
}

void Cursor::put_free(SheetColumn column, const std::string& text, const Look& look) {
  if (plan_ != nullptr) return put_at(plan_->across(), text, look);
  worksheet_write_string(sheet_, row, column, cell_text(text).c_str(), book_.format(look));
}

void Cursor::set_height(double lines) {
  if (row != tall_row_) tallest_ = 1;
  tall_row_ = row;
  tallest_ = std::max(tallest_, lines);
  worksheet_set_row(sheet_, row, kLineHeight * tallest_, nullptr);
}

void Cursor::put_formula(SheetColumn column, const std::string& formula, const Cell& value,
                         const Look& look) {
  lxw_format* const format = book_.format(look);
  if (!places_.empty()) merge(places_[column], format);
  worksheet_write_formula_num(sheet_, row, at(column), ("=" + formula).c_str(), format,
                              spreadsheet_number(value));
  widen(column, number_width(value) + 2);
}

void Cursor::put_words(const std::string& words, const Look& look) {
  if (plan_ != nullptr) {
    put_at(plan_->across(), words, look);
    ++row;
    return;
  }
  Look paragraph = look;
  paragraph.wrap =
      !book_.raw()->options.constant_memory;  // rows gone to the file cannot be laid across any more
  words_.push_back({row, words});
  worksheet_write_string(sheet_, row, 0, cell_text(words).c_str(), book_.format(paragraph));
  ++row;
}

void Cursor::widen(SheetColumn column, int characters) {
  if (plan_ != nullptr) return;
  if (column >= widths_.size()) widths_.resize(column + 1U, 4);
  widths_[column] = std::max(widths_[column], std::min(characters, kMostCharacters));
}

void Cursor::hide(SheetColumn column) {
  hidden_.insert(at(column));
}

int Cursor::total_width() const {
  int total = 0;
  for (std::size_t i = 0; i < widths_.size(); ++i) {
    if (!hidden_.contains(static_cast<SheetColumn>(i))) total += widths_[i];
  }
  return total;
}

void Cursor::set_widths() {
  for (std::size_t i = 0; i < widths_.size(); ++i) {
    const auto column = static_cast<SheetColumn>(i);
    lxw_row_col_options options{};
    options.hidden = hidden_.contains(column) ? 1 : 0;
    worksheet_set_column_opt(sheet_, column, column, widths_[i], nullptr, &options);
  }
}

/// Paragraphs lie across all columns of the table, as high as they then must be.
void Cursor::lay_words_across() {
  const auto last = static_cast<SheetColumn>(widths_.size() - 1);
  if (book_.raw()->options.constant_memory) return;
  for (const auto& [at, text] : words_) {
    lxw_format* const format = book_.format({.wrap = true, .quiet = true});
    if (last > 0) worksheet_merge_range(sheet_, at, 0, at, last, "", format);
    worksheet_write_string(sheet_, at, 0, cell_text(text).c_str(), format);
    worksheet_set_row(sheet_, at, kLineHeight * lines_in(text, total_width() * 6 / 5), nullptr);
  }
}

void Cursor::finish(int head, bool one_page) {
  constexpr int kLeast = 60;  // paragraphs need some room, however narrow the table
  if (widths_.empty()) widen(0, kLeast);
  // A narrow table lends its paragraphs the room they need, to its right.
  if (total_width() < kLeast && !words_.empty()) widths_.push_back(std::max(2, kLeast - total_width()));
  set_widths();
  lay_words_across();
  const Document& document = book_.document();
  worksheet_set_paper(sheet_, document.style.paper == PaperSize::a4 ? kA4 : kLetter);
  const int upright = document.parties.empty() ? kUprightReport : kUprightPaper;
  if (total_width() > upright) worksheet_set_landscape(sheet_);
  worksheet_fit_to_pages(sheet_, 1, one_page || document.one_page ? 1 : 0);
  worksheet_set_margins(sheet_, 0.6, 0.6, 0.7, 0.7);
  worksheet_set_footer(sheet_, "&L&8&A&R&8page &P of &N");
  if (head >= 0) worksheet_repeat_rows(sheet_, static_cast<SheetRow>(head), static_cast<SheetRow>(head));
}

std::string cell_name(SheetRow row, SheetColumn column) {
  char name[LXW_MAX_CELL_NAME_LENGTH];
  lxw_rowcol_to_cell(name, row, column);
  return name;
}

std::string sum_of_rows(const std::vector<SheetRow>& rows, SheetColumn column) {
  std::string ranges;
  for (std::size_t i = 0; i < rows.size();) {
    std::size_t end = i;
    while (end + 1 < rows.size() && rows[end + 1] == rows[end] + 1) ++end;
    ranges += (ranges.empty() ? "" : ",") + cell_name(rows[i], column) + ":" + cell_name(rows[end], column);
    i = end + 1;
  }
  return ranges.empty() ? "0" : "SUM(" + ranges + ")";
}

}  // namespace kerfbook::render
