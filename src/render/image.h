// image.h -- the mill's own sign at the head of its papers: which files are images that a page and a workbook can hold.
#pragma once

#include <string>

namespace kerfbook::render {

struct Image {
  std::string kind;  ///< "png", "jpeg"; empty = the file is missing or is neither
  std::string bytes;
};
/// Told by what the file holds, not by its name.
Image read_image(const std::string& file);

}  // namespace kerfbook::render
