// What the custom mutators of the fuzz targets share.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t maxSize);

namespace suppertide::fuzz {

// Hands a new input to libFuzzer, cut where there is no room.
inline std::size_t give(const std::string& input, std::uint8_t* data, std::size_t maxSize) {
  const std::size_t size = std::min(input.size(), maxSize);
  std::copy_n(input.begin(), size, reinterpret_cast<char*>(data));
  return size;
}

}  // namespace suppertide::fuzz
