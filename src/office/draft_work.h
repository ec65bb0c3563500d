// draft_work.h -- what every deed of the office begins and ends with. Private to office.cpp, divide.cpp, waiting.cpp and
// money_deeds.cpp.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "office/agreed_terms.h"
#include "paper/ledger.h"
#include "paper/paper.h"

namespace kerfbook::billing {

/// What a draft is made of.
struct Work {
  Deal deal;
  std::vector<Billed> before;  ///< what earlier papers froze, each with the prices it was made by
  JobFacts facts;
  std::vector<Paper> about;  ///< papers of the job, or of the buyer
};

Work work_of_job(const book::Book& book, const std::string& job, Day to);
Work work_of_sale(const book::Book& book, const std::string& buyer, Day to);
Draft draft_with(const Work& work, Day today, bool division = false);
/// The draft of a job's or a buyer's facts, given the papers there are about them.
Draft draft_with(const Deal& deal, const std::vector<Billed>& before, const std::vector<Paper>& about,
                 const JobFacts& facts, Day today, bool division);
/// What earlier papers of the deal's job or buyer froze.
std::vector<Billed> billed_before(Deals& deals, const Deal& deal, const std::vector<Paper>& about);
/// Refused, with the first of them, when the draft has problems.
void refuse_problems(const Draft& draft);
/// What the draft found goes on the paper.
void take_over(const Draft& draft, Paper& paper);

/// A paper with the next number of its kind, made when `papers` were all there was.
Paper begun(const std::vector<Paper>& papers, PaperKind kind, Day day, std::int64_t first = 1);
/// Into the journal; `paper` then knows its entry.
void post(book::Book& book, Paper& paper);
/// Refused with the reason when the paper cannot follow on the ledger.
void check(const Ledger& ledger, const Paper& paper);
/// Refused when there is no reason.
void need_reason(const std::string& why);
/// The job's code as the mill file spells it. Refused for own work, and for a job that is in no sheet and no file.
std::string known_job(const book::Book& book, const std::string& job);

}  // namespace kerfbook::billing
