#include "command/scale_document.h"

#include <algorithm>

#include "base/error.h"
#include "base/text.h"
#include "render/cell.h"
#include "render/footing.h"
#include "scaling/scaler.h"

namespace kerfbook::command {
namespace {

using render::ColumnKind;
using render::TotalKind;
using scaling::kPerUnit;
using scaling::Practice;
using scaling::ResultRounding;
using scaling::Rule;
using scaling::VolumeUnit;

const std::string kCaution =
    "Log scale for payment or tax: where law asks for a licensed scaler or names a rule, that governs.";

/// Decimals that a scale of this practice is shown with.
int places_of(const Practice& practice, const Rule& rule, VolumeUnit unit) {
  switch (practice.result) {
    case ResultRounding::thousandth:
      return 3;
    case ResultRounding::hundredth:
      return 2;
    case ResultRounding::none:
      break;
    default:
      return 0;
  }
  if (rule.deduction_step >= kPerUnit) return 0;
  switch (unit) {
    case VolumeUnit::board_foot:
      return 2;
    case VolumeUnit::cubic_metre:
      return 6;
    case VolumeUnit::cubic_foot:
    case VolumeUnit::hoppus_foot:
      break;
  }
  return 3;
}

/// One log under one practice.
struct Scaled {
  const AskedLog* log = nullptr;
  const Practice* practice = nullptr;
  const Rule* rule = nullptr;
  std::optional<scaling::Scale> scale;
  std::string why_not;
  int places = 0;
};

/// In inches or centimetres, as a spec writes it: with the decimals it has and no more.
std::string diameter_text(scaling::Length diameter) {
  return scaling::write_diameter(diameter, diameter.system == measure::System::metric);
}

Decimal diameter_figure(scaling::Length diameter) {
  const std::string text = diameter_text(diameter);
  const auto point = text.find('.');
  return shown(*read_decimal(text),
               point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1));
}

std::string segment_words(const scaling::Scale& scale, int places) {
  if (scale.segments.size() < 2) return "";
  std::vector<std::string> words;
  for (const auto& segment : scale.segments) {
    const bool inch = segment.diameter.system == measure::System::inch;
    words.push_back(diameter_text(segment.diameter) + (inch ? " in x " : " cm x ") +
                    measure::spoken_length(segment.length) + " = " +
                    plain(shown(Rational(segment.gross, kPerUnit), places)) +
                    (segment.overridden ? " (as given)" : ""));
  }
  return join(words, " + ");
}

std::vector<Scaled> scale_all(const std::vector<AskedLog>& logs, const std::vector<Practice>& practices) {
  std::vector<Scaled> all;
  for (const auto& log : logs) {
    for (const auto& practice : practices) {
      const auto scaler = scaling::Scaler::make(practice);
      if (!scaler) throw Refused(scaler.slip().what);
      Scaled one{&log, &practice, &scaler->rule(), {}, {}, 0};
      const auto scale = scaler->scale(log.measure, log.defects);
      if (scale) {
        one.scale = *scale;
        one.places = places_of(practice, *one.rule, scale->unit);
      } else {
        const auto& slip = scale.slip();
        one.why_not = slip.what + (slip.instead.empty() ? "" : "; " + slip.instead);
      }
      all.push_back(std::move(one));
    }
  }
  return all;
}

void refuse_unscaled(const std::vector<Scaled>& all) {
  std::vector<std::string> why;
  for (const auto& one : all) {
    if (!one.scale) why.push_back(one.log->spec + ": " + one.why_not);
  }
  if (!why.empty()) throw Refused(join(why, "\n"));
}

render::Column figure(const char* name, const char* heading, TotalKind total) {
  return {.name = name, .heading = heading, .kind = ColumnKind::decimal, .total = total};
}

/// Totals only of what can be added: one practice, one unit.
bool can_total(const std::vector<Scaled>& all) {
  const auto alike = [&](const Scaled& one) {
    return one.scale && one.practice == all.front().practice && one.scale->unit == all.front().scale->unit;
  };
  return all.size() > 1 && all.front().scale && std::all_of(all.begin(), all.end(), alike);
}

/// Adds a column of words unless every one of them is empty.
void add_words(render::Table& table, const std::string& name, const std::string& heading, bool first,
               const std::vector<std::string>& words) {
  if (std::all_of(words.begin(), words.end(), [](const std::string& text) { return text.empty(); })) return;
  const auto at = first ? 0 : static_cast<std::ptrdiff_t>(table.columns.size());
  table.columns.insert(table.columns.begin() + at, {.name = name, .heading = heading});
  for (std::size_t i = 0; i < words.size(); ++i) {
    auto& cells = table.rows[i].cells;
    cells.insert(cells.begin() + at, words[i].empty() ? render::Cell{} : render::Cell{words[i]});
  }
  if (!table.totals.empty()) table.totals.insert(table.totals.begin() + at, render::Cell{});
}

render::Row row_of(const Scaled& one) {
  render::Row row{{one.log->spec, one.practice->name, {}, {}, {}, {}}};
  if (!one.scale) return row;
  const auto figure = [&one](std::int64_t millionths) {
    return render::Cell{render::Figure(millionths, kPerUnit, one.places)};
  };
  row.cells[2] = figure(one.scale->gross);
  row.cells[3] = figure(one.scale->gross - one.scale->net);
  row.cells[4] = figure(one.scale->net);
  row.cells[5] = std::string(scaling::unit_word(one.scale->unit));
  return row;
}

render::Table table_of(const std::vector<Scaled>& all) {
  const bool total = can_total(all);
  const TotalKind kind = total ? TotalKind::sum : TotalKind::none;
  render::Table table;
  table.name = "logs";
  table.columns = {
      {.name = "spec", .heading = "Log"},   {.name = "rule", .heading = "Rule", .words = scaling::rule_words},
      figure("gross", "Gross scale", kind), figure("deduction", "Deduction", kind),
      figure("net", "Net scale", kind),     {.name = "unit", .heading = "Unit"}};
  for (const auto& one : all) {
    for (const std::size_t i : {2U, 3U, 4U})
      table.columns[i].places = std::max(table.columns[i].places, one.places);
  }
  for (const auto& one : all) table.rows.push_back(row_of(one));
  render::total_up(table);
  return table;
}

render::Row size_row(const scaling::Scaler& scaler, scaling::Length diameter,
                     const std::vector<scaling::Length>& lengths, int places) {
  render::Row row{{diameter_figure(diameter)}};
  scaling::LogMeasure log;
  (scaler.rule().needs == scaling::Needs::middle ? log.mid : log.small) = {diameter};
  for (const auto& length : lengths) {
    log.length = length;
    const auto amounts = scaler.amounts(log, {});
    row.cells.push_back(amounts ? render::Cell{render::Figure(amounts->gross, kPerUnit, places)}
                                : render::Cell{});
  }
  return row;
}

std::string formula_of(const Practice& practice) {
  const Rule& rule = *scaling::find_rule(practice.rule);
  const bool recalled = rule.source.find("from memory") != std::string_view::npos;
  return std::string(rule.formula) + (recalled ? " (from memory)" : "");
}

/// What is to be said of the scales, each thing once with the logs and practices it is said of.
std::vector<std::string> notes_of(const std::vector<Scaled>& all) {
  std::vector<std::pair<std::string, std::vector<std::string>>> said;
  const auto say = [&said](const std::string& text, const std::string& of) {
    const auto same = [&text](const auto& one) { return one.first == text; };
    auto found = std::find_if(said.begin(), said.end(), same);
    if (found == said.end()) found = said.insert(said.end(), {text, {}});
    if (std::find(found->second.begin(), found->second.end(), of) == found->second.end())
      found->second.push_back(of);
  };
  const bool several = all.front().practice != all.back().practice;
  for (const auto& one : all) {
    const std::string of = (one.log->tag.empty() ? one.log->spec : one.log->tag) +
                           (several ? " by " + scaling::rule_words(one.practice->name) : "");
    if (!one.scale) say(one.why_not, "");
    if (one.scale) {
      for (const auto& remark : one.scale->remarks) say(remark, of);
    }
  }
  constexpr std::size_t kMostNamed = 8;
  std::vector<std::string> notes;
  for (const auto& [text, of] : said) {
    const std::string whom = of.size() > kMostNamed ? std::to_string(of.size()) + " logs" : join(of, ", ");
    notes.push_back(whom.empty() ? text : whom + ": " + text);
  }
  return notes;
}

}  // namespace

render::Document scaled_logs(const std::vector<AskedLog>& logs, const std::vector<Practice>& practices,
                             bool lenient) {
  const auto all = scale_all(logs, practices);
  if (!lenient) refuse_unscaled(all);
  const bool several = practices.size() > 1;
  render::Document document;
  document.name = "scale";
  document.title =
      several ? "Log scale under several rules" : "Log scale, " + std::string(all.front().rule->title);
  if (several) {
    document.meaning =
        "The same measures under each rule. The rules differ in the slab, kerf and taper they allow for, "
        "so their scales of one log differ; none of them is its lumber.";
  }
  render::Table table = table_of(all);
  const auto words = [&all](auto of) {
    std::vector<std::string> texts;
    for (const auto& one : all) texts.push_back(of(one));
    return texts;
  };
  add_words(table, "defect", "Defect", false, words([](const Scaled& one) { return one.log->defect; }));
  add_words(table, "segments", "Segments, top first", false, words([](const Scaled& one) {
              return one.scale ? segment_words(*one.scale, one.places) : std::string();
            }));
  add_words(table, "cull", "Cull", false,
            words([](const Scaled& one) { return std::string(one.scale && one.scale->cull ? "cull" : ""); }));
  add_words(table, "tag", "Tag", true, words([](const Scaled& one) { return one.log->tag; }));
  table.notes = notes_of(all);
  document.tables.push_back(std::move(table));
  for (const auto& practice : practices) {
    document.foot.push_back(several ? scaling::rule_words(practice.name) + ": " + formula_of(practice)
                                    : scaling::in_words(practice) + ".");
  }
  document.foot.push_back(kCaution);
  return document;
}

render::Document size_table(const Practice& practice, const std::vector<scaling::Length>& diameters,
                            const std::vector<scaling::Length>& lengths) {
  const auto scaler = scaling::Scaler::make(practice);
  if (!scaler) throw Refused(scaler.slip().what);
  const Rule& rule = scaler->rule();
  const bool middle = rule.needs == scaling::Needs::middle;
  if (rule.needs != scaling::Needs::small_end && !middle) {
    throw Refused(scaling::rule_words(practice.name) +
                  " needs both ends of a log, and a table of sizes has one; ask for a rule of the small end");
  }
  const bool metric = diameters.front().system == measure::System::metric;
  render::Table table;
  table.name = "sizes";
  table.columns.push_back({.name = metric ? "diameter_cm" : "diameter_in",
                           .heading = middle ? "Middle" : "Small end",
                           .unit = metric ? "cm" : "in",
                           .kind = ColumnKind::decimal});
  const VolumeUnit unit = scaling::unit_for(rule, diameters.front().system);
  const int places = places_of(practice, rule, unit);
  for (const auto& length : lengths) {
    table.columns.push_back({.name = "length_" + measure::write_feet(length),
                             .heading = measure::spoken_length(length),
                             .kind = ColumnKind::decimal,
                             .places = places});
  }
  for (const auto& diameter : diameters) {
    table.rows.push_back(size_row(*scaler, diameter, lengths, places));
    table.columns[0].places =
        std::max(table.columns[0].places, std::get<render::Figure>(table.rows.back().cells[0]).places());
  }
  render::Document document;
  document.name = "scale-table";
  document.title =
      std::string(rule.title) + ", " +
      (unit == VolumeUnit::board_foot ? "board feet"
                                      : render::printed_unit(std::string(scaling::unit_word(unit))));
  document.subtitle =
      std::string(middle ? "diameter at mid length" : "small end") + " inside bark, by length";
  document.tables.push_back(std::move(table));
  document.one_page = true;
  document.foot = {formula_of(practice) + ".", scaling::in_words(practice) + ".",
                   "Source: " + std::string(rule.source) + ".", kCaution};
  return document;
}

render::Document description_of(const std::vector<Practice>& practices) {
  render::Document document;
  document.name = "scale-rules";
  document.title = practices.size() == 1 ? "Log rule " + practices.front().name : "Log rules and practices";
  render::Table table;
  table.name = "rules";
  table.columns = {{.name = "rule", .heading = "Rule"}, {.name = "title", .heading = "Name"}};
  for (const auto& practice : practices) {
    table.rows.push_back({{practice.name, std::string(scaling::find_rule(practice.rule)->title)}});
    table.notes.push_back(practice.name + ": " + scaling::describe(practice));
  }
  document.tables.push_back(std::move(table));
  document.foot.push_back(kCaution);
  return document;
}

render::Document list_of_rules() {
  render::Document document;
  document.name = "scale-rules";
  document.title = "Log rules and practices";
  render::Table table;
  table.name = "rules";
  table.columns = {{.name = "rule", .heading = "Rule"},
                   {.name = "title", .heading = "In the trade"},
                   {.name = "formula", .heading = "Formula"},
                   {.name = "source", .heading = "Source"}};
  for (const auto& name : scaling::practice_names()) {
    const auto practice = *scaling::find_practice(name);
    const Rule& rule = *scaling::find_rule(practice.rule);
    const bool own = name == rule.name;
    table.rows.push_back({{name, std::string(rule.title), std::string(rule.formula),
                           own ? std::string(rule.source) : scaling::what_changes(name)}});
  }
  document.tables.push_back(std::move(table));
  document.foot.push_back(kCaution);
  return document;
}

}  // namespace kerfbook::command
