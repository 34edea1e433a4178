#include "server/compose/remedies/trial.h"

#include <algorithm>
#include <utility>

#include "server/planning/clash/feasibility.h"
#include "server/planning/solver/repair.h"

namespace suppertide::compose {
namespace {

constexpr planning::Minute kGrid = 5;

class UntilStopped : public planning::Monitor {
 public:
  explicit UntilStopped(const std::function<bool()>& stop) : stop_(stop) {}
  bool stop() override { return stop_ && stop_(); }

 private:
  const std::function<bool()>& stop_;
};

}  // namespace

std::unique_ptr<Trial> Trial::of(Documents documents, BreadTables& tables) {
  std::unique_ptr<Trial> trial(new Trial(std::move(documents)));
  auto composition = composeProblem(trial->documents_, &tables);
  if (!composition.ok()) return nullptr;
  trial->composition_.emplace(*std::move(composition));
  return trial;
}

Documents onlyDishes(Documents documents, const std::set<std::string>& dishIds) {
  v1::Event& event = documents.event;
  const auto isOut = [&](const std::string& dishId) { return !dishIds.contains(dishId); };
  const auto dishOut = [&](const v1::Dish& dish) { return isOut(dish.id()); };
  auto& dishes = *event.mutable_dishes();
  dishes.erase(std::remove_if(dishes.begin(), dishes.end(), dishOut), dishes.end());
  const auto pinOut = [&](const v1::StepPin& pin) { return isOut(pin.dish_id()); };
  auto& pins = *event.mutable_pins();
  pins.erase(std::remove_if(pins.begin(), pins.end(), pinOut), pins.end());
  return documents;
}

planning::Problem Trial::inTime() const {
  planning::Problem problem = composition_->problem;
  for (planning::Dish& dish : problem.dishes) dish.lateLimit = 0;
  return problem;
}

Trial::Fit Trial::fit(std::int64_t conflicts, const std::function<bool()>& stop) const {
  planning::EngineFeasibility feasibility(kGrid, conflicts, stop);
  Fit fit;
  fit.fits = feasibility.decide(inTime(), &fit.schedule, &fit.clashing) == planning::Feasible::kYes;
  return fit;
}

bool Trial::serves(const planning::Schedule& schedule) const {
  const planning::Problem problem = inTime();
  return planning::servesAll(problem, schedule);
}

std::optional<planning::Outcome> Trial::bettered(const planning::Schedule& schedule, std::uint64_t seed,
                                                 int rounds, const std::function<bool()>& stop) const {
  UntilStopped monitor(stop);
  planning::RepairOptions options;
  options.search.seed = seed;
  options.rounds = rounds;
  return planning::repairPlan(inTime(), schedule, options, &monitor);
}

std::optional<planning::Outcome> Trial::planned(std::uint64_t seed, std::int64_t conflicts,
                                                const std::function<bool()>& stop) const {
  UntilStopped monitor(stop);
  auto outcome =
      planning::makePlan(inTime(), {.seed = seed, .workLimit = conflicts, .grid = kGrid}, &monitor);
  if (!outcome.ok()) return std::nullopt;
  return *std::move(outcome);
}

}  // namespace suppertide::compose
