// Vectors indexed by the ints that the model uses for steps, dishes and things.
#pragma once

#include <cstddef>
#include <vector>

namespace suppertide::planning {

template <typename T>
decltype(auto) at(std::vector<T>& items, int index) {
  return items[static_cast<std::size_t>(index)];
}
template <typename T>
decltype(auto) at(const std::vector<T>& items, int index) {
  return items[static_cast<std::size_t>(index)];
}
template <typename T>
int sizeOf(const std::vector<T>& items) {
  return static_cast<int>(items.size());
}

}  // namespace suppertide::planning
