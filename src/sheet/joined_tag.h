// joined_tag.h -- `1 15/16x12`: log 1 with two readings of one end, or a log of 1-15/16 in? Internal to this room.
#pragma once

#include <optional>
#include <string>

#include "sheet/line_reader.h"

namespace kerfbook::sheet {

struct JoinedTag {
  std::string tag;
  std::string spec;  ///< what follows it: 15/16x12
};

/// The tag and the readings of the next word, when it is more likely these than a fraction; warns where it could be
/// either. Takes no word.
std::optional<JoinedTag> joined_tag(LineReader& line);

}  // namespace kerfbook::sheet
