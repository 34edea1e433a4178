#include "client/link/request_id.h"

#include <cstdint>
#include <random>

namespace suppertide::link {

std::string newRequestId() {
  static constexpr char kDigits[] = "0123456789abcdef";
  std::random_device entropy;
  std::string id;
  std::uint32_t bits = 0;
  for (int digit = 0; digit < 32; ++digit) {
    if (digit % 8 == 0) bits = entropy();
    if (digit == 8 || digit == 12 || digit == 16 || digit == 20) id += '-';
    std::uint32_t value = bits & 0xfU;
    if (digit == 12) value = 4;                      // the version
    if (digit == 16) value = (value & 0x3U) | 0x8U;  // the variant
    id += kDigits[value];
    bits >>= 4;
  }
  return id;
}

}  // namespace suppertide::link
