// A SELECT for what was asked: conditions nobody needs are left out, and nothing moves. report/filters.h.
#include <doctest/doctest.h>

#include "report/filters.h"

using namespace kerfbook::report;

namespace {

const Value kNone = std::monostate{};
const Parameters kAll{{"from", std::int64_t{-1'000'000}}, {"to", std::int64_t{1'000'000}}, {"job", kNone}};
const Parameters kOne{{"from", std::int64_t{20'000}}, {"to", std::int64_t{20'006}}, {"job", Value("TER")}};

/// What is made of it, checked to be as long with its lines where they were; runs of blanks as one.
std::string squeezed(const std::string& sql, const Parameters& parameters) {
  const std::string made = fitted(sql, parameters);
  CHECK(made.size() == sql.size());
  for (std::size_t i = 0; i < sql.size(); ++i) CHECK((sql[i] == '\n') == (made[i] == '\n'));
  std::string out;
  for (const char c : made) {
    if (c != ' ' || out.empty() || out.back() != ' ') out += c;
  }
  return out;
}

}  // namespace

TEST_CASE("a filter nobody asked for is left out, line for line and byte for byte") {
  CHECK(squeezed("SELECT 1\nWHERE (:job IS NULL OR job =\n :job) AND x", kAll) ==
        "SELECT 1\nWHERE (1 \n ) AND x");
  CHECK(squeezed("(:job IS NULL OR (a) = ')')", kAll) == "(1 )");
}

TEST_CASE("a filter asked for is what is behind its OR") {
  CHECK(squeezed("(:job IS NULL OR job = :job)", kOne) == "( job = :job)");
}

TEST_CASE("a period is left out only when all days are asked for") {
  CHECK(squeezed("WHERE r.day BETWEEN :from AND :to AND x", kAll) == "WHERE 1 AND x");
  CHECK(squeezed("WHERE day BETWEEN :from AND :to", kAll) == "WHERE 1 ");
  CHECK(squeezed("WHERE r.day BETWEEN :from AND :to", kOne) == "WHERE r.day BETWEEN :from AND :to");
  CHECK(squeezed("WHERE sawday BETWEEN :from AND :to", kAll) == "WHERE sawday BETWEEN :from AND :to");
}

TEST_CASE("what stands in quotes or in a remark is no condition") {
  for (const std::string sql : {"SELECT '(:job IS NULL OR x)'", "-- (:job IS NULL OR x)\nSELECT 1",
                                "/* day BETWEEN :from AND :to */ SELECT 'day BETWEEN :from AND :to'"}) {
    CHECK(fitted(sql, kAll) == sql);
  }
}
