#include "base/input.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "base/error.h"

namespace kerfbook {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse_longer(std::string_view name, const InputLimit& limit) {
  throw Refused(std::string(name) + ": longer than " + std::string(limit.kind) + " may be, " +
                shown_bytes(limit.most) + "; " + std::string(limit.instead));
}

}  // namespace

std::string read_input(const std::string& file, const InputLimit& limit) {
  std::error_code error;
  const fs::file_status status = fs::status(file, error);
  if (fs::is_directory(status)) throw Refused(file + ": is a folder, not a file");
  if (fs::is_regular_file(status)) {
    const std::uintmax_t size = fs::file_size(file, error);
    if (!error && size > limit.most) refuse_longer(file, limit);
  }
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw Refused(file + ": cannot be read (" + std::strerror(errno) + ")");
  return read_input(stream, file, limit);
}

std::string read_input(std::istream& stream, std::string_view name, const InputLimit& limit) {
  std::string bytes;
  std::array<char, 64 * 1024> piece{};
  while (bytes.size() <= limit.most) {
    const std::size_t wanted = std::min(piece.size(), limit.most + 1 - bytes.size());
    stream.read(piece.data(), static_cast<std::streamsize>(wanted));
    bytes.append(piece.data(), static_cast<std::size_t>(stream.gcount()));
    if (stream.bad()) throw Refused(std::string(name) + ": cannot be read to its end");
    if (!stream) return bytes;
  }
  refuse_longer(name, limit);
}

std::string shown_bytes(std::size_t bytes) {
  constexpr std::size_t kKiB = 1024;
  if (bytes >= kKiB * kKiB && bytes % (kKiB * kKiB) == 0) return std::to_string(bytes / kKiB / kKiB) + " MiB";
  if (bytes >= kKiB && bytes % kKiB == 0) return std::to_string(bytes / kKiB) + " KiB";
  return std::to_string(bytes) + " bytes";
}

}  // namespace kerfbook
