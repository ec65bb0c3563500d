// tooth_lives_test.cpp -- a mill's record made into lives of edges and sets.
#include "tuning/tooth_lives.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <string>
#include <vector>

using namespace kerfbook::tuning;

namespace {

Sawn sawn(double bf, const std::string& species = "DF") {
  return {species, bf, 2 * bf, bf / 200};
}

SawWork work(const std::string& saw, const std::string& action, int day, const std::string& cause = "") {
  return {saw, action, cause, action == "full-set" ? 22 : 0, day};
}

std::vector<ToothLife> of(LifeOf kind, const std::vector<ToothLife>& lives) {
  std::vector<ToothLife> out;
  for (const auto& life : lives) {
    if (life.of == kind) out.push_back(life);
  }
  return out;
}

}  // namespace

TEST_CASE(
    "an edge lives from one work on its saw to the next; a strike cuts it short, the end of the record too") {
  const auto lives = tooth_lives({sawn(500), work("head", "touched-up", 1), sawn(300), sawn(100),
                                  work("head", "replaced", 2, "metal"), sawn(250),
                                  work("head", "full-set", 3, "wear"), sawn(80)});
  const auto edges = of(LifeOf::edge, lives);
  REQUIRE(edges.size() == 3);  // what came before the first work is no life
  CHECK(edges[0].bf == 400);
  CHECK(edges[0].lineal_ft == 800);
  CHECK(edges[0].hours == doctest::Approx(2));
  CHECK(edges[0].by == EndedBy::strike);
  CHECK(edges[0].cause == "metal");
  CHECK(edges[0].from_day == 1);
  CHECK(edges[0].to_day == 2);
  CHECK_FALSE(as_life(edges[0], LifeIn::bf).ended);
  CHECK(edges[1].bf == 250);
  CHECK(edges[1].by == EndedBy::wear);
  CHECK(edges[1].teeth == 22);
  CHECK(as_life(edges[1], LifeIn::hours).ended);
  CHECK(as_life(edges[1], LifeIn::hours).length == doctest::Approx(1.25));
  CHECK(as_life(edges[1], LifeIn::lineal_ft).length == 500);
  CHECK(as_lives(edges, LifeIn::bf).at(1).length == 250);
  CHECK(edges[2].bf == 80);
  CHECK(edges[2].by == EndedBy::record);
  CHECK_FALSE(as_life(edges[2], LifeIn::bf).ended);
}

TEST_CASE("a set lives from one full set to the next, through touching up and single teeth") {
  const auto lives =
      tooth_lives({work("head", "touched-up", 1), sawn(100), work("head", "full-set", 2), sawn(1000),
                   work("head", "touched-up", 3), sawn(700), work("head", "replaced", 4, "stone"), sawn(300),
                   work("head", "full-set", 5, "wear"), sawn(50)});
  const auto sets = of(LifeOf::set, lives);
  REQUIRE(sets.size() == 2);
  CHECK(sets[0].bf == 2000);
  CHECK(sets[0].by == EndedBy::wear);
  CHECK(sets[1].by == EndedBy::record);
  CHECK(of(LifeOf::edge, lives).size() == 5);
}

TEST_CASE("saws have lives of their own, and shanks or a tensioned blade end none") {
  const auto lives = tooth_lives({work("head", "touched-up", 1), work("edger", "touched-up", 1), sawn(100),
                                  work("head", "shanks", 2), work("edger", "blade-tensioned", 2), sawn(100),
                                  work("head", "touched-up", 3), sawn(40)});
  REQUIRE(lives.size() == 3);
  CHECK(lives[0].saw == "head");
  CHECK(lives[0].bf == 200);
  CHECK(lives[1].saw == "edger");
  CHECK(lives[1].bf == 240);
  CHECK(lives[2].bf == 40);
}

TEST_CASE("two works with nothing sawn between are one, and a life's species is the one sawn most") {
  const auto lives =
      tooth_lives({work("head", "touched-up", 1), work("head", "swaged", 1), sawn(100, "RC"), sawn(300, "WH"),
                   sawn(250, "RC"), work("head", "touched-up", 2), work("head", "full-set", 2)});
  REQUIRE(lives.size() == 1);
  CHECK(lives[0].species == "RC");
  CHECK(lives[0].bf == 650);
}

TEST_CASE("metal and stone are strikes, whatever their letters; what is taken off again is not sawn") {
  CHECK(is_strike("Metal"));
  CHECK(is_strike("stone"));
  CHECK_FALSE(is_strike("wear"));
  CHECK_FALSE(is_strike(""));
  const auto lives = tooth_lives({work("head", "touched-up", 1), sawn(100), sawn(-30)});
  CHECK(lives.at(0).bf == 70);
  CHECK(tooth_lives({work("head", "touched-up", 1), sawn(-30)}).at(0).bf == 0);
  CHECK(tooth_lives({}).empty());
  CHECK(tooth_lives({work("head", "full-set", 1)}).empty());
}

TEST_CASE("edge lives of a saw add up to all that was sawn since its first work") {
  CHECK(rc::check([] {
    std::vector<SawRecord> record;
    double since = 0;
    bool begun = false;
    for (const int what : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 400))) {
      if (what < 300) {
        record.emplace_back(sawn(what));
        if (begun) since += what;
      } else {
        record.emplace_back(
            work("head", what < 350 ? "touched-up" : "full-set", what, what % 3 ? "" : "metal"));
        begun = true;
      }
    }
    double sum = 0;
    for (const auto& life : of(LifeOf::edge, tooth_lives(record))) sum += life.bf;
    RC_ASSERT(std::abs(sum - since) < 1e-9);
  }));
}

TEST_CASE("shanks and a tensioned blade leave an edge be; every other work renews it") {
  for (const char* action : {"touched-up", "replaced", "full-set", "swaged", "blade-changed"})
    CHECK(renews_edge(action));
  CHECK_FALSE(renews_edge("shanks"));
  CHECK_FALSE(renews_edge("blade-tensioned"));
}
