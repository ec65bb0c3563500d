// two_minimums_test.cpp -- a job of which a sheet stands at the prices it was billed by and another at those of now, each
// with a minimum for the job: the greater of the two holds. Common practice, no source; worked by hand.
#include <memory>

#include "helpers.h"

using namespace kerfbook;
using namespace kerfbook::billing;

namespace {

const Day kFriday = *read_day("2026-05-08");

Terms with_minimum(const std::string& sum) {
  return terms_of("[[price]]\nbasis = \"bf\"\nrate = 1.00\nminimum_job = " + sum + "\n");
}

/// Monday's 100 bf billed by the first terms; what Tuesday's 100 bf add by the second.
Draft second_bill(const std::string& first, const std::string& second) {
  const JobTerms job = job_terms("TER");
  std::vector<Fact> facts = tally(sheet_of("2026-05-04"), "DF", "1x12: 10/10");
  const Terms then = with_minimum(first);
  Billed before = billed(make_draft(then, job, job_facts(facts), {}, {}, kFriday), "invoice 1");
  before.by = std::make_shared<const Priced>(Priced{std::make_shared<const Terms>(then), job});
  append(facts, tally(sheet_of("2026-05-05"), "DF", "1x12: 10/10"));
  return make_draft(with_minimum(second), job, job_facts(facts), {before}, {}, kFriday);
}

}  // namespace

TEST_CASE("where prices of two revisions meet, the greater of their minimum charges holds for the job") {
  // 250.00 were billed, 150.00 of them the minimum's; 200.00 of sawing in all are now raised to 400.00
  const Draft raised = second_bill("250.00", "400.00");
  CHECK(line_called(raised, "Minimum charge for the job").amount.minor == 5000);
  CHECK(raised.total.minor == 15000);
  // 400.00 were billed, and that it was does not fall with the new list: nothing more is asked for
  const Draft kept = second_bill("400.00", "250.00");
  CHECK(line_called(kept, "Minimum charge billed before, set against this work").amount.minor == -10000);
  CHECK(kept.total.minor == 0);
  // alike, nothing of the difference is the minimum's but what the work now reaches by itself
  CHECK(second_bill("250.00", "250.00").total.minor == 0);
}
