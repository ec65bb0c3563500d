// load_slip.h -- load slips: which lumber of a job leaves the yard, the paper that says so, and what takes it back.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "price/bill.h"
#include "price/share.h"
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

/// A job's lumber before a load: what was sawn, and what of it is gone or not the customer's.
struct Yard {
  std::vector<Fact> sawn;            ///< facts of other kinds are passed over
  std::vector<LoadLine> gone;        ///< by load slips that stand
  std::vector<ShareLine> divided;    ///< lines of every division so far: the mill's part stays
  std::vector<Item> undivided = {};  ///< shares that no division covers yet
};

/// What the customer can take of the wanted bundles (of all, when none is named), and a sentence for each thing that
/// was asked for and is not taken. No more of a stack than lies there, and nothing that is still to be divided.
struct Loadable {
  std::vector<LoadLine> lines;
  std::vector<std::string> left_out;
};
Loadable left_to_load(const Yard& yard, const std::vector<std::string>& bundles);

render::Document load_document(const Deal& deal, const LoadAsk& ask, const std::vector<LoadLine>& lines,
                               std::int64_t number, Day day);

}  // namespace kerfbook::billing
