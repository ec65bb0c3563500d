// mill_model.h -- the sawing model's log and mill out of what the book knows: a log as it was measured, a set-up, the mill
// file's targets and limits, and the sizes and lengths that were cut.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "mill/mill.h"
#include "scaling/scaling.h"
#include "tuning/sawing.h"

namespace kerfbook::tuning {

/// The log's ends, two readings averaged: as measured, else out of the middle or the girth, else the small end with the
/// taper, as log content is worked out. Its length is the nominal one with the mill's trim. nullopt of a log without a
/// diameter or a length.
std::optional<SawLog> saw_log(const scaling::LogMeasure& log, const scaling::Taper& taper);

/// A set-up as far as the model asks: thousandths of an inch, in a metric book hundredths of a millimetre.
struct SetupKerfs {
  std::int64_t head = 0;
  std::int64_t edger = 0;
  std::int64_t over = 0;  ///< what boards are cut over nominal where the mill file has no target
  bool operator==(const SetupKerfs&) const = default;
};
/// What the mill file says that a saw (head, edger, third) takes, in the same unit; nullopt when it says nothing.
std::optional<std::int64_t> kerf_of(const book::Mill& mill, std::string_view role);
/// What the book says of a set-up, in the same unit; what it does not say is absent.
struct SaidOfSetup {
  std::optional<std::int64_t> head;   ///< kerf of the head saw
  std::optional<std::int64_t> edger;  ///< kerf of the edger saw
  std::optional<std::int64_t> over;   ///< what boards are cut over nominal
};
/// What was said, and the rest from the mill file's saws; an edger of which nobody says anything takes what the head saw
/// does. Nothing of the head saw anywhere: nullopt, for a kerf that nobody gave is no kerf to reckon with.
std::optional<SetupKerfs> kerfs_of(const book::Mill& mill, const SaidOfSetup& said);

/// A size as it is cut for a job: to the mill file's target, else nominal with the set-up's oversize.
SawProduct saw_product(const book::Mill& mill, std::string_view job, const SetupKerfs& kerfs,
                       const measure::Size& size, const std::vector<measure::Length>& lengths);
/// A mill that can cut these sizes to these lengths for a job. `sizes` are nominal; the widest and thickest board are the
/// mill file's.
SawMill saw_mill(const book::Mill& mill, std::string_view job, const SetupKerfs& kerfs,
                 const std::vector<measure::Size>& sizes, const std::vector<measure::Length>& lengths);

}  // namespace kerfbook::tuning
