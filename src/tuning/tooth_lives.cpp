#include "tuning/tooth_lives.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

namespace kerfbook::tuning {

namespace {

bool one_of(const std::string& word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool begins(LifeOf of, const std::string& action) {
  if (of == LifeOf::set) return one_of(action, {"full-set", "blade-changed"});
  return renews_edge(action);
}

/// Teeth that are in a saw, and what was sawn with them.
struct Running {
  ToothLife life;
  std::map<std::string, double> bf_of;
  bool sawn = false;
};

void saw_on(Running& running, const Sawn& sawn) {
  running.life.bf += sawn.bf;
  running.life.lineal_ft += sawn.lineal_ft;
  running.life.hours += sawn.hours;
  running.bf_of[sawn.species] += sawn.bf;
  running.sawn = true;
}

ToothLife closed(const Running& running) {
  ToothLife life = running.life;
  double most = 0;
  for (const auto& [species, bf] : running.bf_of) {
    if (bf > most) {
      most = bf;
      life.species = species;
    }
  }
  life.bf = std::max(life.bf, 0.0);
  life.lineal_ft = std::max(life.lineal_ft, 0.0);
  life.hours = std::max(life.hours, 0.0);
  return life;
}

ToothLife ended(const Running& running, const SawWork& work) {
  ToothLife life = closed(running);
  life.by = is_strike(work.cause) ? EndedBy::strike : EndedBy::wear;
  life.cause = work.cause;
  life.to_day = work.day;
  life.teeth = work.teeth;
  return life;
}

}  // namespace

bool renews_edge(const std::string& action) {
  return !one_of(action, {"shanks", "blade-tensioned"});
}

bool is_strike(const std::string& cause) {
  std::string small = cause;
  for (char& c : small) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return one_of(small, {"metal", "stone"});
}

std::vector<ToothLife> tooth_lives(const std::vector<SawRecord>& record) {
  std::map<std::pair<std::string, LifeOf>, Running> running;
  std::vector<ToothLife> lives;
  for (const auto& entry : record) {
    if (const auto* sawn = std::get_if<Sawn>(&entry)) {
      for (auto& [key, teeth] : running) saw_on(teeth, *sawn);
      continue;
    }
    const auto& work = std::get<SawWork>(entry);
    for (const LifeOf of : {LifeOf::edge, LifeOf::set}) {
      if (!begins(of, work.action)) continue;
      auto& teeth = running[{work.saw, of}];
      if (teeth.sawn) lives.push_back(ended(teeth, work));
      teeth = Running{};
      teeth.life.of = of;
      teeth.life.saw = work.saw;
      teeth.life.from_day = teeth.life.to_day = work.day;
    }
  }
  for (const auto& [key, teeth] : running) {
    if (teeth.sawn) lives.push_back(closed(teeth));
  }
  return lives;
}

Life as_life(const ToothLife& life, LifeIn in) {
  const double length = in == LifeIn::bf ? life.bf : in == LifeIn::hours ? life.hours : life.lineal_ft;
  return {length, life.by == EndedBy::wear};
}

std::vector<Life> as_lives(const std::vector<ToothLife>& lives, LifeIn in) {
  std::vector<Life> out;
  for (const auto& life : lives) out.push_back(as_life(life, in));
  return out;
}

}  // namespace kerfbook::tuning
