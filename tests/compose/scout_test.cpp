#include "server/compose/remedies/scout.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <future>
#include <vector>

namespace suppertide::compose {
namespace {

using testing::ElementsAre;

// What a scout looked at, up to a last one.
class Seen {
 public:
  explicit Seen(std::size_t last) : last_(last) {}
  void add(std::size_t k) {
    seen_.push_back(k);
    if (k == last_) done_.set_value();
  }
  const std::vector<std::size_t>& all() {
    done_.get_future().wait();
    return seen_;
  }

 private:
  std::size_t last_;
  std::vector<std::size_t> seen_;
  std::promise<void> done_;
};

TEST(ScoutTest, LooksAtAllButTheFirstInOrder) {
  Seen seen(3);
  Scout scout;
  scout.begin(4, [&](std::size_t k) { seen.add(k); });
  EXPECT_THAT(seen.all(), ElementsAre(1, 2, 3));
}

TEST(ScoutTest, LeavesOutWhatTheFirstHasComeTo) {
  Seen seen(6);
  Scout scout;
  scout.begin(7, [&](std::size_t k) {
    if (k == 1) scout.reached(4);
    EXPECT_EQ(scout.isAhead(k), k > 4);
    seen.add(k);
  });
  EXPECT_THAT(seen.all(), ElementsAre(1, 5, 6));
}

TEST(ScoutTest, EndsBeforeItBeginsAnother) {
  std::vector<int> order;
  std::promise<void> begun;
  Seen second(1);
  Scout scout;
  scout.begin(100, [&](std::size_t) {
    if (order.empty()) begun.set_value();
    order.push_back(1);
    while (!scout.ended()) {
    }
  });
  begun.get_future().wait();
  scout.begin(2, [&](std::size_t k) {
    order.push_back(2);
    second.add(k);
  });
  second.all();
  EXPECT_THAT(order, ElementsAre(1, 2));
}

}  // namespace
}  // namespace suppertide::compose
