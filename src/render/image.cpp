#include "render/image.h"

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace kerfbook::render {

Image read_image(const std::string& file) {
  constexpr std::uintmax_t kLargest = 16 << 20;  // bytes: a picture of a page at a printer's resolution
  std::error_code ignored;
  // Looked at before it is opened: opening a pipe waits for who writes into it.
  if (file.empty() || !std::filesystem::is_regular_file(file, ignored)) return {};
  if (std::filesystem::file_size(file, ignored) > kLargest) return {};
  std::ifstream stream(file, std::ios::binary);
  if (!stream) return {};
  Image image{"", {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()}};
  constexpr std::size_t kPngHead = 24;  // to where its width and height stand
  if (image.bytes.starts_with("\x89PNG\r\n\x1a\n") && image.bytes.size() >= kPngHead) image.kind = "png";
  if (image.bytes.starts_with("\xff\xd8\xff")) image.kind = "jpeg";
  return image.kind.empty() ? Image{} : image;
}

}  // namespace kerfbook::render
