// fault_test.cpp -- whatever goes wrong in the midst of a deed: a call of the system that fails, the program killed, the power
// cut. The book is as before or as after, never between, and what is said is so.
//
// A sample of all that can go wrong, the same every run; KERFBOOK_FAULTS=all takes everything, and KERFBOOK_FAULTS_IN=pay
// only deeds with that in their name.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>

#include "fault/judge.h"

using namespace kerfbook::tests;

namespace {

struct Figures {
  int calls = 0;
  int failed = 0;
  int killed = 0;
  int cut = 0;
  int before = 0;
  int after = 0;
  int told = 0;  ///< messages held against what was done
};

std::string setting(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

/// `most` of them, evenly spread; where they begin is another for each deed.
template <class One>
std::vector<One> sample(const std::vector<One>& all, std::size_t most, std::size_t seed) {
  if (setting("KERFBOOK_FAULTS") == "all" || all.size() <= most) return all;
  std::vector<One> some;
  const std::size_t offset = seed * 7919 % all.size();
  for (std::size_t i = 0; i < most; ++i) some.push_back(all[(offset + i * all.size() / most) % all.size()]);
  return some;
}

/// In which ways a call can go wrong.
std::vector<std::string> failures_of(const Record& call) {
  switch (call.call) {
    case CALL_OPEN:
      if (call.made == 1) return {"eio", "enospc", "eio-on", "enospc-on"};
      return {"eio"};
    case CALL_READ:
      return {"eio", "eintr", "short"};
    case CALL_WRITE:
      return {"eio", "enospc", "eintr", "short", "eio-on", "enospc-on"};
    case CALL_TRUNCATE:
      return {"eio", "enospc"};
    case CALL_SYNC:
      return {"eio", "enospc", "eio-on"};
    case CALL_NAME:
      if (call.made == 'u') return {"eio", "eio-on"};
      return {"eio", "enospc", "eio-on", "enospc-on"};
    case CALL_LOCK:
      return {"eio", "eagain"};
    case CALL_SAY:
      return {"eio", "enospc"};
    default:
      return {"eio"};
  }
}

struct Room {
  Bench bench;
  std::size_t seed;
  Figures figures{};

  void count(const Verdict& verdict, const std::string& where) {
    ++(verdict.done ? figures.after : figures.before);
    figures.told += verdict.told ? 1 : 0;
    for (const std::string& wrong : verdict.wrong) report(where, wrong);
  }
  /// Now that nothing goes wrong any more. What lies there may have been tried before.
  void do_again(const std::string& where) {
    if (bench.is_known(0)) return;
    const Ran again = bench.run_again();
    for (const auto& wrong : judge_again(bench, bench.look(), again)) report(where, wrong);
  }
  void report(const std::string& where, const std::string& wrong) const {
    FAIL_CHECK(bench.deed().name << ", " << where << ": " << wrong);
  }
};

std::string words_of(const Fault& fault, const Event& event) {
  return fmt::format("{} at call {} ({}{} {} {})", fault.how, fault.at, event.head.call,
                     event.head.folder != 0 ? " folder" : "", event.from, event.to);
}

struct Planned {
  Fault fault;
  Event event;
};

void fail_calls(Room& room) {
  std::vector<Planned> changing;
  std::vector<Planned> others;
  for (const Event& event : room.bench.clean_log())
    if (event.counted())
      for (const std::string& how : failures_of(event.head))
        (event.changes() ? changing : others).push_back({{event.head.number, how}, event});
  std::vector<Planned> planned = sample(changing, 5, room.seed);
  const auto more = sample(others, 2, room.seed);
  planned.insert(planned.end(), more.begin(), more.end());
  for (const auto& [fault, event] : planned) {
    const Ran ran = room.bench.run(fault);
    const bool gone = fault.how == "eio-on";
    room.count(judge(room.bench, room.bench.look(), ran, gone ? End::disk_gone : End::ended),
               words_of(fault, event));
    if (gone) room.do_again(words_of(fault, event));
    ++room.figures.failed;
  }
}

void kill_calls(Room& room) {
  std::vector<Planned> planned;
  for (const Event& event : room.bench.clean_log()) {
    if (!event.counted()) continue;
    planned.push_back({{event.head.number, "kill"}, event});
    if (event.head.call == CALL_WRITE) planned.push_back({{event.head.number, "half"}, event});
  }
  for (const auto& [fault, event] : sample(planned, 3, room.seed)) {
    const Ran ran = room.bench.run(fault);
    const std::string where = words_of(fault, event);
    if (ran.code != 128 + SIGKILL) room.report(where, "was not killed");
    room.count(judge(room.bench, room.bench.look(), ran, End::broken_off), where);
    room.do_again(where);
    ++room.figures.killed;
  }
}

std::vector<Layout> layouts() {
  using Part = Layout::Part;
  std::vector<Layout> all;
  for (const Part data : {Part::lost, Part::kept})
    for (const Part names : {Part::lost, Part::kept}) all.push_back({data, names});
  for (unsigned seed = 1; seed <= 4; ++seed) all.push_back({Part::some, Part::some, seed});
  all.push_back({Part::some, Part::kept, 5});
  all.push_back({Part::lost, Part::some, 6});
  return all;
}

/// Where the power is cut: after so many events of the run.
struct Cut {
  std::size_t events;
  Layout layout;
};

/// What had been said by then.
Ran said_by(const Bench& bench, std::size_t events) {
  Ran ran;
  ran.code = events == bench.clean_log().size() ? 0 : 128 + SIGKILL;
  std::size_t out = 0;
  std::size_t err = 0;
  for (std::size_t i = 0; i < events; ++i) {
    const Record& head = bench.clean_log()[i].head;
    if (head.call == CALL_SAY && head.failed == 0)
      (head.at == 1 ? out : err) += static_cast<std::size_t>(head.length);
  }
  ran.out = bench.clean().out.substr(0, out);
  ran.err = bench.clean().err.substr(0, err);
  return ran;
}

/// Of all cuts those that are made, in order: at the end always, at other times more often where something was made
/// safe, named or said than between.
std::vector<Cut> chosen_cuts(const std::vector<Event>& log, std::size_t seed) {
  std::vector<Cut> end;
  std::vector<Cut> turns;
  std::vector<Cut> others;
  for (std::size_t events = 1; events <= log.size(); ++events) {
    const Event& last = log[events - 1];
    const char call = last.head.call;
    const bool turn = call == CALL_SYNC || call == CALL_NAME || call == CALL_SAY;
    if (events < log.size() && !last.changes()) continue;
    for (const Layout& layout : layouts())
      (events == log.size() ? end : turn ? turns : others).push_back({events, layout});
  }
  std::vector<Cut> all = sample(turns, 5, seed);
  for (const auto& more : {sample(others, 3, seed), end}) all.insert(all.end(), more.begin(), more.end());
  std::stable_sort(all.begin(), all.end(), [](const Cut& a, const Cut& b) { return a.events < b.events; });
  return all;
}

void cut_power(Room& room) {
  Bench& bench = room.bench;
  const auto& log = bench.clean_log();
  Disk& disk = bench.disk();
  std::size_t applied = 0;
  for (const auto& [events, layout] : chosen_cuts(log, room.seed)) {
    while (applied < events) disk.apply(log[applied++]);
    bench.lay(disk, layout);
    ++room.figures.cut;
    if (bench.is_known(events)) continue;
    const bool at_end = events == log.size();
    const std::string where =
        fmt::format("power cut after event {} of {}, {}", events, log.size(), words_of(layout));
    room.count(judge(bench, bench.look(), said_by(bench, events), at_end ? End::ended : End::broken_off),
               where);
    if (!at_end) room.do_again(where);
  }
}

void print(const std::vector<std::pair<std::string, Figures>>& all) {
  std::string text = fmt::format("{:<22}{:>7}{:>8}{:>8}{:>8}{:>9}{:>8}{:>10}\n", "deed", "calls", "failed",
                                 "killed", "cut", "before", "after", "messages");
  const auto line = [&](const std::string& name, const Figures& one) {
    text += fmt::format("{:<22}{:>7}{:>8}{:>8}{:>8}{:>9}{:>8}{:>10}\n", name, one.calls, one.failed,
                        one.killed, one.cut, one.before, one.after, one.told);
  };
  Figures sum;
  for (const auto& [name, one] : all) {
    line(name, one);
    for (int Figures::*const part : {&Figures::calls, &Figures::failed, &Figures::killed, &Figures::cut,
                                     &Figures::before, &Figures::after, &Figures::told})
      sum.*part += one.*part;
  }
  line("all", sum);
  MESSAGE(text);
}

}  // namespace

TEST_CASE(
    "whatever fails or ends a deed half-way, the book is as before or as after, and what is said is so") {
  if (*KERFBOOK_SANITIZED != '\0') {
    MESSAGE("skipped under the sanitizers: they stand in place of the same calls as the fault layer");
    return;
  }
  std::vector<std::pair<std::string, Figures>> all;
  for (std::size_t i = 0; i < deeds().size(); ++i) {
    const Deed& deed = deeds()[i];
    if (deed.name.find(setting("KERFBOOK_FAULTS_IN")) == std::string::npos) continue;
    Room room{Bench(deed), i + 1};
    for (const Event& event : room.bench.clean_log()) room.figures.calls += event.counted() ? 1 : 0;
    fail_calls(room);
    kill_calls(room);
    cut_power(room);
    all.emplace_back(deed.name, room.figures);
  }
  REQUIRE(!all.empty());
  print(all);
}
