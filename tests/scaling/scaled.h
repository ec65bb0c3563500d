// scaled.h -- a log written out in a test, `10-12x16 mid 11 defect 15bf rot`, scaled under a named practice.
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/text.h"
#include "scaling/practice.h"
#include "scaling/scaling.h"

namespace kerfbook::scaling::test {

struct Written {
  LogMeasure log;
  std::vector<Defect> defects;
};

inline Length inches_of(const std::string& text) {
  const auto read = read_diameter(text);
  REQUIRE_MESSAGE(read, text);
  return *read;
}

/// The added words as a sheet line has them, one blank apart.
inline Written written(const std::string& text) {
  const auto words = split_words(text);
  const auto spec = read_log_spec(words.at(0));
  REQUIRE_MESSAGE(spec, text << ": " << (spec ? "" : spec.slip().what));
  Written out{*spec, {}};
  for (std::size_t i = 1; i + 1 < words.size(); i += 2) {
    if (words[i] == "mid") out.log.mid = {inches_of(words[i + 1])};
    if (words[i] == "girth") out.log.girth = inches_of(words[i + 1]);
    if (words[i] == "segments") {
      std::string list = words[i + 1];
      for (char& c : list) c = c == ',' ? ' ' : c;
      for (const auto& one : split_words(list)) out.log.segments.push_back(inches_of(one));
    }
    if (words[i] == "defect") {
      const auto defect = read_defect(words[i + 1]);
      REQUIRE_MESSAGE(defect, words[i + 1]);
      out.defects.push_back(*defect);
    }
  }
  return out;
}

inline Practice practice(const std::string& name) {
  const auto found = find_practice(name);
  REQUIRE_MESSAGE(found, name);
  return *found;
}

inline Scale scaled(const std::string& log, const Practice& by) {
  const Written what = written(log);
  const auto scale = scaling::scale(what.log, what.defects, by);
  REQUIRE_MESSAGE(scale, log << " by " << by.name << ": " << (scale ? "" : scale.slip().what));
  return *scale;
}

inline Scale scaled(const std::string& log, const std::string& rule) {
  return scaled(log, practice(rule));
}

/// Whole units, as a check reads best: 110 bf is 110.
constexpr std::int64_t whole(std::int64_t millionths) {
  return millionths / kPerUnit;
}

}  // namespace kerfbook::scaling::test
