#include "render/html_text.h"

#include <cctype>
#include <cstdint>
#include <string_view>

#include "base/text.h"
#include "render/cell.h"
#include "render/image.h"

namespace kerfbook::render {
namespace {

std::string base64(std::string_view bytes) {
  constexpr std::string_view kSigns = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    std::uint32_t three = 0;
    for (std::size_t k = 0; k < 3; ++k)
      three = three << 8U | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0U);
    for (std::size_t k = 0; k < 4; ++k)
      out += i + k <= bytes.size() ? kSigns[three >> (18 - 6 * k) & 63U] : '=';
  }
  return out;
}

}  // namespace

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : fit_to_print(text)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&apos;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string style_words(const std::string& text) {
  std::string out = "\"";
  for (const char c : one_line(text)) {
    const auto byte = static_cast<unsigned char>(c);
    constexpr const char* kDigits = "0123456789abcdef";
    if (byte >= 0x80 || c == ' ' || std::isalnum(byte) != 0) {
      out += c;
    } else {
      // The blank ends the escape and is no part of the text.
      out += std::string("\\0000") + kDigits[byte >> 4U] + kDigits[byte & 15U] + " ";
    }
  }
  return out + "\"";
}

std::string inlined_image(const std::string& file) {
  const Image image = read_image(file);
  return image.kind.empty() ? "" : "data:image/" + image.kind + ";base64," + base64(image.bytes);
}

}  // namespace kerfbook::render
