// Whether pans on a shelf lie inside it and beside each other.
#pragma once

#include <gtest/gtest.h>

#include <vector>

#include "server/kitchen/shelf_search.h"

namespace suppertide::kitchen {

inline void expectApart(int width, int depth, const std::vector<Footprint>& prints,
                        const std::vector<Spot>& spots) {
  struct Box {
    int left, front, right, back;
  };
  std::vector<Box> boxes;
  for (const Spot& spot : spots) {
    const Footprint& print = prints[static_cast<std::size_t>(spot.kind)];
    const Box box{spot.x, spot.y, spot.x + (spot.turned ? print.depth : print.width),
                  spot.y + (spot.turned ? print.width : print.depth)};
    EXPECT_TRUE(box.left >= 0 && box.front >= 0 && box.right <= width && box.back <= depth);
    for (const Box& other : boxes)
      EXPECT_FALSE(other.left < box.right && box.left < other.right && other.front < box.back &&
                   box.front < other.back);
    boxes.push_back(box);
  }
}

}  // namespace suppertide::kitchen
