// Text as people count it.
#pragma once

#include <string>

namespace suppertide::service {

// Characters in UTF-8 text.
inline int charactersOf(const std::string& text) {
  int count = 0;
  for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0) != 0x80 ? 1 : 0;
  return count;
}

}  // namespace suppertide::service
