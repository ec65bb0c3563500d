// outputs_zip.cpp -- the parts of a workbook, which is a zip file (PKWARE, .ZIP File Format Specification, 4.3.7 to 4.3.16),
// inflated with zlib. Written by nobody who writes ours: what the directory, the head of a part and its bytes say of it must
// agree.
#include <zlib.h>

#include <algorithm>
#include <cstdint>
#include <stdexcept>

#include "render/outputs.h"

namespace kerfbook::render {
namespace {

[[noreturn]] void refuse(const std::string& what) {
  throw std::runtime_error("zip: " + what);
}

/// A number of so many bytes, the least first.
std::size_t number_at(const std::string& zip, std::size_t at, std::size_t bytes) {
  if (at > zip.size() || bytes > zip.size() - at) refuse("it ends too early");
  std::size_t out = 0;
  for (std::size_t i = bytes; i-- > 0;) out = out << 8U | static_cast<unsigned char>(zip[at + i]);
  return out;
}

std::string words_at(const std::string& zip, std::size_t at, std::size_t bytes) {
  if (at > zip.size() || bytes > zip.size() - at) refuse("it ends too early");
  return zip.substr(at, bytes);
}

std::string inflated(const std::string& packed, std::size_t size, const std::string& name) {
  z_stream stream{};
  constexpr int kNoHead = -15;  // a part has no head or foot of zlib's own
  if (inflateInit2(&stream, kNoHead) != Z_OK) refuse("zlib does not begin");
  std::string in = packed;
  std::string out(size + 1, '\0');  // one more, to see that it ends where it should
  stream.next_in = reinterpret_cast<Bytef*>(in.data());
  stream.avail_in = static_cast<uInt>(in.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const int ended = inflate(&stream, Z_FINISH);
  const bool whole = ended == Z_STREAM_END && stream.avail_in == 0 && stream.total_out == size;
  inflateEnd(&stream);
  if (!whole) refuse(name + " does not inflate to what its head says");
  out.pop_back();
  return out;
}

/// What both the directory and the head of a part tell of it, from the place where their fields are alike.
struct Told {
  std::size_t flags = 0;
  std::size_t method = 0;
  std::size_t sum = 0;
  std::size_t packed = 0;
  std::size_t size = 0;
  std::string name;
  bool operator==(const Told&) const = default;
};

Told told_at(const std::string& zip, std::size_t alike, std::size_t name) {
  return {number_at(zip, alike, 2),      number_at(zip, alike + 2, 2),
          number_at(zip, alike + 8, 4),  number_at(zip, alike + 12, 4),
          number_at(zip, alike + 16, 4), words_at(zip, name, number_at(zip, alike + 20, 2))};
}

constexpr std::size_t kHead = 0x04034b50;
constexpr std::size_t kInDirectory = 0x02014b50;
constexpr std::size_t kEnd = 0x06054b50;

ZipPart part_at(const std::string& zip, std::size_t entry) {
  const Told told = told_at(zip, entry + 8, entry + 46);
  const std::size_t head = number_at(zip, entry + 42, 4);
  if (number_at(zip, head, 4) != kHead) refuse(told.name + " is not where the directory says");
  Told again = told_at(zip, head + 6, head + 30);
  constexpr std::size_t kSizesFollow = 8;
  if ((told.flags & kSizesFollow) != 0) {
    again.sum = told.sum;
    again.packed = told.packed;
    again.size = told.size;
  }
  if (!(told == again)) refuse(told.name + " is told otherwise by the directory than by its head");
  const std::size_t from = head + 30 + told.name.size() + number_at(zip, head + 28, 2);
  const std::string packed = words_at(zip, from, told.packed);
  constexpr std::size_t kStored = 0;
  constexpr std::size_t kDeflated = 8;
  if (told.method != kStored && told.method != kDeflated) refuse(told.name + " is packed in another way");
  ZipPart part{told.name, told.method == kStored ? packed : inflated(packed, told.size, told.name)};
  const auto sum =
      ::crc32(0, reinterpret_cast<const Bytef*>(part.bytes.data()), static_cast<uInt>(part.bytes.size()));
  if (part.bytes.size() != told.size || sum != told.sum)
    refuse(told.name + " has other bytes than its sum says");
  return part;
}

}  // namespace

std::vector<ZipPart> zip_parts(const std::string& zip) {
  constexpr std::size_t kEndSize = 22;
  if (zip.size() < kEndSize) refuse("it is too short");
  const std::size_t end = zip.size() - kEndSize;
  if (number_at(zip, end, 4) != kEnd) refuse("it does not end as a zip file does");
  const std::size_t count = number_at(zip, end + 10, 2);
  std::size_t entry = number_at(zip, end + 16, 4);
  if (entry + number_at(zip, end + 12, 4) != end) refuse("its directory is not before its end");
  std::vector<ZipPart> parts;
  for (std::size_t i = 0; i < count; ++i) {
    if (number_at(zip, entry, 4) != kInDirectory) refuse("its directory is not of so many parts");
    parts.push_back(part_at(zip, entry));
    entry +=
        46 + number_at(zip, entry + 28, 2) + number_at(zip, entry + 30, 2) + number_at(zip, entry + 32, 2);
  }
  if (entry != end) refuse("its directory is not of so many parts");
  return parts;
}

std::string part_of(const std::vector<ZipPart>& parts, const std::string& name) {
  const auto is = [&](const ZipPart& part) { return part.name == name; };
  const auto found = std::find_if(parts.begin(), parts.end(), is);
  return found == parts.end() ? "" : found->bytes;
}

std::string part_of(const std::string& zip, const std::string& name) {
  return part_of(zip_parts(zip), name);
}

}  // namespace kerfbook::render
