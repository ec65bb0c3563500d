// spellings.h -- the words a mill file may use where one of a few things is meant, and reading them.
// The words of counting (as-cut, total-whole ...) are measure/convention.h's own.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "measure/convention.h"
#include "measure/length.h"
#include "scaling/practice.h"

namespace kerfbook::book {

/// Each reads one word, whatever its case, with - or _ or a blank inside. The Slip names the nearest word, or all.
Result<scaling::DiameterRounding> read_diameter_word(std::string_view typed);
Result<scaling::ReadingsJoin> read_readings_word(std::string_view typed);
Result<scaling::ResultRounding> read_result_word(std::string_view typed);  ///< "5" and "0.001" are words here
Result<scaling::TaperShare> read_taper_word(std::string_view typed);
Result<measure::ThicknessRule> read_thickness_word(std::string_view typed);
Result<measure::LengthRule> read_length_word(std::string_view typed);
Result<measure::BillRounding> read_rounding_word(std::string_view typed);
Result<measure::System> read_units_word(std::string_view typed);
Result<bool> read_paper_word(std::string_view typed);  ///< true = A4
Result<std::string> read_dates_word(std::string_view typed);
Result<int> read_weekday_word(std::string_view typed);  ///< 1 = Monday; three letters are enough
Result<std::string> read_owner_word(std::string_view typed);

}  // namespace kerfbook::book
