// A half-open span [start, limit) on any ordered axis.
//
// Two spans that only touch do not overlap: a bake ending at 18:00 and one
// starting at 18:00 share the oven in turn, not at once.
#pragma once

#include <algorithm>

namespace suppertide {

template <typename T>
struct Interval {
  T start{};
  T limit{};

  bool empty() const { return !(start < limit); }
  bool contains(const T& point) const { return !(point < start) && point < limit; }
  bool overlaps(const Interval& other) const { return start < other.limit && other.start < limit; }
  Interval intersect(const Interval& other) const {
    return {std::max(start, other.start), std::min(limit, other.limit)};
  }
  friend bool operator==(const Interval&, const Interval&) = default;
};

}  // namespace suppertide
