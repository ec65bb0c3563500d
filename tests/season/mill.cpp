#include "mill.h"

#include <sstream>
#include <stdexcept>

namespace reckoning {
namespace {

std::string trimmed(const std::string& text) {
  const auto from = text.find_first_not_of(" \t\r");
  return from == std::string::npos ? "" : text.substr(from, text.find_last_not_of(" \t\r") - from + 1);
}

/// What stands before a remark; a # within quotes is none.
std::string without_remark(const std::string& line) {
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] == '"') quoted = !quoted;
    if (line[i] == '#' && !quoted) return line.substr(0, i);
  }
  return line;
}

std::vector<std::string> quoted_in(const std::string& value) {
  std::vector<std::string> texts;
  for (std::size_t at = value.find('"'); at != std::string::npos; at = value.find('"', at)) {
    const auto end = value.find('"', at + 1);
    texts.push_back(value.substr(at + 1, end - at - 1));
    at = end + 1;
  }
  return texts;
}

/// 2x6x16 Sel 12: a line of a cut list.
CutListLine cut_list_line(const std::string& text) {
  const Sheet sheet = read_sheet("sheet 2000-01-01\n" + text + "\n");
  const Boards& boards = sheet.boards.at(0);
  return {boards.section, boards.length, boards.at.grade, boards.pieces};
}

void add_job(Mill& mill, const Entry& entry) {
  Job job;
  job.code = entry.text("code");
  job.customer = entry.text("customer");
  job.name = entry.text("name");
  job.owner = entry.has("owner") ? entry.text("owner") : "customer";
  job.rule = entry.text("rule");
  for (const auto& line : entry.list("cut_list")) job.cut_list.push_back(cut_list_line(line));
  mill.jobs[job.code] = job;
}

}  // namespace

std::string Entry::text(const std::string& key) const {
  const auto at = values.find(key);
  if (at == values.end()) return "";
  const auto texts = quoted_in(at->second);
  return texts.empty() ? at->second : texts.front();
}

Fraction Entry::number(const std::string& key) const {
  return has(key) ? fraction_of(text(key)) : Fraction(0);
}

std::vector<std::string> Entry::list(const std::string& key) const {
  const auto at = values.find(key);
  return at == values.end() ? std::vector<std::string>() : quoted_in(at->second);
}

const std::string& Mill::rule_of(const std::string& job) const {
  const auto at = jobs.find(job);
  return at == jobs.end() || at->second.rule.empty() ? house_rule : at->second.rule;
}

std::string Mill::owner_of(const std::string& job) const {
  if (job.empty() || job == "own") return job;
  const auto at = jobs.find(job);
  return at == jobs.end() ? "customer" : at->second.owner;
}

std::string Mill::customer_of(const std::string& job) const {
  const auto at = jobs.find(job);
  return at == jobs.end() ? "" : at->second.customer;
}

std::vector<const Entry*> Mill::all(const std::string& table) const {
  std::vector<const Entry*> found;
  for (const auto& entry : entries)
    if (entry.table == table) found.push_back(&entry);
  return found;
}

Mill read_mill(const std::string& text) {
  Mill mill;
  std::istringstream stream(text);
  std::string open;  // a list that goes on over lines
  for (std::string line; std::getline(stream, line);) {
    line = trimmed(without_remark(line));
    if (line.empty()) continue;
    if (!open.empty()) {
      auto& value = mill.entries.back().values[open];
      value += " " + line;
      if (line.find(']') != std::string::npos) open.clear();
      continue;
    }
    if (line.front() == '[') {
      Entry entry;
      for (const char c : line)
        if (c != '[' && c != ']') entry.table += c;
      mill.entries.push_back(entry);
      continue;
    }
    const auto equals = line.find('=');
    if (equals == std::string::npos || mill.entries.empty())
      throw std::runtime_error("the reckoning reads no such line of a mill file: " + line);
    const std::string key = trimmed(line.substr(0, equals));
    const std::string value = trimmed(line.substr(equals + 1));
    mill.entries.back().values[key] = value;
    if (value.front() == '[' && value.find(']') == std::string::npos) open = key;
  }
  for (const auto& entry : mill.entries) {
    if (entry.table == "job") add_job(mill, entry);
    if (entry.table == "scale" && entry.has("rule")) mill.house_rule = entry.text("rule");
    if (entry.table == "recovery") mill.trim = entry.number("trim");
    if (entry.table == "count") mill.whole_feet = entry.text("rounding") == "total-whole";
    if (entry.table == "job.target") {
      // the job this table stands under is the last before it
      Job* under = nullptr;
      for (const auto& before : mill.entries) {
        if (before.table == "job") under = &mill.jobs[before.text("code")];
        if (&before == &entry) break;
      }
      for (const auto& [size, target] : entry.values) {
        const Section nominal = cut_list_line(quoted_in(size).front() + "x1 1").section;
        under->targets[nominal.name] = cut_list_line(quoted_in(target).front() + "x1 1").section;
      }
    }
    if (entry.table == "species")
      for (const auto& [code, value] : entry.values) {
        const auto group = value.find("group");
        if (group != std::string::npos) mill.groups[code] = quoted_in(value.substr(group)).front();
      }
  }
  return mill;
}

}  // namespace reckoning
