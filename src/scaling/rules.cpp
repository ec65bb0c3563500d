#include "scaling/rules.h"

#include <algorithm>
#include <vector>

namespace kerfbook::scaling {
namespace {

std::vector<Rule> joined() {
  std::vector<Rule> all;
  for (const auto part : {scribner_rules(), board_foot_rules(), cubic_rules()}) {
    all.insert(all.end(), part.begin(), part.end());
  }
  return all;
}

}  // namespace

std::span<const Rule> rules() {
  static const std::vector<Rule> all = joined();
  return all;
}

const Rule* find_rule(std::string_view name) {
  const auto all = rules();
  const auto found =
      std::find_if(all.begin(), all.end(), [name](const Rule& rule) { return rule.name == name; });
  return found == all.end() ? nullptr : &*found;
}

VolumeUnit unit_for(const Rule& rule, System system) {
  switch (rule.answers) {
    case Answers::board_feet:
      return VolumeUnit::board_foot;
    case Answers::cubic:
      return system == System::metric ? VolumeUnit::cubic_metre : VolumeUnit::cubic_foot;
    case Answers::cubic_metres:
      return VolumeUnit::cubic_metre;
    case Answers::hoppus_feet:
      return VolumeUnit::hoppus_foot;
  }
  return VolumeUnit::board_foot;
}

}  // namespace kerfbook::scaling
