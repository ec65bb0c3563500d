#include "tuning/mill_model.h"

#include <cmath>
#include <numbers>

#include "base/text.h"

namespace kerfbook::tuning {

namespace {

Fine mean_of(const std::vector<measure::Length>& readings) {
  Fine sum = 0;
  for (const auto& reading : readings) sum += fine(reading);
  return readings.empty() ? 0 : sum / static_cast<Fine>(readings.size());
}

/// What the diameter grows over so much of the log, by the mill's taper.
Fine growth(Fine along, bool metric, const scaling::Taper& taper) {
  if (!metric) return fine_mils(taper.per_foot_mils) * along / kFineFoot;
  return (Rational(taper.per_metre) * Rational(along) / Rational(100'000))
      .rounded(0);  // hundredths of mm a metre
}

Fine mils(std::int64_t count, measure::System system) {
  if (system == measure::System::inch) return fine_mils(count);
  return (Rational(count * kFineInch) / Rational(2540)).rounded(0);
}

}  // namespace

std::optional<std::int64_t> kerf_of(const book::Mill& mill, std::string_view role) {
  for (const auto& saw : mill.saws) {
    if (same_word(saw.role, role) && saw.kerf_mils) return saw.kerf_mils;
  }
  return std::nullopt;
}

std::optional<SawLog> saw_log(const scaling::LogMeasure& log, const scaling::Taper& taper) {
  const Fine nominal = fine(log.length);
  const bool metric = log.length.system == measure::System::metric;
  const Fine whole = growth(nominal, metric, taper);
  Fine middle = mean_of(log.mid);
  if (middle == 0 && log.girth)
    middle = std::llround(static_cast<double>(fine(*log.girth)) / std::numbers::pi);
  SawLog found;
  found.small_end = mean_of(log.small);
  found.large_end = mean_of(log.large);
  if (found.small_end == 0 && middle > 0) found.small_end = middle - whole / 2;
  if (found.large_end == 0 && found.small_end > 0) found.large_end = found.small_end + whole;
  found.trim = fine(taper.trim);
  found.length = nominal + found.trim;
  if (nominal <= 0 || found.small_end <= 0) return std::nullopt;
  return found;
}

std::optional<SetupKerfs> kerfs_of(const book::Mill& mill, const SaidOfSetup& said) {
  const auto head = said.head ? said.head : kerf_of(mill, "head");
  if (!head) return std::nullopt;
  const auto edger = said.edger ? said.edger : kerf_of(mill, "edger");
  return SetupKerfs{*head, edger.value_or(*head), said.over.value_or(0)};
}

SawProduct saw_product(const book::Mill& mill, std::string_view job, const SetupKerfs& kerfs,
                       const measure::Size& size, const std::vector<measure::Length>& lengths) {
  SawProduct product;
  product.nominal = size;
  product.lengths = lengths;
  const auto target = book::target_for(mill, job, size);
  const Fine over = target ? 0 : mils(kerfs.over, mill.units);
  product.thickness = fine(target.value_or(size).thickness) + over;
  product.width = fine(target.value_or(size).width) + over;
  return product;
}

SawMill saw_mill(const book::Mill& mill, std::string_view job, const SetupKerfs& kerfs,
                 const std::vector<measure::Size>& sizes, const std::vector<measure::Length>& lengths) {
  SawMill made;
  made.head_kerf = mils(kerfs.head, mill.units);
  made.edger_kerf = mils(kerfs.edger, mill.units);
  if (mill.thickest_board) made.most_thickness = fine(*mill.thickest_board) + mils(kerfs.over, mill.units);
  if (mill.widest_board) made.most_width = fine(*mill.widest_board) + mils(kerfs.over, mill.units);
  for (const auto& size : sizes) made.products.push_back(saw_product(mill, job, kerfs, size, lengths));
  return made;
}

}  // namespace kerfbook::tuning
