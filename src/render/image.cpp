#include "render/image.h"

#include <filesystem>

#include "base/error.h"
#include "base/input.h"

namespace kerfbook::render {

Image read_image(const std::string& file) {
  constexpr InputLimit kLimit{"a picture", 16 << 20, "make it smaller"};  // a page at a printer's resolution
  std::error_code ignored;
  // Looked at before it is opened: opening a pipe waits for who writes into it.
  if (file.empty() || !std::filesystem::is_regular_file(file, ignored)) return {};
  Image image;
  try {
    image.bytes = read_input(file, kLimit);
  } catch (const Refused&) {
    return {};
  }
  constexpr std::size_t kPngHead = 24;  // to where its width and height stand
  if (image.bytes.starts_with("\x89PNG\r\n\x1a\n") && image.bytes.size() >= kPngHead) image.kind = "png";
  if (image.bytes.starts_with("\xff\xd8\xff")) image.kind = "jpeg";
  return image.kind.empty() ? Image{} : image;
}

}  // namespace kerfbook::render
