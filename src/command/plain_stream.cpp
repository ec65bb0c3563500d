#include "command/plain_stream.h"

#include <string_view>

#include "base/text.h"

namespace kerfbook::command {

std::streamsize PlainStream::Buffer::xsputn(const char* text, std::streamsize size) {
  return to_ << written_out(std::string_view(text, static_cast<std::size_t>(size))) ? size : 0;
}

PlainStream::Buffer::int_type PlainStream::Buffer::overflow(int_type byte) {
  if (traits_type::eq_int_type(byte, traits_type::eof())) return traits_type::not_eof(byte);
  const char c = traits_type::to_char_type(byte);
  const bool of_several = static_cast<unsigned char>(c) >= 0x80;
  const bool written = of_several ? static_cast<bool>(to_.put(c)) : xsputn(&c, 1) == 1;
  return written ? byte : traits_type::eof();
}

}  // namespace kerfbook::command
