#include "server/base/ids.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <random>

namespace suppertide {

std::string newId() {
  std::random_device source;
  std::array<std::uint32_t, 4> words;
  std::generate(words.begin(), words.end(), [&] { return source(); });
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
