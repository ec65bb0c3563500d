#include "report/packet.h"

#include <algorithm>

#include "base/error.h"
#include "base/text.h"
#include "mill/toml_table.h"

namespace kerfbook::report {
namespace {

const std::vector<std::string> kUsual{"upkeep",   "production", "overrun", "ownership", "cut-list",
                                      "downtime", "teeth",      "fuel",    "crew",      "struck"};

bool takes(const ReportFile& report, const std::string& filter) {
  return std::find(report.filters.begin(), report.filters.end(), filter) != report.filters.end();
}

/// What is asked, less the filters the report does not take. What of them would have narrowed it comes into `left_out`:
/// the heading of the packet speaks of it, so it is to be said under the report's table.
Ask taken_by(const ReportFile& report, const Ask& ask, std::vector<std::string>& left_out) {
  Ask out = ask;
  if (!takes(report, "from")) out.from.reset();
  if (!takes(report, "to")) out.to.reset();
  for (const auto& [word, asked] : {std::pair("job", &Ask::job), std::pair("customer", &Ask::customer),
                                    std::pair("species", &Ask::species), std::pair("site", &Ask::site),
                                    std::pair("setup", &Ask::setup), std::pair("against", &Ask::against)}) {
    if ((ask.*asked).empty() || takes(report, word)) continue;
    left_out.push_back(std::string(word) + " " + ask.*asked);
    (out.*asked).clear();
  }
  return out;
}

void add(render::Document& whole, render::Document part, const std::vector<std::string>& left_out) {
  bool first = true;
  for (auto& table : part.tables) {
    if (first && !left_out.empty()) table.notes.push_back("Not limited to " + join(left_out, ", ") + ".");
    if (first) table.notes.push_back(part.meaning);
    if (first) table.notes.insert(table.notes.begin(), part.lead.begin(), part.lead.end());
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
    std::vector<std::string> left_out;
    auto part = run_report(report, book, taken_by(report, ask, left_out), style, today);
    if (part.subtitle.size() > whole.subtitle.size())
      whole.subtitle = part.subtitle;  // the fullest says it all
    add(whole, std::move(part), left_out);
  }
  return whole;
}

}  // namespace kerfbook::report
