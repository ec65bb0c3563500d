// tooth_lives.h -- the record of a mill, in its order, made into lives of edges and of whole sets of teeth. Statistics are
// doubles: nothing here is stored or billed.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "tuning/lives.h"

namespace kerfbook::tuning {

/// A stretch of sawing of one species. Every board goes through every saw, so it wears all of them.
struct Sawn {
  std::string species;  ///< empty = not said
  double bf = 0;        ///< below 0 for what was taken off again (`less`, `resaw`)
  double lineal_ft = 0;
  double hours = 0;  ///< of sawing
};

/// A piece of work on the teeth or blade of one saw.
struct SawWork {
  std::string saw;
  std::string
      action;  ///< as the book keeps it: touched-up, replaced, full-set, shanks, swaged, blade-tensioned, blade-changed
  std::string cause;  ///< one word, or empty
  int teeth = 0;      ///< 0 = not said
  int day = 0;        ///< any count of days; handed through to the lives
};

using SawRecord = std::variant<Sawn, SawWork>;

enum class LifeOf {
  edge,  ///< from one work on the teeth of a saw to the next, that renews_edge()
  set    ///< from one full set (or other blade) to the next, touching up and single teeth within it
};

enum class EndedBy {
  wear,    ///< the next work came for anything but a strike; it is taken that the teeth were due
  strike,  ///< metal or stone: cut short
  record   ///< still in the saw where the record ends: cut short
};

struct ToothLife {
  LifeOf of = LifeOf::edge;
  EndedBy by = EndedBy::record;
  std::string saw;
  std::string cause;    ///< of the work that ended it; empty when none was said, and at the end of the record
  std::string species;  ///< the one of which most was sawn meanwhile; empty of none
  int from_day = 0;     ///< of the work that began it
  int to_day = 0;       ///< of the work that ended it; at the end of the record the day it began
  int teeth = 0;        ///< put in by the work that ended it
  double bf = 0;        ///< at least 0
  double lineal_ft = 0;
  double hours = 0;
};

/// Whether work leaves a saw with another edge than before: every action but shanks, and a blade tensioned.
bool renews_edge(const std::string& action);

/// Metal and stone. What else is written as a cause is wear of some kind.
bool is_strike(const std::string& cause);

/// Lives in the order they ended, those still running last. What came before a saw's first work (of sets: before its first full
/// set) is no life: nothing says how long those teeth had sawn. Two works on one saw with nothing sawn between them are one.
std::vector<ToothLife> tooth_lives(const std::vector<SawRecord>& record);

/// By what a life is counted.
enum class LifeIn { bf, lineal_ft, hours };
/// For the survival curve: ended only where wear ended it.
Life as_life(const ToothLife& life, LifeIn in);
std::vector<Life> as_lives(const std::vector<ToothLife>& lives, LifeIn in);

}  // namespace kerfbook::tuning
