#include "server/base/ids.h"

#include <sys/random.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdint>
#include <system_error>

namespace suppertide {

namespace {

// One call to the kernel: std::random_device asks the processor what it can do each time it is made, which
// costs 40 us on a virtual machine.
std::array<std::uint32_t, 4> randomWords() {
  std::array<std::uint32_t, 4> words{};
  if (getrandom(words.data(), sizeof words, 0) != static_cast<ssize_t>(sizeof words))
    throw std::system_error(errno, std::generic_category(), "random numbers");
  return words;
}

}  // namespace

std::string newId() {
  std::array<std::uint32_t, 4> words = randomWords();
  words[1] = (words[1] & 0xFFFF0FFFu) | 0x00004000u;  // version 4
  words[2] = (words[2] & 0x3FFFFFFFu) | 0x80000000u;  // variant 10
  static constexpr char kDigits[] = "0123456789abcdef";
  std::string id;
  for (std::size_t nibble = 0; nibble < 32; ++nibble) {
    if (nibble == 8 || nibble == 12 || nibble == 16 || nibble == 20) id += '-';
    id += kDigits[(words[nibble / 8] >> (28 - 4 * (nibble % 8))) & 0xFu];
  }
  return id;
}

bool isId(std::string_view text) {
  const auto allowed = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || c == '.';
  };
  return !text.empty() && text.size() <= 64 && std::all_of(text.begin(), text.end(), allowed);
}

}  // namespace suppertide
