// Which lengths some of a few rectangles make, laid one after the other, each either way round.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <deque>
#include <memory>
#include <vector>

#include "server/kitchen/shelf_packing.h"

namespace suppertide::kitchen {

// A bit for each length from 0 to 64 * kWords - 1 mm.
template <std::size_t kWords>
class Lengths {
 public:
  static constexpr int kLongest = static_cast<int>(64 * kWords) - 1;

  bool contains(int length) const {
    const auto at = static_cast<std::size_t>(length);
    return (words_[at / 64] >> (at % 64) & 1U) != 0;
  }
  void add(int length) {
    const auto at = static_cast<std::size_t>(length);
    words_[at / 64] |= std::uint64_t{1} << (at % 64);
  }
  // Adds each of `others`, longer by `by`; what becomes too long is dropped.
  void addShifted(const Lengths& others, int by) {
    const std::size_t whole = static_cast<std::size_t>(by) / 64;
    const int part = by % 64;
    for (std::size_t to = kWords; to-- > whole;) {
      words_[to] |= others.words_[to - whole] << part;
      if (part > 0 && to > whole) words_[to] |= others.words_[to - whole - 1] >> (64 - part);
    }
  }
  // The longest up to `limit`; there is one, as 0 is in every set that is asked.
  int longestUpTo(int limit) const {
    auto at = static_cast<std::size_t>(limit) / 64;
    std::uint64_t rest = words_[at] & (~std::uint64_t{0} >> (63 - limit % 64));
    while (rest == 0) rest = words_[--at];
    return static_cast<int>(at) * 64 + 63 - std::countl_zero(rest);
  }

 private:
  std::array<std::uint64_t, kWords> words_ = {};
};

// The sums of every set of rectangles, each worked out when it is first asked for.
template <std::size_t kWords>
class LengthSums {
 public:
  explicit LengthSums(const std::vector<Footprint>& singles)
      : singles_(singles), sums_(std::size_t{1} << singles.size(), nullptr) {
    known_.emplace_back().add(0);
    sums_[0] = &known_.back();
  }

  // Of a set of bits, one for each rectangle.
  const Lengths<kWords>& of(std::uint32_t set) {
    if (sums_[set] != nullptr) return *sums_[set];
    const Lengths<kWords>& others = of(set & (set - 1));
    const Footprint& one = singles_[static_cast<std::size_t>(std::countr_zero(set))];
    Lengths<kWords>& sums = known_.emplace_back(others);
    for (const int side : {one.width, one.depth})
      if (side <= Lengths<kWords>::kLongest) sums.addShifted(others, side);
    sums_[set] = &sums;
    return sums;
  }

 private:
  std::vector<Footprint> singles_;
  std::deque<Lengths<kWords>> known_;
  std::vector<const Lengths<kWords>*> sums_;  // by set; null until it is asked for
};

}  // namespace suppertide::kitchen
