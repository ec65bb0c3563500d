// mill.h -- what the reckoning reads of a mill file: the rules, jobs, prices and costs the seasons use. Values stand one a
// line, or as a list of texts over several lines.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "days.h"

namespace reckoning {

/// One table of the file as it was written: keys and the text behind the =.
class Entry {
 public:
  std::string table;  ///< "price" for [[price]]
  std::map<std::string, std::string> values;

  [[nodiscard]] bool has(const std::string& key) const { return values.count(key) != 0; }
  [[nodiscard]] std::string text(const std::string& key) const;  ///< empty where there is none
  [[nodiscard]] Fraction number(const std::string& key) const;   ///< 0 where there is none
  [[nodiscard]] bool truth(const std::string& key) const { return text(key) == "true"; }
  [[nodiscard]] std::vector<std::string> list(const std::string& key) const;  ///< one text is a list of one
};

struct CutListLine {
  Section section;
  Fraction length;
  std::string grade;
  std::int64_t pieces = 0;
};

struct Job {
  std::string code, customer, name, owner, rule;  ///< owner: customer, own, shares
  std::vector<CutListLine> cut_list;
  std::map<std::string, Section> targets;
};

struct Mill {
  std::vector<Entry> entries;
  std::map<std::string, Job> jobs;
  std::map<std::string, std::string> groups;  ///< of species
  std::string house_rule = "international-quarter";
  Fraction trim;
  bool whole_feet = false;  ///< board feet on bills are rounded to whole ones, else to hundredths

  [[nodiscard]] const std::string& rule_of(const std::string& job) const;
  [[nodiscard]] std::string owner_of(const std::string& job) const;     ///< empty for no job
  [[nodiscard]] std::string customer_of(const std::string& job) const;  ///< empty for none
  [[nodiscard]] std::vector<const Entry*> all(const std::string& table) const;
};

Mill read_mill(const std::string& text);

}  // namespace reckoning
