// Vectors indexed by the ints that the models use for steps, dishes and things.
#pragma once

#include <cstddef>
#include <vector>

namespace suppertide {

constexpr std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

template <typename T>
decltype(auto) nth(std::vector<T>& items, int index) {
  return items[at(index)];
}
template <typename T>
decltype(auto) nth(const std::vector<T>& items, int index) {
  return items[at(index)];
}
template <typename T>
int sizeOf(const std::vector<T>& items) {
  return static_cast<int>(items.size());
}

}  // namespace suppertide
