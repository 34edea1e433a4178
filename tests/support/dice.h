// Random choices that come out alike on every machine, which the standard distributions do not promise.
#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

namespace suppertide {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed * 0x9E3779B97F4A7C15ULL + 1) {}
  // A whole number in [low, high].
  int between(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  // A multiple of `pitch` in [low, high]; both ends multiples of it.
  int between(int low, int high, int pitch) { return pitch * between(low / pitch, high / pitch); }
  bool chance(int perCent) { return between(1, 100) <= perCent; }
  template <typename T>
  const T& oneOf(const std::vector<T>& values) {
    return values[static_cast<std::size_t>(between(0, static_cast<int>(values.size()) - 1))];
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace suppertide
