#include "book/mills.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"

namespace kerfbook::book {
namespace {

bool same_sizes(const std::vector<NamedSize>& a, const std::vector<NamedSize>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const NamedSize& x, const NamedSize& y) {
    return x.nominal == y.nominal && x.target == y.target;
  });
}

}  // namespace

const Mill& Mills::at(std::int64_t entry) {
  auto& slot = read_[entry];
  if (slot) return *slot;
  if (entry == 0) {
    slot = std::make_unique<Mill>();
    return *slot;
  }
  const auto text = journal_.entry(entry);
  if (!text) throw JournalFault(fmt::format("journal entry {} is missing; {}", entry, kGoBack));
  auto read = read_posted_mill(text->body);
  if (has_error(read.found)) {
    throw JournalFault(fmt::format("journal entry {} (mill file): line {}: {}; this program cannot read it",
                                   entry, read.found.front().place.line, read.found.front().what));
  }
  slot = std::make_unique<Mill>(std::move(read.mill));
  return *slot;
}

const MillInForce::Found& MillInForce::find(std::string_view job) {
  const auto [at, fresh] = found_.try_emplace(lower(job));
  Found& found = at->second;
  if (!fresh) return found;
  found = {&file_, find_job(file_, job)};
  if (found.job != nullptr) return found;
  const auto id = words_.find(WordKind::job, job);
  if (!id) return found;
  const auto last = store_.number(
      "SELECT last_entry FROM mill_job WHERE job = ? AND first_entry < ? ORDER BY first_entry DESC LIMIT 1",
      *id, entry_);
  if (!last) return found;
  found.mill = &mills_.at(*last);
  found.job = find_job(*found.mill, job);
  return found;
}

const scaling::Practice& MillInForce::practice_for(std::string_view job) {
  const Found& found = find(job);
  const bool has_own = found.job != nullptr && !found.job->rule.empty();
  return has_own ? book::practice_for(*found.mill, job) : file_.house;
}

std::optional<measure::Size> MillInForce::target_for(std::string_view job, const measure::Size& nominal) {
  const Found& found = find(job);
  if (found.job != nullptr) {
    if (auto target = target_in(found.job->sizes, nominal)) return target;
  }
  return target_in(file_.sizes, nominal);
}

bool MillInForce::has_volumes_of(const Mill& next) {
  const auto same_job = [&](const JobEntry& job) {
    const Found& before = find(job.code);
    return same_sizes(job.sizes, before.job == nullptr ? std::vector<NamedSize>() : before.job->sizes);
  };
  const scaling::Taper& taper = file_.taper;
  return file_.units == next.units && taper.per_foot_mils == next.taper.per_foot_mils &&
         taper.per_metre == next.taper.per_metre && taper.trim == next.taper.trim &&
         same_sizes(file_.sizes, next.sizes) && std::all_of(next.jobs.begin(), next.jobs.end(), same_job);
}

}  // namespace kerfbook::book
