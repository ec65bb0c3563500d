// load.h -- load slips: which lumber of a job leaves the yard, and the paper that says so.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "billing/facts.h"
#include "book/book.h"
#include "render/document.h"

namespace kerfbook::billing {

struct Deal;

struct LoadAsk {
  std::string job;
  std::vector<std::string> bundles;  ///< empty = all of the job's
  std::string consignee;             ///< lines after the customer's own address
  std::string vehicle;
  std::string driver;
};

/// Boards of one bundle, species, grade, size and length; or, without a count, a run of lineal feet.
struct LoadLine {
  std::string bundle;
  std::string species;
  std::string grade;
  Size size;
  Length length;  ///< of each board; without pieces, the whole run
  std::int64_t pieces = 0;
  [[nodiscard]] bool lineal() const { return pieces == 0; }
};

/// What is tallied in the wanted bundles and on no slip yet, in order. `gone`: what earlier slips of the job took.
std::vector<LoadLine> left_to_load(const std::vector<Fact>& facts, const std::vector<std::string>& bundles,
                                   const std::vector<LoadLine>& gone);

render::Document load_document(const Deal& deal, const LoadAsk& ask, const std::vector<LoadLine>& lines,
                               std::int64_t number, Day day);

}  // namespace kerfbook::billing
