// helpers.h -- facts written shortly for the tests of billing, and the demo mill's terms.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "base/text.h"
#include "price/bill.h"
#include "price/price.h"
#include "price/terms.h"
#include "slurp.h"

namespace kerfbook::billing {

using tests::slurp;

inline Terms terms_of(const std::string& toml) {
  ReadTerms got = read_terms(toml);
  const bool wrong = std::any_of(got.found.begin(), got.found.end(),
                                 [](const Diagnostic& one) { return one.severity == Severity::error; });
  CHECK_MESSAGE(!wrong, show_all(got.found, "mill.toml", toml));
  return got.terms;
}

inline Terms demo_terms() {
  return terms_of(slurp(std::string(KERFBOOK_ROOT) + "/demo_data/hargan.toml"));
}

inline JobTerms job_terms(const std::string& job) {
  JobTerms terms;
  terms.job = job;
  terms.customer = job;
  terms.convention.rounding = measure::BillRounding::total_whole;
  terms.practice = *scaling::find_practice("international-quarter");
  return terms;
}

inline SheetRef sheet_of(const std::string& day, int revision = 1, const std::string& why = "") {
  return {*read_day(day), 1, revision, why};
}

/// "1x4: 10/6 12/7; 2x6: 16/4" with length/pieces, as one day's facts of a species.
inline std::vector<Fact> tally(const SheetRef& sheet, const std::string& species, const std::string& lines) {
  std::vector<Fact> facts;
  std::string line;
  std::stringstream all(lines);
  while (std::getline(all, line, ';')) {
    const std::size_t colon = line.find(':');
    const std::vector<std::string> head = split_words(line.substr(0, colon));
    for (const std::string& item : split_words(line.substr(colon + 1))) {
      const std::size_t slash = item.find('/');
      Fact fact;
      fact.sheet = sheet;
      fact.species = species;
      fact.size = *measure::read_size(head[0]);
      if (head.size() > 1) fact.grade = head[1];
      fact.length = *measure::read_feet(item.substr(0, slash));
      fact.count = std::stoll(item.substr(slash + 1));
      facts.push_back(fact);
    }
  }
  return facts;
}

inline Fact sawing(const SheetRef& sheet, int minutes) {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::sawing;
  fact.count = minutes;
  return fact;
}

inline Fact charge_line(const SheetRef& sheet, const std::string& name, const Rational& quantity,
                        const std::string& text = "") {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::charge;
  fact.name = name;
  fact.quantity = quantity;
  fact.text = text;
  return fact;
}

inline Fact stop(const SheetRef& sheet, const std::string& cause, int minutes, const std::string& text,
                 bool charge) {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::stop;
  fact.name = cause;
  fact.minutes = minutes;
  fact.text = text;
  fact.chargeable = charge;
  return fact;
}

inline Fact teeth(const SheetRef& sheet, int count, const std::string& cause, const std::string& log) {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::teeth;
  fact.name = "head";
  fact.cause = cause;
  fact.log_tag = log;
  fact.quantity = count;
  return fact;
}

inline Fact move(const SheetRef& sheet, const std::string& from, const std::string& to,
                 const Rational& miles) {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::move;
  fact.name = from;
  fact.text = to;
  fact.quantity = miles;
  return fact;
}

inline Fact log_fact(const SheetRef& sheet, const std::string& tag, const std::string& spec,
                     const std::string& defect = "") {
  Fact fact;
  fact.sheet = sheet;
  fact.kind = FactKind::log;
  fact.species = "DF";
  fact.name = tag;
  fact.measured = true;
  fact.log = *scaling::read_log_spec(spec);
  if (!defect.empty()) fact.defects.push_back(*scaling::read_defect(defect));
  fact.length = fact.log.length;
  return fact;
}

inline void append(std::vector<Fact>& all, const std::vector<Fact>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

inline JobFacts job_facts(std::vector<Fact> facts) {
  JobFacts all;
  auto sheets = std::make_shared<Sheets>();
  for (const Fact& fact : facts) {
    if (fact.kind != FactKind::once) sheets->emplace(key_of(fact.sheet), fact.sheet);
  }
  all.sheets = sheets;
  all.facts = std::move(facts);
  return all;
}

inline Fact once() {
  Fact fact;
  fact.kind = FactKind::once;
  fact.sheet = {Day{}, 0, 0, ""};
  return fact;
}

inline Billed billed(const Draft& draft, const std::string& paper, bool division = false) {
  return {paper, division, false, draft.sheets, draft.items, draft.sawing, draft.minimum};
}

inline const BillLine& line_called(const Draft& draft, const std::string& start) {
  static const BillLine kNone;
  for (const BillLine& line : draft.lines)
    if (line.description.starts_with(start)) return line;
  FAIL_CHECK("no line begins: " << start);
  return kNone;
}

// ---- the demo week (invented): Oda Tervane's barn, Monday to Wednesday -----------------------------------------
inline std::vector<Fact> ter_week() {
  const SheetRef mon = sheet_of("2026-05-04");
  const SheetRef tue = sheet_of("2026-05-05");
  const SheetRef wed = sheet_of("2026-05-06");
  std::vector<Fact> all = tally(mon, "DF",
                                "1x4: 10/6 12/7 14/4 16/3; 1x6: 12/1 16/1; 1x8: 10/4 12/2 14/4 16/3; 1x10: "
                                "12/1 16/2; 2x6: 10/7 12/3 14/4 16/7;"
                                "2x8: 10/3 12/5 14/2 16/4; 2x10: 10/2 12/4 14/4 16/2; 4x4: 10/4 12/1 14/2 "
                                "16/3; 4x6: 10/3 12/4 14/3 16/4");
  append(all, tally(tue, "DF",
                    "1x4: 8/3 10/2 12/3 16/8; 1x8: 10/2 12/5 16/6; 2x6: 10/5 12/1 16/4; 2x8: 10/1 16/4; "
                    "2x10: 10/1 12/5 16/5;"
                    "4x4: 10/3 12/1 16/3; 4x6: 10/2 12/4 16/6"));
  append(
      all,
      tally(wed, "DF",
            "1x4: 10/1 12/3 14/1 16/1; 1x8: 12/2 14/2 16/1; 2x6: 12/1 16/1; 2x8: 12/1; 2x10: 12/2 14/2 16/1;"
            "4x4: 12/1 16/1; 4x6: 12/2 14/1 16/1"));
  all.push_back(stop(tue, "metal", 36, "fence staple in T17, 3 teeth", false));
  all.push_back(teeth(tue, 3, "metal", "T17"));
  all.push_back(stop(tue, "waiting", 45, "customer's tractor", true));
  all.push_back(move(wed, "Tervane farm", "yard", 23));
  all.push_back(once());
  return all;
}

inline std::vector<Fact> ter_logs() {
  const SheetRef mon = sheet_of("2026-05-04");
  const SheetRef tue = sheet_of("2026-05-05");
  const SheetRef wed = sheet_of("2026-05-06");
  std::vector<Fact> all;
  const char* monday[] = {"16x10", "17x10", "12x14", "19x12", "14x10", "18x16",
                          "16x14", "15x16", "14x12", "12x12", "16x16", "15x14"};
  const char* tuesday[] = {"15x12", "13x12", "13x10", "14x16", "15x12",
                           "13x16", "14x16", "12x16", "17x16", "16x10"};
  const char* wednesday[] = {"15x14", "14x12", "13x12", "13x16"};
  int tag = 0;
  const auto add = [&](const SheetRef& sheet, const char* spec) {
    ++tag;
    const std::string name = "T" + std::string(tag < 10 ? "0" : "") + std::to_string(tag);
    const std::string defect = tag == 5                              ? "15bf"
                               : tag == 8                            ? "10bf"
                               : tag == 17                           ? "5bf"
                               : tag == 20 || tag == 23 || tag == 25 ? "15bf"
                                                                     : "";
    all.push_back(log_fact(sheet, name, spec, defect));
  };
  for (const char* spec : monday) add(mon, spec);
  for (const char* spec : tuesday) add(tue, spec);
  for (const char* spec : wednesday) add(wed, spec);
  return all;
}

inline std::vector<Fact> qhh_week(bool corrected, int revision = 1) {
  const SheetRef thu = sheet_of("2026-05-07", revision, revision > 1 ? "bundle count" : "");
  std::vector<Fact> all = tally(thu, "WH",
                                std::string("2x4: 12/3 14/12 16/") + (corrected ? "23" : "32") +
                                    "; 2x6: 12/1 14/6 16/10; 2x8: 12/2 14/4 16/7");
  all.push_back(charge_line(thu, "bundling", 2));
  all.push_back(once());
  return all;
}

inline std::vector<Fact> mum_week() {
  return tally(sheet_of("2026-05-08"), "RC",
               "1x4: 8/1 10/4 12/5 16/2; 1x6: 10/9 12/10 16/9; 1x8: 10/7 12/9 16/16; 1x10: 10/2 12/1 16/1;"
               "5/4x4: 10/6 12/7 16/10; 5/4x6: 10/9 12/11 16/14");
}

}  // namespace kerfbook::billing
