// scale.cpp -- `kerfbook scale SPEC...`: logs under a rule, under several, or the table of a rule. No book is needed; when
// one is named its house rule and its own practices are known.
#include <filesystem>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/scale_document.h"
#include "render/footing.h"

namespace kerfbook::command {
namespace {

struct ScaleAsk {
  std::vector<std::string> words;
  std::string file;
  std::vector<std::string> rules;
  bool every_rule = false;
  bool table = false;
  bool list = false;
  bool metric = false;
  std::string diameters;
  std::string lengths;
  Output output;
};

/// The mill whose practices are known: of the book that is named, if it is there.
book::Mill known_mill(const Session& session) {
  const bool there =
      !session.book_file.empty() || (session.names_book() && std::filesystem::exists(session.book_path()));
  return there ? session.open_book(true).mill() : book::Mill{};
}

scaling::Practice practice_asked(const std::string& name, const book::Mill& mill) {
  if (auto found = book::practice_named(mill, name)) return *found;
  if (auto found = scaling::find_practice(lower(name))) return *found;
  throw Refused(scaling::why_not(name));
}

std::vector<scaling::Practice> practices_asked(const ScaleAsk& asked, const book::Mill& mill) {
  std::vector<scaling::Practice> practices;
  if (asked.every_rule) {
    for (const auto& rule : scaling::rule_names()) practices.push_back(*scaling::find_practice(rule));
  }
  for (const auto& name : asked.rules) practices.push_back(practice_asked(name, mill));
  if (practices.empty()) practices.push_back(mill.house);
  return practices;
}

constexpr std::size_t kMostSizes = 400;

/// `6-40`, `8,10,12-16`: whole numbers each, or single measures.
std::vector<measure::Length> sizes_asked(
    const std::string& text, const char* option, const measure::Length& inch_most,
    const measure::Length& metric_most,
    const std::function<Result<measure::Length>(const std::string&)>& read) {
  std::vector<measure::Length> sizes;
  const auto refuse = [&](const std::string& part, const std::string& why) {
    throw WrongUsage(std::string(option) + ": " + in_quotes(part) + " " + why + "; write 6-40, or 8,10,12");
  };
  const auto add = [&](const std::string& one) {
    const auto length = read(one);
    if (!length)
      throw WrongUsage(std::string(option) + ": " + length.slip().what + "; write 6-40, or 8,10,12");
    if (length->is_zero()) refuse(one, "is no size");
    if (*length > (length->system == measure::System::metric ? metric_most : inch_most))
      refuse(one, "is more than any log");
    sizes.push_back(*length);
    if (sizes.size() > kMostSizes) refuse(text, "is more than a table holds");
  };
  const auto whole = [](const std::string& digits) {
    return !digits.empty() && digits.size() < 5 &&
           digits.find_first_not_of("0123456789") == std::string::npos;
  };
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t end = std::min(text.find(',', from), text.size());
    const std::string part(trim(std::string_view(text).substr(from, end - from)));
    const std::size_t dash = part.find('-');
    const std::string last = dash == std::string::npos ? "" : part.substr(dash + 1);
    if (dash != std::string::npos && whole(part.substr(0, dash)) && whole(last)) {
      if (std::stoi(last) < std::stoi(part)) refuse(part, "runs backwards");
      for (int size = std::stoi(part); size <= std::stoi(last); ++size) add(std::to_string(size));
    } else {
      add(part);
    }
    from = end + 1;
  }
  return sizes;
}

render::Document table_asked(const ScaleAsk& asked, const std::vector<scaling::Practice>& practices) {
  if (practices.size() > 1) throw WrongUsage("a table is of one rule; give one --rule");
  if (!asked.words.empty() || !asked.file.empty())
    throw WrongUsage("--table has sizes, not logs; leave the logs out");
  const bool metric = asked.metric;
  const std::string diameters = !asked.diameters.empty() ? asked.diameters : metric ? "14-50" : "6-40";
  const std::string lengths = !asked.lengths.empty() ? asked.lengths
                              : metric               ? "2.4,3,3.6,4.2,4.8,5.4,6"
                                                     : "8,10,12,14,16,18,20";
  return size_table(practices.front(),
                    sizes_asked(diameters, "--diameters", measure::inches(240), measure::centimetres(600),
                                [metric](const std::string& t) { return scaling::read_diameter(t, metric); }),
                    sizes_asked(lengths, "--lengths", measure::feet(400), measure::centimetres(12'000),
                                [metric](const std::string& t) { return measure::read_length(t, metric); }));
}

ReadLogs logs_asked(const ScaleAsk& asked, const Session& session) {
  if (asked.words.empty() == asked.file.empty()) {
    throw WrongUsage(asked.words.empty()
                         ? "which logs? write them as 15x12, or give --file, or ask for a --table"
                         : "give logs or --file, not both");
  }
  if (asked.file.empty()) return logs_of_words(asked.words, asked.metric);
  return logs_of_csv(read_text(asked.file, kLogListLimit, session), asked.metric);
}

render::Document answer(const ScaleAsk& asked, const book::Mill& mill, const Session& session) {
  if (asked.list && asked.rules.empty()) return list_of_rules();
  const auto practices = practices_asked(asked, mill);
  if (asked.list) return description_of(practices);
  if (asked.table) return table_asked(asked, practices);
  const ReadLogs read = logs_asked(asked, session);
  session.err() << show_all(read.found, asked.file.empty() ? "scale" : asked.file, read.text);
  if (has_error(read.found)) {
    throw Refused("nothing was scaled");
  }
  if (read.logs.empty()) throw Refused("there is no log in " + asked.file);
  return scaled_logs(read.logs, practices, practices.size() > 1);
}

}  // namespace

Form scale_form() {
  auto asked = std::make_shared<ScaleAsk>();
  return {.rows = Rows{{"[SPEC...]", &asked->words,
                        "logs as a sheet has them: 15x12, 12/13-15x16'6\", 20x32 segments 20,22 defect 10%"},
                       {"--file FILE", &asked->file,
                        "a CSV list of logs; its first line names the columns: log, or diameter, length"},
                       {"--rule RULE", &asked->rules,
                        "log rule or practice; several are set side by side (else the house rule)"},
                       {"--every-rule", &asked->every_rule, "the same logs under every rule, side by side"},
                       {"--table", &asked->table, "the rule's table, diameters by lengths"},
                       {"--diameters SIZES", &asked->diameters, "of the table: 6-40, or 8,10,12"},
                       {"--lengths SIZES", &asked->lengths, "of the table: 8-20, or 8,10,12"},
                       {"--list", &asked->list,
                        "the rules and practices, each with its source; with --rule that one told wholly"},
                       {"--metric", &asked->metric, "plain diameters are centimetres and lengths metres"}} +
                  output_rows(asked->output),
          .footer =
              "  kerfbook scale 15x12 \"17x10 defect 15bf rot\"\n"
              "  kerfbook scale 12-15x16 --rule doyle --rule international-quarter\n"
              "  kerfbook scale --file deck.csv --rule scribner-c -o deck.xlsx\n"
              "  kerfbook scale --table --rule international-quarter -o wall.xlsx",
          .deed = [asked](const Session& session) {
            const book::Mill mill = known_mill(session);
            auto document = answer(*asked, mill, session);
            document.style = session.style(mill);
            for (auto& table : document.tables) render::note_rounding(table, document.style);
            document.made_on = write_day(session.today());
            write_document(document, asked->output, session);
          }};
}

}  // namespace kerfbook::command
