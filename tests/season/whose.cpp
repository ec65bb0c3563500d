#include "whose.h"

#include <algorithm>
#include <optional>

#include "notation.h"

namespace reckoning {
namespace {

bool is_work(const std::string& kind) {
  return kind == "log" || kind == "in" || kind == "less" || kind == "resaw" || begins_with_digit(kind);
}

/// All facts that stand under a job at a place, with the line they stand on.
template <class Deed>
void each_fact(Sheet& sheet, Deed&& deed) {
  const auto all = [&](auto& facts) {
    for (auto& fact : facts) deed(fact.at, fact.at.place / 1000);
  };
  all(sheet.boards);
  all(sheet.logs);
  all(sheet.sawing);
  all(sheet.stops);
  all(sheet.crew);
  all(sheet.teeth);
  all(sheet.moves);
}

/// What stands above the first `site` or `move` was done where that move left from; or at that site, when it is the only
/// one and named before any log or board.
std::optional<std::string> first_place(const Lines& lines) {
  std::optional<std::string> place;
  bool worked = false;
  for (const auto& [line, kind] : lines.kinds) {
    worked = worked || is_work(kind);
    if (kind == "move") return place ? place : lines.places.at(line).first;
    if (kind != "site") continue;
    const std::string& site = lines.places.at(line).second;
    if (place ? *place != site : worked) return std::nullopt;
    place = site;
  }
  return place;
}

int first_line_of_a_place(const Lines& lines) {
  return lines.places.empty() ? 0 : lines.places.begin()->first;
}

/// Below the first job: what stands after a `site` or `move` line and above the line of another job, with no log and no
/// board between. The move itself is the job's that holds.
std::set<int> headings(const Lines& lines) {
  std::set<int> found;
  std::string job;
  int begun = 0;
  for (const auto& [line, kind] : lines.kinds) {
    if (is_work(kind)) begun = 0;
    if (begun == 0 && kind == "site") begun = line;
    if (begun == 0 && kind == "move") begun = line + 1;
    if (kind != "job") continue;
    const std::string& next = lines.jobs.at(line);
    if (begun != 0 && !job.empty() && job != next)
      for (int i = begun; i < line; ++i) found.insert(i);
    job = next;
    begun = 0;
  }
  return found;
}

}  // namespace

void say_whose(Sheet& sheet, const Lines& lines) {
  const std::set<int> in_heading = headings(lines);
  const std::optional<std::string> place = first_place(lines);
  const int first = first_line_of_a_place(lines);
  std::set<std::string> jobs;
  for (const auto& [line, job] : lines.jobs) jobs.insert(job);
  each_fact(sheet, [&](Stand& at, int line) {
    if (in_heading.count(line) != 0 && lines.named.count(line) == 0) at.job.clear();
    if (at.job.empty() && jobs.size() == 1) at.job = *jobs.begin();
    if (place && line < first) at.site = *place;
  });
}

}  // namespace reckoning
