// Whether every dish of a problem can be served in time.
#pragma once

#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

enum class Feasible {
  kYes,      // with a schedule
  kNo,       // proven
  kUnknown,  // the limit was reached, or it was told to stop
};

class Feasibility {
 public:
  virtual ~Feasibility() = default;
  // Of a problem whose dishes may not be late. Fills `schedule`, if given, with the plan that
  // serves most; with kUnknown it may stay as it was. With kNo fills `clashing`, if given, with few
  // dishes (indexes, ascending) that cannot all be served; it may stay empty.
  virtual Feasible decide(const Problem& problem, Schedule* schedule = nullptr,
                          std::vector<int>* clashing = nullptr) = 0;
};

// Whether `schedule`, which may be another problem's, serves every dish of this one and keeps its rules.
bool servesAll(const Problem& problem, const Schedule& schedule);

// Asks the engine and leaves it as soon as the answer is known.
class EngineFeasibility : public Feasibility {
 public:
  // `conflicts`: effort a question; 0: no limit. `stop` may be empty.
  EngineFeasibility(Minute grid, std::int64_t conflicts, std::function<bool()> stop)
      : grid_(grid), conflicts_(conflicts), stop_(std::move(stop)) {}
  Feasible decide(const Problem& problem, Schedule* schedule = nullptr,
                  std::vector<int>* clashing = nullptr) override;

 private:
  Minute grid_;
  std::int64_t conflicts_;
  std::function<bool()> stop_;
};

}  // namespace suppertide::planning
