#include "server/compose/remedies/trial.h"

#include <utility>

#include "server/planning/clash/feasibility.h"
#include "server/planning/clash/part.h"

namespace suppertide::compose {
namespace {

constexpr planning::Minute kGrid = 5;

// Leaves a search that can no longer serve every dish.
class WhileAllMayBeServed : public planning::Monitor {
 public:
  explicit WhileAllMayBeServed(const std::function<bool()>& stop) : stop_(stop) {}
  void improved(const planning::Outcome& outcome) override {
    hopeless_ = costIn(outcome.bound, planning::Tier::kUnserved) > 0;
  }
  bool stop() override { return hopeless_ || (stop_ && stop_()); }

 private:
  const std::function<bool()>& stop_;
  bool hopeless_ = false;
};

}  // namespace

std::unique_ptr<Trial> Trial::of(Documents documents) {
  std::unique_ptr<Trial> trial(new Trial(std::move(documents)));
  auto composition = composeProblem(trial->documents_);
  if (!composition.ok()) return nullptr;
  trial->composition_.emplace(*std::move(composition));
  return trial;
}

bool Trial::fitsFor(const std::set<std::string>& dishIds, std::int64_t conflicts,
                    const std::function<bool()>& stop) const {
  std::vector<int> dishes;
  for (std::size_t d = 0; d < composition_->dishes.size(); ++d)
    if (dishIds.contains(composition_->dishes[d].dish->id())) dishes.push_back(static_cast<int>(d));
  planning::Problem part = planning::partOf(composition_->problem, dishes);
  planning::forgetCosts(part);
  planning::EngineFeasibility feasibility(kGrid, conflicts, stop);
  return feasibility.decide(part) == planning::Feasible::kYes;
}

std::optional<planning::Outcome> Trial::plan(std::uint64_t seed, std::int64_t conflicts,
                                             const std::function<bool()>& stop,
                                             std::vector<int>* suspects) const {
  planning::Problem inTime = composition_->problem;
  for (planning::Dish& dish : inTime.dishes) dish.lateLimit = 0;
  WhileAllMayBeServed monitor(stop);
  planning::SearchOptions options;
  options.seed = seed;
  options.workLimit = conflicts;
  auto outcome = planning::makePlan(inTime, options, &monitor);
  if (!outcome.ok()) return std::nullopt;
  if (costIn(outcome->cost, planning::Tier::kUnserved) == 0) return *std::move(outcome);
  if (suspects == nullptr) return std::nullopt;
  for (std::size_t d = 0; d < inTime.dishes.size(); ++d)
    if (outcome->schedule.unserved[d]) suspects->push_back(static_cast<int>(d));
  return std::nullopt;
}

}  // namespace suppertide::compose
