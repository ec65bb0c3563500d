// under_no_job.h -- work that could be charged and that no job pays for, because its sheet does not say whose it is. It
// is never dropped: it is listed until a correction of the sheet places it, or until it is let go with a reason.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "paper/paper.h"
#include "price/bill.h"

namespace kerfbook::billing {

/// Stands for the job where one is asked for: `waive no-job 2026-05-05 sawing`.
inline constexpr std::string_view kNoJob = "no-job";
/// Everything of a sheet that is under no job.
inline constexpr std::string_view kAllOfIt = "all";

/// All of one kind on one sheet.
struct UnderNoJob {
  Day day;
  int shift = 1;
  std::string
      what;  ///< by which it is let go: sawing, logs, lumber, move, teeth, a stop's cause, a charge's name
  std::string words;       ///< "sawing time, 2:00"
  std::string content;     ///< exactly, one row a line; when it changes it is no longer let go
  std::vector<int> lines;  ///< of the sheet, rising, each once
  std::string let_go;      ///< the reason; empty = open
};

/// Up to and including `to`, by day. Sawing time, logs sawn and lumber count where the book knows a job at all; moves,
/// and stops and teeth for metal, where the mill file has a charge for them; what is marked to be charged always, also
/// under the mill's own work, which nobody pays.
std::vector<UnderNoJob> under_no_job(const book::Book& book, Day to);

/// Work let go, or listed again: in words, and the journal's entry for it.
struct LetGo {
  std::string words;
  book::Mark mark;
};

/// Lets work of a sheet go (`waiver.charge` is its `what`, or `all`), or, with `back`, lists it again: a paper for each.
/// Refused, naming what there is, when there is none such, or without a reason.
std::vector<LetGo> let_go(book::Book& book, const Waiver& waiver, Day day);

}  // namespace kerfbook::billing
