// corrected_rows.cpp -- whom each correction of a sheet concerned: the jobs and buyers whose lines it changed.
#include <map>
#include <set>
#include <type_traits>

#include "base/text.h"
#include "book/sheet_rows.h"
#include "sheet/facts.h"
#include "sheet/write.h"

namespace kerfbook::book {
namespace {

struct Who {
  bool sale = false;
  std::string name;  ///< in small letters
  auto operator<=>(const Who&) const = default;
};
/// All that a sheet says of each, as one text, whatever the order of its lines.
using Said = std::map<Who, std::multiset<std::string>>;

/// What belongs to no job and to no buyer, or is never billed: the crew's hours, fuel, the meter, the set-up, residue, remarks.
template <class Fact>
constexpr bool kOfTheMill = std::is_same_v<Fact, sheet::Crew> || std::is_same_v<Fact, sheet::Meter> ||
                            std::is_same_v<Fact, sheet::Fuel> || std::is_same_v<Fact, sheet::Note> ||
                            std::is_same_v<Fact, sheet::Thick> || std::is_same_v<Fact, sheet::Setup> ||
                            std::is_same_v<Fact, sheet::Residue>;

Said said_in(const sheet::Sheet& sheet) {
  Said said;
  for (const sheet::DatedFact& fact : sheet::facts(sheet)) {
    if (std::visit([](const auto& of) { return kOfTheMill<std::decay_t<decltype(of)>>; }, fact.line->fact))
      continue;
    const auto* sold = std::get_if<sheet::Sold>(&fact.line->fact);
    const Who who{sold != nullptr, lower(sold != nullptr ? sold->buyer : fact.context.job)};
    const sheet::Context& at = fact.context;
    said[who].insert(
        join({sheet::write_line({fact.line->fact, "", {}}), at.species, at.grade, at.bundle, at.site}, "\n"));
  }
  return said;
}

}  // namespace

void write_corrected_rows(Store& store, const std::vector<SheetEntry>& revisions) {
  if (revisions.size() < 2) return;
  Said before = said_in(revisions.front().sheet);
  for (std::size_t i = 1; i < revisions.size(); ++i) {
    const SheetEntry& next = revisions[i];
    Said after = said_in(next.sheet);
    for (const auto& [who, lines] : after) before[who];
    for (const auto& [who, lines] : before)
      if (lines != after[who])
        store.run("INSERT INTO corrected (day, shift, revision, sale, who, why) VALUES (?, ?, ?, ?, ?, ?)",
                  next.key.day, next.key.shift, next.revision, who.sale, who.name, next.why);
    before = std::move(after);
  }
}

}  // namespace kerfbook::book
