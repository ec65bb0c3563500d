#include "tuning/like_for_like.h"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <map>
#include <random>

#include "tuning/numbers.h"
#include "tuning/yield_curve.h"

namespace kerfbook::tuning {
namespace {

using Runs = std::vector<RunSawn>;

std::optional<double> ratio(double over, double under) {
  if (under <= 0) return std::nullopt;
  return over / under;
}

/// Sums of one diameter class, the boards of its runs shared out.
struct Class {
  std::size_t logs = 0;
  double lumber = 0;
  double wood = 0;
  double scale = 0;
  double gross = 0;
  double content = 0;
  Class& operator+=(const Class& more);
};
using Classes = std::map<int, Class>;

Class& Class::operator+=(const Class& more) {
  logs += more.logs;
  lumber += more.lumber;
  wood += more.wood;
  scale += more.scale;
  gross += more.gross;
  content += more.content;
  return *this;
}

double weight_of(const LogSawn& log) {
  return log.diameter * log.diameter * log.length;
}

Classes classes_of(const Runs& runs, double width) {
  Classes out;
  for (const auto& run : runs) {
    double whole = 0;
    for (const auto& log : run.logs) whole += weight_of(log);
    for (const auto& log : run.logs) {
      const double share = whole > 0 ? weight_of(log) / whole : 0;
      out[static_cast<int>(std::floor(log.diameter / width))] +=
          {1, run.lumber * share, run.wood * share, log.scale, log.gross, log.content};
    }
  }
  return out;
}

Class sum_of(const Classes& classes) {
  Class out;
  for (const auto& [size, one] : classes) out += one;
  return out;
}

Measures measures_of(const Class& sums) {
  Measures out;
  if (const auto over = ratio(sums.lumber, sums.scale)) out.overrun = 100 * (*over - 1);
  if (const auto over = ratio(sums.lumber, sums.gross)) out.gross_overrun = 100 * (*over - 1);
  out.lrf = ratio(sums.lumber, sums.content);
  if (const auto wood = ratio(sums.wood, sums.content)) out.recovery = 100 * *wood;
  return out;
}

/// All boards of both sides, class by class, over what this side's logs would have been for them.
std::optional<double> over_one_mix(const Classes& side, const Classes& other, double Class::*top,
                                   double Class::*bottom) {
  double boards = 0;
  double logs = 0;
  for (const auto& [size, here] : side) {
    const auto there = other.find(size);
    if (there == other.end() || here.*top <= 0) continue;
    const double mix = here.*top + there->second.*top;
    boards += mix;
    logs += mix * (here.*bottom) / (here.*top);
  }
  return ratio(boards, logs);
}

Measures one_mix(const Classes& side, const Classes& other) {
  Measures out;
  if (const auto over = over_one_mix(side, other, &Class::lumber, &Class::scale))
    out.overrun = 100 * (*over - 1);
  if (const auto over = over_one_mix(side, other, &Class::lumber, &Class::gross))
    out.gross_overrun = 100 * (*over - 1);
  out.lrf = over_one_mix(side, other, &Class::lumber, &Class::content);
  if (const auto wood = over_one_mix(side, other, &Class::wood, &Class::content)) out.recovery = 100 * *wood;
  return out;
}

Side side_of(const Runs& runs, const Classes& classes, const Classes& other) {
  Side out;
  const Class sums = sum_of(classes);
  out.runs = runs.size();
  out.logs = sums.logs;
  out.crude = measures_of(sums);
  out.one_mix = one_mix(classes, other);
  out.bf_a_foot3 = ratio(sums.lumber, sums.wood).value_or(0);
  for (const auto& [size, one] : classes) out.left_out += other.contains(size) ? 0 : one.logs;
  double diameters = 0;
  double dull = 0;
  double of_known = 0;
  for (const auto& run : runs) {
    for (const auto& log : run.logs) diameters += log.diameter;
    if (!run.since_teeth) continue;
    dull += run.lumber * *run.since_teeth;
    of_known += run.lumber;
  }
  out.mean_diameter = ratio(diameters, static_cast<double>(sums.logs)).value_or(0);
  out.since_teeth = ratio(dull, of_known);
  return out;
}

std::vector<RunYield> yields_of(const Runs& runs, double RunSawn::*got) {
  std::vector<RunYield> out;
  for (const auto& run : runs) {
    RunYield one;
    for (const auto& log : run.logs) {
      const YieldTerms terms = terms_of(log.diameter, log.length);
      for (std::size_t i = 0; i < terms.size(); ++i) one.terms[i] += terms[i];
    }
    one.logs = static_cast<double>(run.logs.size());
    one.got = run.*got;
    out.push_back(one);
  }
  return out;
}

/// How often each of so many runs is drawn, with putting back. Of the standard generator, whose numbers are the same
/// everywhere; the library's distributions are not.
std::vector<int> drawn(std::size_t runs, std::mt19937_64& generator) {
  std::vector<int> times(runs, 0);
  for (std::size_t i = 0; i < runs; ++i) ++times[generator() % runs];
  return times;
}

/// The yields of both sides, and the curve of the earlier one.
class AgainstCurve {
 public:
  AgainstCurve(std::vector<RunYield> before, std::vector<RunYield> after)
      : before_(std::move(before)), after_(std::move(after)), terms_(terms_for(before_.size())) {
    while (terms_ > 0 && !(curve_ = fit_yield(before_, terms_))) --terms_;
  }
  [[nodiscard]] int terms() const { return curve_ ? terms_ : 0; }

  [[nodiscard]] std::optional<Gain> gain(double confidence) const {
    const auto spare = static_cast<double>(before_.size()) - terms_;
    if (!curve_ || spare < 1 || after_.size() < 2) return std::nullopt;
    const auto seen = log_ratio(*curve_, {});
    if (!seen) return std::nullopt;
    Gain out;
    std::mt19937_64 generator(kSeed);
    const auto n = static_cast<double>(after_.size());
    // A resampled spread is too small by what the fit, or the mean, takes of the runs.
    out.error_before = resampled_before(generator) * std::sqrt(static_cast<double>(before_.size()) / spare);
    out.error_after = resampled_after(generator) * std::sqrt(n / (n - 1));
    const boost::math::students_t student(std::min(spare, n - 1));  // the fewer: rather too wide
    out.reach = boost::math::quantile(boost::math::complement(student, (1 - confidence) / 2));
    const double reach = out.reach * std::hypot(out.error_before, out.error_after);
    out.percent = 100 * std::expm1(*seen);
    out.lower = 100 * std::expm1(*seen - reach);
    out.upper = 100 * std::expm1(*seen + reach);
    return out;
  }

 private:
  /// Logarithm of what the later runs gave over what the curve expects of them.
  [[nodiscard]] std::optional<double> log_ratio(const YieldCurve& curve,
                                                const std::vector<int>& times) const {
    double got = 0;
    double expected = 0;
    for (std::size_t r = 0; r < after_.size(); ++r) {
      const double count = times.empty() ? 1 : times[r];
      got += count * after_[r].got;
      expected += count * curve.expected(after_[r].terms);
    }
    if (got <= 0 || expected <= 0) return std::nullopt;
    return std::log(got / expected);
  }

  double resampled_before(std::mt19937_64& generator) const {
    std::vector<double> ratios;
    for (int i = 0; i < kResamples; ++i) {
      const auto curve = fit_yield(before_, terms_, drawn(before_.size(), generator));
      if (const auto one = curve ? log_ratio(*curve, {}) : std::nullopt) ratios.push_back(*one);
    }
    return sample_of(ratios).spread;
  }

  double resampled_after(std::mt19937_64& generator) const {
    std::vector<double> ratios;
    for (int i = 0; i < kResamples; ++i) {
      if (const auto one = log_ratio(*curve_, drawn(after_.size(), generator))) ratios.push_back(*one);
    }
    return sample_of(ratios).spread;
  }

  std::vector<RunYield> before_;
  std::vector<RunYield> after_;
  int terms_;
  std::optional<YieldCurve> curve_;
};

Verdict verdict_of(const LikeForLike& found) {
  if (found.before.logs < kFewLogs || found.after.logs < kFewLogs) return Verdict::too_few_logs;
  if (!found.lumber || !found.wood) return Verdict::cannot_tell;
  if (found.lumber->lower > 0) return found.wood->upper < 0 ? Verdict::counted_only : Verdict::better;
  if (found.lumber->upper < 0) return found.wood->lower > 0 ? Verdict::cannot_tell : Verdict::worse;
  return Verdict::cannot_tell;
}

/// Logs of the later side at which the limits would just leave out no change.
std::optional<std::size_t> more_logs_for(const LikeForLike& found) {
  constexpr double kWorthKnowing = 0.02;
  constexpr double kReach = 2;  // of many runs
  constexpr double kMost = 100'000;
  if (!found.lumber) return std::nullopt;
  const double difference = std::max(std::abs(std::log1p(found.lumber->percent / 100)), kWorthKnowing);
  const double left = std::pow(difference / kReach, 2) - std::pow(found.lumber->error_before, 2);
  if (left <= 0) return std::nullopt;
  const auto logs = static_cast<double>(found.after.logs);
  const double wanted = logs * std::pow(found.lumber->error_after, 2) / left;
  if (wanted <= logs || wanted > kMost) return std::nullopt;
  return static_cast<std::size_t>(std::ceil(wanted - logs));
}

bool differ(std::optional<double> one, std::optional<double> other, double by) {
  return one && other && (*one > by * *other || *other > by * *one);
}

}  // namespace

LikeForLike compare_runs(Runs before, Runs after, double class_width, double confidence) {
  const auto no_use = [](const RunSawn& run) { return run.logs.empty() || run.lumber <= 0; };
  std::erase_if(before, no_use);
  std::erase_if(after, no_use);
  const Classes first = classes_of(before, class_width);
  const Classes second = classes_of(after, class_width);
  LikeForLike out;
  out.before = side_of(before, first, second);
  out.after = side_of(after, second, first);
  const AgainstCurve lumber(yields_of(before, &RunSawn::lumber), yields_of(after, &RunSawn::lumber));
  const AgainstCurve wood(yields_of(before, &RunSawn::wood), yields_of(after, &RunSawn::wood));
  out.terms = lumber.terms();
  out.lumber = lumber.gain(confidence);
  out.wood = wood.gain(confidence);
  out.verdict = verdict_of(out);
  if (out.verdict == Verdict::too_few_logs)
    out.more_logs = kFewLogs - std::min(std::min(out.before.logs, out.after.logs), kFewLogs);
  if (out.verdict == Verdict::cannot_tell) out.more_logs = more_logs_for(out);
  out.teeth_differ = differ(out.before.since_teeth, out.after.since_teeth, 1.5);
  out.sizes_differ = differ(out.before.bf_a_foot3, out.after.bf_a_foot3, 1.02);
  return out;
}

std::string in_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::too_few_logs:
      return "too few logs";
    case Verdict::cannot_tell:
      return "cannot tell";
    case Verdict::better:
      return "better";
    case Verdict::worse:
      return "worse";
    case Verdict::counted_only:
      return "counts more, cuts less";
  }
  return "";
}

}  // namespace kerfbook::tuning
