#include "base/count.h"

#include "base/exact.h"

namespace kerfbook {

std::string counted(std::int64_t count, std::string_view one, std::string_view many) {
  const std::string noun = count == 1     ? std::string(one)
                           : many.empty() ? std::string(one) + "s"
                                          : std::string(many);
  return grouped({count, 0}) + " " + noun;
}

}  // namespace kerfbook
