#include "report/packet.h"

#include <algorithm>

#include "base/error.h"
#include "book/toml_table.h"

namespace kerfbook::report {
namespace {

const std::vector<std::string> kUsual{"upkeep",   "production", "overrun", "ownership", "cut-list",
                                      "downtime", "teeth",      "fuel",    "crew",      "struck"};

/// What is asked, less the filters the report does not take.
Ask taken_by(const ReportFile& report, const Ask& ask) {
  const auto takes = [&](const char* filter) {
    return std::find(report.filters.begin(), report.filters.end(), filter) != report.filters.end();
  };
  Ask out = ask;
  if (!takes("from")) out.from.reset();
  if (!takes("to")) out.to.reset();
  if (!takes("job")) out.job.clear();
  if (!takes("customer")) out.customer.clear();
  if (!takes("species")) out.species.clear();
  if (!takes("site")) out.site.clear();
  return out;
}

void add(render::Document& whole, render::Document part) {
  bool first = true;
  for (auto& table : part.tables) {
    if (first) table.notes.push_back(part.meaning);
    table.name = part.name + "." + table.name;
    table.title = table.title.empty() ? part.title : part.title + ": " + table.title;
    table.follows = !first;  // one worksheet a report
    first = false;
    whole.tables.push_back(std::move(table));
  }
  for (auto& line : part.foot) {
    if (std::find(whole.foot.begin(), whole.foot.end(), line) == whole.foot.end()) whole.foot.push_back(line);
  }
}

}  // namespace

std::vector<std::string> packet_reports(const book::Mill& mill) {
  const book::TomlFile file = book::read_toml(mill.money.toml);
  const book::TomlNode* packet = file.root.find("packet");
  const book::TomlNode* chosen = packet == nullptr ? nullptr : packet->find("reports");
  if (chosen == nullptr) return kUsual;
  std::vector<std::string> names;
  for (const auto& one : chosen->inside) {
    if (one.kind == book::TomlKind::text) names.push_back(one.written);
  }
  if (names.empty() || names.size() != chosen->inside.size()) {
    throw Refused("mill file, line " + std::to_string(chosen->place.line) +
                  ": [packet] reports takes names of reports, as reports = [\"production\"]");
  }
  return names;
}

render::Document packet(const std::vector<ReportFile>& reports, const std::vector<std::string>& names,
                        const book::Book& book, const Ask& ask, const render::Style& style, Day today) {
  const book::Still still(book);
  render::Document whole;
  whole.name = "packet";
  whole.title = "Packet";
  whole.style = style;
  whole.made_on = write_day(today);
  for (const auto& name : names) {
    const auto& report = find_report(reports, name);
    auto part = run_report(report, book, taken_by(report, ask), style, today);
    if (part.subtitle.size() > whole.subtitle.size())
      whole.subtitle = part.subtitle;  // the fullest says it all
    add(whole, std::move(part));
  }
  return whole;
}

}  // namespace kerfbook::report
