// session.cpp -- what every command shares: the day, the book, the style, reading texts and writing answers.
#include <filesystem>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/command.h"
#include "command/output_file.h"
#include "office/office.h"
#include "paper/project_paper.h"
#include "price/job_terms.h"
#include "render/image.h"
#include "render/renderer.h"

namespace kerfbook::command {
namespace {

std::vector<std::string> format_names() {
  std::vector<std::string> names;
  for (const auto& format : render::formats()) names.emplace_back(format.name);
  return names;
}

render::DateOrder date_order(const std::string& words) {
  if (words == "mdy") return render::DateOrder::month_day_year;
  if (words == "dmy") return render::DateOrder::day_month_year;
  return render::DateOrder::year_month_day;
}

const std::string kDoNotPost = "so do not post it again";

}  // namespace

Day Session::today() const {
  if (today_text.empty()) return context_.today();
  if (const auto day = read_day(today_text)) return *day;
  throw WrongUsage("--today takes a day as 2026-05-08, not " + in_quotes(today_text));
}

bool Session::names_book() const {
  return !book_file.empty() || context_.environment("KERFBOOK_BOOK").has_value();
}

std::string Session::book_path() const {
  if (!book_file.empty()) return book_file;
  if (const auto file = context_.environment("KERFBOOK_BOOK")) return *file;
  throw WrongUsage("which book? give -b FILE, or set KERFBOOK_BOOK to it");
}

book::OpenOptions Session::open_options(bool read_only) const {
  book::OpenOptions options;
  options.read_only = read_only;
  options.now = [this] { return write_day(today()) + " " + context_.time_of_day(); };
  options.papers = billing::project_paper;
  options.check_money = billing::check_money;
  options.posted = [this](std::int64_t first, std::int64_t last) {
    did(first == last ? "entry " + std::to_string(last) + " is posted"
                      : "entries " + std::to_string(first) + " to " + std::to_string(last) + " are posted",
        kDoNotPost);
  };
  options.waiting = [this] {
    err() << "waiting for another program that has " << book_path() << " in use" << std::endl;
  };
  return options;
}

void Session::did(const std::string& what, const std::string& then) const {
  done_ = what + " all the same" + (then.empty() ? "" : ", " + then);
}

book::Book Session::open_book(bool read_only) const {
  return book::Book::open(book_path(), open_options(read_only));
}

render::Style Session::style(const book::Mill& mill) const {
  render::Style style;
  style.currency = mill.currency;
  style.paper = mill.a4 ? render::PaperSize::a4 : render::PaperSize::letter;
  style.dates = date_order(mill.dates);
  style.width = context_.terminal_width;
  style.colour = context_.out_is_terminal && !context_.environment("NO_COLOR").has_value();
  return style;
}

Rows output_rows(Output& output) {
  return {
      one_of({"--as FORMAT", &output.format, "text, csv, json, xlsx or html (text, or by the file's ending)"},
             format_names),
      {"-o, --out FILE", &output.file, "write to this file"}};
}

const render::Format& chosen_format(const Output& output) {
  if (!output.format.empty()) {
    if (const auto* format = render::find_format(output.format)) return *format;
    const std::string best = nearest(output.format, format_names());
    throw WrongUsage("--as takes one of " + join(format_names(), ", ") + ", not " + in_quotes(output.format) +
                     (best.empty() ? "" : "; did you mean " + best + "?"));
  }
  const std::string suffix = lower(std::filesystem::path(output.file).extension().string());
  for (const auto& format : render::formats()) {
    if (!suffix.empty() && suffix == format.suffix) return format;
  }
  return *render::find_format("text");
}

namespace {

/// A logo is named from where the command is given, or lies beside the book. One that is not there is told of, and the
/// paper is made without it: text has none anyway.
void find_logo(render::Document& document, const render::Format& format, const Session& session) {
  if (document.logo.empty() || (format.name != "html" && format.name != "xlsx")) return;
  const std::string named = document.logo;
  std::error_code ignored;
  if (!std::filesystem::exists(named, ignored) && session.names_book())
    document.logo = (std::filesystem::path(session.book_path()).parent_path() / named).string();
  if (!render::read_image(document.logo).kind.empty()) return;
  session.err() << "note: the mill file's logo " << named
                << (std::filesystem::exists(document.logo, ignored)
                        ? " is no PNG or JPEG image of at most 16 MiB"
                        : " is neither here nor beside the book")
                << "; the paper is made without it\n";
  document.logo.clear();
}

}  // namespace

Answer::Answer(const Output& output, const Session& session)
    : session_(session), format_(chosen_format(output)), name_(output.file) {
  if (!name_.empty()) file_ = std::make_unique<OutputFile>(name_);
  if (name_.empty() && format_.binary && session.context().out_is_terminal)
    throw WrongUsage("a workbook does not go on a terminal; add -o FILE" + std::string(format_.suffix));
}

Answer::~Answer() = default;

void Answer::give(const render::Document& given) {
  render::Document document = given;
  find_logo(document, format_, session_);
  if (!file_) {
    session_.context().out << format_.render(document);
    return;
  }
  document.style.width = 0;
  document.style.colour = false;
  file_->write(format_.render(document));
  session_.err() << "written: " << name_ << "\n";
}

void Answer::give_posted(const book::Book& book, const billing::Paper& paper, const std::string& what,
                         const std::string& again) {
  session_.err() << what << (again.empty() ? "" : "; print it again with: " + again) << "\n  "
                 << book::mark_words(paper.mark) << "\n";
  if (paper.with) session_.err() << "  its payment: " << book::mark_words(*paper.with) << "\n";
  session_.did(what, kDoNotPost + (again.empty() ? "" : "; print it with: " + again));
  give(billing::printed(book, paper));
}

render::Document with_mark(render::Document document, const book::Book& book) {
  const std::string mark = book::mark_of_state(book.newest());
  if (!mark.empty()) document.foot.push_back(mark);
  return document;
}

void write_document(const render::Document& document, const Output& output, const Session& session) {
  Answer(output, session).give(document);
}

std::string read_text(const std::string& file, const InputLimit& limit, const Session& session) {
  return file == "-" ? read_input(session.context().in, "standard input", limit) : read_input(file, limit);
}

}  // namespace kerfbook::command
