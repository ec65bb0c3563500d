#include "fault/judge.h"

#include <algorithm>
#include <array>

namespace kerfbook::tests {
namespace {

constexpr int kDone = 0;
constexpr int kFailed = 3;

constexpr std::array kNotDoneWords{"nothing was changed"};
constexpr std::array kDoneWords{"all the same"};
constexpr std::array kUnsureWords{"look with kerfbook journal whether",
                                  "run this again, and then kerfbook verify",
                                  "remove it and make the key again", "it is not sure that all is saved"};
/// Said of a file that is whole, they are not true.
constexpr std::array kSlanders{"damaged",
                               "is not a book",
                               "is an empty file",
                               "is no copy of a book",
                               "is no key",
                               "changed this file",
                               "this should not have happened"};

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

template <class Words>
bool has_any(const std::string& text, const Words& words) {
  return std::any_of(std::begin(words), std::end(words), [&](const auto& word) { return has(text, word); });
}

std::string value(const Seen& seen, const std::string& name) {
  const auto found = seen.find(name);
  return found == seen.end() ? "" : found->second;
}

bool is_unfinished(const std::string& name) {
  return name.starts_with(".") || has(name, "/.") || name.ends_with("-journal");
}

std::string shown(const Ran& ran) {
  return "exit " + std::to_string(ran.code) + ": " + ran.err + (ran.out.size() < 300 ? ran.out : "");
}

class Judge {
 public:
  Judge(const Bench& bench, const Seen& seen, const Ran& ran, End end)
      : bench_(bench), seen_(seen), ran_(ran), end_(end), said_(ran.out + ran.err) {}

  Verdict give() {
    const std::string& decides = bench_.deed().decides;
    verdict_.done = !decides.empty() && value(seen_, decides) == value(bench_.after(), decides);
    look_at_files();
    look_for_lost();
    if (end_ != End::broken_off)
      listen();
    else if (has_any(said_, bench_.deed().done_words) && !decides.empty())
      hold("done", verdict_.done);
    return verdict_;
  }

 private:
  void wrong(const std::string& what) { verdict_.wrong.push_back(what); }

  /// Each file is as before or as after, and none is new before the one that decides.
  void look_at_files() {
    Seen all = bench_.before();
    all.insert(bench_.after().begin(), bench_.after().end());
    all.insert(seen_.begin(), seen_.end());
    const bool in_parts = bench_.deed().in_parts || end_ != End::ended;
    for (const auto& [name, unused] : all) {
      const std::string now = value(seen_, name);
      if (is_unfinished(name)) {
        if (end_ == End::ended) wrong("left behind: " + name);
        continue;
      }
      if (read_around() && name != kBook) continue;
      const bool as_before = now == value(bench_.before(), name);
      if (!as_before && now != value(bench_.after(), name))
        wrong(name + " is neither as before nor as after: " + now.substr(0, 2000));
      else if (!as_before && !verdict_.done && !bench_.deed().decides.empty() && !name.ends_with("/") &&
               !in_parts)
        wrong(name + " is there, but what it belongs to is not done");
    }
  }

  /// What was there and is to stay is there, under whichever name.
  void look_for_lost() {
    const auto holds = [](const Seen& folder, const std::string& content) {
      return std::any_of(folder.begin(), folder.end(),
                         [&](const auto& one) { return one.second == content; });
    };
    for (const auto& [name, content] : bench_.before())
      if (holds(bench_.after(), content) && !holds(seen_, content)) wrong("what was in " + name + " is lost");
  }

  void hold(const std::string& claim, bool true_) {
    verdict_.told = true;
    if (!true_) wrong("it says " + claim + ", and it is not so");
  }

  void listen() {
    const bool nothing_seen = bench_.deed().decides.empty();
    const bool done = has_any(said_, bench_.deed().done_words) || has_any(said_, kDoneWords);
    const bool not_done = has_any(said_, kNotDoneWords);
    const bool unsure = has_any(said_, kUnsureWords);
    if (has_any(said_, kSlanders) && !has(said_, "or the disk cannot be read") && !bench_.deed().may_doubt)
      wrong("it blames a file that is whole");
    if (ran_.code == kDone) return hold("all is done", is_as_after() || read_around());
    if (ran_.code < kFailed)
      return hold("refused, so nothing changed", seen_ == bench_.before() || nothing_seen);
    if (ran_.code != kFailed) return wrong("it ended with " + std::to_string(ran_.code));
    if (done && not_done) return wrong("it says done and not done");
    if (!done && !not_done && !unsure && bench_.deed().tells)
      return wrong("it does not say whether it is done");
    if (nothing_seen) return;
    if (done) hold("done", verdict_.done);
    if (not_done) hold("not done", !verdict_.done);
  }

  /// Old copies that the rule lets go may stay until another time.
  [[nodiscard]] bool is_as_after() const {
    Seen seen = seen_;
    std::erase_if(seen, [&](const auto& one) {
      return one.first.ends_with(".copy") && bench_.before().contains(one.first) &&
             !bench_.after().contains(one.first);
    });
    return seen == bench_.after();
  }

  /// It told of what it could not read, and did without.
  [[nodiscard]] bool read_around() const {
    return bench_.deed().may_doubt && (has(said_, "not to be read") || has(said_, "Doubtful: "));
  }

  const Bench& bench_;
  const Seen& seen_;
  const Ran& ran_;
  End end_;
  std::string said_;
  Verdict verdict_;
};

}  // namespace

Verdict judge(const Bench& bench, const Seen& seen, const Ran& ran, End end) {
  Verdict verdict = Judge(bench, seen, ran, end).give();
  for (std::string& one : verdict.wrong) one += "\n  " + shown(ran);
  return verdict;
}

std::vector<std::string> judge_again(const Bench& bench, const Seen& seen, const Ran& ran) {
  std::vector<std::string> wrong;
  const Deed& deed = bench.deed();
  if (ran.code != kDone && !has_any(ran.out + ran.err, deed.again_words))
    wrong.push_back("done once more, it does not come through");
  const bool may_refuse = deed.in_parts && ran.code != kDone;
  if (!deed.decides.empty() && !may_refuse && value(seen, deed.decides) != value(bench.after(), deed.decides))
    wrong.push_back("done once more, it is not as after");
  for (const auto& [name, now] : seen) {
    if (is_unfinished(name) && !may_refuse)
      wrong.push_back("left behind, though it was done once more: " + name);
    if (has(now, "NOT SOUND") || has(now, "CANNOT BE OPENED")) wrong.push_back(name + " " + now);
  }
  for (std::string& one : wrong) one += "\n  " + shown(ran);
  return wrong;
}

}  // namespace kerfbook::tests
