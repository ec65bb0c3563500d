#include "sheet/facts.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include "base/text.h"

namespace kerfbook::sheet {
namespace {

constexpr int kItemsInALine = 1000;
constexpr std::int64_t kMostTags = 200;

/// A tag cut before its trailing digits: T and 13.
struct TagParts {
  std::string_view prefix;
  std::string_view digits;
};

TagParts parts_of(std::string_view tag) {
  std::size_t at = tag.size();
  while (at > 0 && tag[at - 1] >= '0' && tag[at - 1] <= '9') --at;
  return {tag.substr(0, at), tag.substr(at)};
}

std::optional<std::int64_t> number_of(std::string_view digits) {
  std::int64_t value = 0;
  const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (digits.empty() || digits.size() > 9 || fault != std::errc() || end != digits.data() + digits.size())
    return std::nullopt;
  return value;
}

/// The number with the leading zeros of the range's first tag: T09, T10.
std::string padded(std::int64_t number, std::size_t width) {
  std::string digits = std::to_string(number);
  return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
}

/// What a line does to the context, and how many dated facts it gives.
class Effect {
 public:
  explicit Effect(Context& context) : context_(context) {}

  std::size_t operator()(const Remark&) const { return 0; }
  std::size_t operator()(const Site& site) const { return set(context_.site, site.name); }
  std::size_t operator()(const Job& job) const { return set(context_.job, job.code); }
  std::size_t operator()(const Species& species) const { return set(context_.species, species.code); }
  std::size_t operator()(const Grade& grade) const { return set(context_.grade, grade.code); }
  std::size_t operator()(const Bundle& bundle) const { return set(context_.bundle, bundle.tag); }
  std::size_t operator()(const Setup& setup) const {
    context_.setup = setup.name;
    return 1;
  }
  std::size_t operator()(const Move& move) const {
    context_.site = move.to;
    return 1;
  }
  std::size_t operator()(const Crew& crew) const { return crew.hands.size(); }
  std::size_t operator()(const LogLine& log) const { return std::max<std::size_t>(1, spread(log).size()); }
  std::size_t operator()(const Tally& tally) const { return tally.items.size(); }
  std::size_t operator()(const RandomTally& tally) const { return tally.boards.size(); }
  std::size_t operator()(const Sold& sold) const { return std::max<std::size_t>(1, sold.items.size()); }
  /// Any other line is one fact, and nothing holds from it on.
  template <class Other>
  std::size_t operator()(const Other&) const {
    return 1;
  }

 private:
  static std::size_t set(std::string& word, const std::string& to) {
    word = to;
    return 0;
  }
  Context& context_;
};

/// The place of what stands above the first `site` or `move` line: where the move left from; else the only place there
/// is, when it was named before any work. Empty when it cannot be told.
std::string first_place(const Sheet& sheet) {
  std::string place;
  bool worked = false;
  for (const Line& line : sheet.lines) {
    worked = worked || is_work(line.fact);
    if (const auto* move = std::get_if<Move>(&line.fact)) return place.empty() ? move->from : place;
    const auto* site = std::get_if<Site>(&line.fact);
    if (site == nullptr) continue;
    if (worked && place.empty()) return "";
    if (!place.empty() && !same_word(place, site->name)) return "";
    place = site->name;
  }
  return place;
}

/// Which lines stand in a heading below the first job: after a line of the place, above the line of another job, with
/// no log and no board between. Their job is not that of the work above.
std::vector<bool> in_headings(const Sheet& sheet) {
  std::vector<bool> marked(sheet.lines.size(), false);
  std::string job;
  std::optional<std::size_t> begun;
  for (std::size_t at = 0; at < sheet.lines.size(); ++at) {
    const Fact& fact = sheet.lines[at].fact;
    if (is_work(fact)) begun.reset();
    const bool moved = std::holds_alternative<Move>(fact);  // which is part of the work it left
    if (!begun && (moved || std::holds_alternative<Site>(fact))) begun = moved ? at + 1 : at;
    if (const auto* next = std::get_if<Job>(&fact)) {
      const bool other = !job.empty() && !same_word(job, next->code);
      for (std::size_t i = begun.value_or(at); other && i < at; ++i) marked[i] = true;
      job = next->code;
      begun.reset();
    }
  }
  return marked;
}

}  // namespace

std::vector<std::string> spread(const LogLine& log) {
  std::vector<std::string> tags;
  for (const std::string& written : log.tags) {
    for (std::string& tag : spread_tags(written)) tags.push_back(std::move(tag));
  }
  return tags;
}

std::vector<DatedFact> facts(const Sheet& sheet) {
  std::vector<DatedFact> out;
  const std::vector<bool> headings = in_headings(sheet);
  const std::vector<std::string> jobs = jobs_of(sheet);
  Context context;
  context.site = first_place(sheet);
  if (jobs.size() == 1) context.job = jobs.front();
  for (std::size_t at = 0; at < sheet.lines.size(); ++at) {
    const Line& line = sheet.lines[at];
    const std::size_t count = std::visit(Effect(context), line.fact);
    Context here = context;
    if (headings[at]) here.job.clear();
    if (const std::string& named = named_job(line.fact); !named.empty()) here.job = named;
    for (std::size_t item = 0; item < count; ++item) {
      out.push_back({line.place.line * kItemsInALine + static_cast<int>(item), here, &line, item});
    }
  }
  return out;
}

std::vector<std::string> spread_tags(const std::string& written) {
  const std::size_t dash = written.rfind('-');
  if (dash == std::string::npos) return {written};
  const TagParts from = parts_of(std::string_view(written).substr(0, dash));
  const TagParts to = parts_of(std::string_view(written).substr(dash + 1));
  if (from.digits.empty() || to.digits.empty()) return {written};  // Y-7, T13-a: a tag with a dash in it
  const auto first = number_of(from.digits);
  const auto last = number_of(to.digits);
  const bool same_prefix = to.prefix.empty() || same_word(from.prefix, to.prefix);
  const bool rises = first && last && same_prefix && *last > *first && *last - *first < kMostTags;
  const bool letters_twice = !to.prefix.empty() && same_word(from.prefix, to.prefix);
  if (!rises && !letters_twice) return {written};  // 08-01, 08-08, 26-1041: a tag with a dash in it
  if (!rises && (!first || first != last)) return {};
  std::vector<std::string> tags;
  for (std::int64_t number = *first; number <= *last; ++number) {
    tags.push_back(std::string(from.prefix) + padded(number, from.digits.size()));
  }
  return tags;
}

const std::string& named_job(const Fact& fact) {
  static const std::string kNone;
  return std::visit(
      [](const auto& of) -> const std::string& {
        if constexpr (requires { of.job; })
          return of.job;
        else
          return kNone;
      },
      fact);
}

std::string* job_named_at_end(Fact& fact) {
  return std::holds_alternative<Charge>(fact) ? nullptr
                                              : std::visit(
                                                    [](auto& of) -> std::string* {
                                                      if constexpr (requires { of.job; })
                                                        return &of.job;
                                                      else
                                                        return nullptr;
                                                    },
                                                    fact);
}

bool is_work(const Fact& fact) {
  return std::holds_alternative<LogLine>(fact) || std::holds_alternative<Tally>(fact) ||
         std::holds_alternative<LinealTally>(fact) || std::holds_alternative<RandomTally>(fact);
}

bool could_be_charged(const Fact& fact) {
  if (const auto* log = std::get_if<LogLine>(&fact)) return !log->received && !log->left_on_mill;
  if (const auto* stop = std::get_if<Stop>(&fact)) return stop->charge || same_word(stop->cause, "metal");
  if (const auto* teeth = std::get_if<Teeth>(&fact)) return same_word(teeth->cause, "metal");
  return is_work(fact) || std::holds_alternative<Sawing>(fact) || std::holds_alternative<Move>(fact) ||
         std::holds_alternative<Charge>(fact);
}

std::vector<std::string> jobs_of(const Sheet& sheet) {
  std::vector<std::string> jobs;
  for (const Line& line : sheet.lines) {
    const auto* job = std::get_if<Job>(&line.fact);
    if (job == nullptr) continue;
    const bool known = std::any_of(jobs.begin(), jobs.end(),
                                   [&](const std::string& one) { return same_word(one, job->code); });
    if (!known) jobs.push_back(job->code);
  }
  return jobs;
}

}  // namespace kerfbook::sheet
