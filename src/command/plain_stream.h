// plain_stream.h -- an output that nothing can upset a screen through: what is written to it goes on as written_out()
// (base/text.h) has it. Every word of a command goes through one; rendered answers, which may be binary, do not.
#pragma once

#include <ostream>
#include <streambuf>

namespace kerfbook::command {

class PlainStream : public std::ostream {
 public:
  /// `to` must outlive this.
  explicit PlainStream(std::ostream& to) : std::ostream(nullptr), buffer_(to) { rdbuf(&buffer_); }

 private:
  /// Keeps nothing back. A text must come in one piece, as << writes it: half a character is no UTF-8.
  class Buffer : public std::streambuf {
   public:
    explicit Buffer(std::ostream& to) : to_(to) {}

   protected:
    std::streamsize xsputn(const char* text, std::streamsize size) override;
    int_type overflow(int_type byte) override;
    int sync() override { return to_.flush() ? 0 : -1; }

   private:
    std::ostream& to_;
  };

  Buffer buffer_;
};

}  // namespace kerfbook::command
