// Whether dishes fit an oven together, as the planner asks it; and what was not sure about that.
#pragma once

#include <mutex>
#include <vector>

#include "server/compose/composition.h"
#include "server/planning/model/rack_fit.h"
#include "server/planning/model/schedule.h"

namespace suppertide::compose {

// Says yes only when a way to lay the pans was found. Remembers what it said no to although that was not
// proven. Several threads may ask.
class ShelfFit : public planning::RackFit {
 public:
  explicit ShelfFit(kitchen::Oven oven) : oven_(std::move(oven)) {}
  bool fits(const std::vector<planning::Load>& loads) const override;

  // At most kMostDoubts, in the order they were asked about.
  std::vector<std::vector<kitchen::Pan>> doubts() const;

  static constexpr std::size_t kMostDoubts = 50;

 private:
  const kitchen::Oven oven_;
  mutable std::mutex mutex_;
  mutable std::vector<std::vector<kitchen::Pan>> doubts_;  // guarded by mutex_
};

// Whether a "no" about the step in that oven, alone or with others, was not sure.
bool isDoubted(const Composition& composition, int oven, int step);
// Whether any "no" about an oven was not sure: then no cost is proven least.
bool anyDoubts(const Composition& composition);

// What was not sure about the ovens of the plan.
void addRackDoubts(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan);

}  // namespace suppertide::compose
