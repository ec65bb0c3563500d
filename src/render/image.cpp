#include "render/image.h"

#include <filesystem>
#include <fstream>
#include <iterator>

namespace kerfbook::render {

Image read_image(const std::string& file) {
  std::error_code ignored;
  std::ifstream stream(file, std::ios::binary);
  if (file.empty() || !stream || !std::filesystem::is_regular_file(file, ignored)) return {};
  Image image{"", {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()}};
  constexpr std::size_t kPngHead = 24;  // to where its width and height stand
  if (image.bytes.starts_with("\x89PNG\r\n\x1a\n") && image.bytes.size() >= kPngHead) image.kind = "png";
  if (image.bytes.starts_with("\xff\xd8\xff")) image.kind = "jpeg";
  return image.kind.empty() ? Image{} : image;
}

}  // namespace kerfbook::render
