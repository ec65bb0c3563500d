// mill.cpp -- the mill file as a whole, and finding things in a Mill. The parts are read in read_self.cpp,
// read_scale.cpp, read_jobs.cpp and read_costs.cpp.
#include "mill/mill.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/text.h"
#include "mill/mill_tables.h"

namespace kerfbook::book {
namespace {

using scaling::Practice;

/// Top-level tables of other rooms: let through without a look inside.
constexpr std::array kTablesOfOthers{"price",     "charge",  "share",  "tax",
                                     "agreement", "invoice", "report", "packet"};

template <class Entry>
const Entry* find_code(const std::vector<Entry>& entries, std::string_view code) {
  const auto at =
      std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return same_word(e.code, code); });
  return at == entries.end() ? nullptr : &*at;
}

/// Built-in practices by name, made once: practice_for hands out references.
const Practice* built_in(std::string_view name) {
  static const std::map<std::string, Practice> all = [] {
    std::map<std::string, Practice> by_name;
    for (const auto& known : scaling::practice_names())
      by_name.emplace(known, *scaling::find_practice(known));
    return by_name;
  }();
  const auto at = all.find(lower(name));
  return at == all.end() ? nullptr : &at->second;
}

const Practice* find_practice_of(const Mill& mill, std::string_view name) {
  if (same_word(name, mill.house.name)) return &mill.house;
  for (const Practice& practice : mill.practices) {
    if (same_word(name, practice.name)) return &practice;
  }
  return built_in(name);
}

bool same_section(const measure::Size& a, const measure::Size& b) {
  return a.thickness == b.thickness && a.width == b.width;  // 5/4x6 and 1-1/4x6 are one board
}

void read_tables(TomlTable& root, Mill& mill, bool posted) {
  read_mill_table(root, mill);
  read_scale(root, mill);
  read_recovery(root, mill);
  read_count(root, mill.convention);
  read_capacity(root, mill);
  read_saws(root, mill);
  read_lumber(root, mill);
  read_customers(root, mill);
  read_jobs(root, mill, posted);
  read_costs(root, mill);
  read_services(root, mill);
}

ReadMill read_text(std::string_view toml, bool posted) {
  ReadMill out;
  TomlFile file = read_toml(toml);
  const bool readable = file.found.empty();
  if (readable) {
    TomlTable root(file.root, "a mill file", file);
    read_tables(root, out.mill, posted);
    for (const char* name : kTablesOfOthers) root.allow(name);
    root.finish();
  }
  out.mill.money.toml = std::string(toml);
  sort_by_place(file.found);
  out.found = std::move(file.found);
  return out;
}

}  // namespace

scaling::Practice usual_practice() {
  return *built_in("international-quarter");
}

ReadMill read_mill(std::string_view toml) {
  return read_text(toml, false);
}

ReadMill read_posted_mill(std::string_view toml) {
  return read_text(toml, true);
}

std::string name_of(const std::vector<Word>& words, const std::string& code) {
  for (const Word& word : words)
    if (same_word(word.code, code) && !word.name.empty()) return word.name;
  return code;
}

const JobEntry* find_job(const Mill& mill, std::string_view code) {
  return find_code(mill.jobs, code);
}

const Customer* find_customer(const Mill& mill, std::string_view code) {
  return find_code(mill.customers, code);
}

const Practice& practice_for(const Mill& mill, std::string_view job) {
  const JobEntry* entry = find_job(mill, job);
  const Practice* own =
      entry == nullptr || entry->rule.empty() ? nullptr : find_practice_of(mill, entry->rule);
  return own == nullptr ? mill.house : *own;
}

std::optional<Practice> practice_named(const Mill& mill, std::string_view name) {
  const Practice* found = find_practice_of(mill, name);
  return found == nullptr ? std::nullopt : std::optional(*found);
}

std::optional<measure::Size> target_in(const std::vector<NamedSize>& sizes, const measure::Size& nominal) {
  for (const NamedSize& size : sizes) {
    if (same_section(size.nominal, nominal) && size.target) return size.target;
  }
  return std::nullopt;
}

std::optional<measure::Size> target_for(const Mill& mill, std::string_view job,
                                        const measure::Size& nominal) {
  if (const JobEntry* entry = find_job(mill, job)) {
    if (auto target = target_in(entry->sizes, nominal)) return target;
  }
  return target_in(mill.sizes, nominal);
}

}  // namespace kerfbook::book
