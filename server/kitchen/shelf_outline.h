// The front edge of what lies on a shelf, as steps from left to right.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>

namespace suppertide::kitchen {

// A value that is copied at each choice of a search, so it holds no memory of its own.
// Begins as one step at 0. Up to kMostCorners - 1 rectangles never make more steps than it can hold.
// Lengths are at most 32767 mm.
class ShelfOutline {
 public:
  static constexpr int kMostCorners = 16;

  struct Step {
    int index = 0;
    int x = 0;
    int limit = 0;
    int y = 0;
    int leftWall = 0;  // height of the neighbours; the shelf's depth stands for its side
    int rightWall = 0;
  };

  ShelfOutline(int width, int depth) : width_(width), depth_(depth) { corners_[0] = {0, 0}; }

  int count() const { return count_; }
  int xOf(int i) const { return corner(i).x; }
  int yOf(int i) const { return corner(i).y; }
  int limitOf(int i) const { return i + 1 < count_ ? corner(i + 1).x : width_; }
  // Whether something can lie against what is left of step `i`: the shelf's side, or a higher step.
  bool fallsAt(int i) const { return i == 0 || corner(i - 1).y > corner(i).y; }

  // A number of 64 bits for the outline together with `seed`; two that differ have the same one only by a
  // chance of 2^-64.
  std::uint64_t mixed(std::uint64_t seed) const {
    std::uint64_t mix = seed * 0x9e3779b97f4a7c15U;
    for (int i = 0; i < count_; ++i) {
      mix ^= static_cast<std::uint64_t>(corner(i).x) << 16 | static_cast<std::uint64_t>(corner(i).y);
      mix *= 0xff51afd7ed558ccdU;
      mix ^= mix >> 32;
    }
    return mix;
  }

  // The lowest step, the leftmost of several.
  Step lowest() const {
    int at = 0;
    for (int i = 1; i < count_; ++i)
      if (corner(i).y < corner(at).y) at = i;
    return {.index = at,
            .x = corner(at).x,
            .limit = at + 1 < count_ ? corner(at + 1).x : width_,
            .y = corner(at).y,
            .leftWall = at > 0 ? corner(at - 1).y : depth_,
            .rightWall = at + 1 < count_ ? corner(at + 1).y : depth_};
  }

  // Raises [x, limit), which lies on `step`, to `y` and joins equal neighbours.
  void raise(const Step& step, int x, int limit, int y) {
    const int behind = count_ - step.index - 1;
    std::array<Corner, kMostCorners> after;
    std::copy_n(corners_.begin() + step.index + 1, behind, after.begin());
    count_ = step.index;
    if (x > step.x) add(step.x, step.y);
    add(x, y);
    if (limit < step.limit) add(limit, step.y);
    // Only the first of those behind can have a new neighbour as high as itself.
    for (int i = 0; i < behind; ++i) add(after[index(i)].x, after[index(i)].y);
  }

 private:
  // From `x` to the next corner's x, taken or lost up to `y`.
  struct Corner {
    std::int16_t x;
    std::int16_t y;
  };
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  const Corner& corner(int i) const { return corners_[index(i)]; }
  void add(int x, int y) {
    if (count_ > 0 && corner(count_ - 1).y == y) return;
    corners_[index(count_++)] = {static_cast<std::int16_t>(x), static_cast<std::int16_t>(y)};
  }

  int width_;
  int depth_;
  int count_ = 1;
  std::array<Corner, kMostCorners> corners_;
};

}  // namespace suppertide::kitchen
