#include "server/compose/remedies/trial.h"

#include <algorithm>
#include <utility>

#include "server/compose/documents.h"
#include "server/planning/clash/feasibility.h"
#include "server/planning/replan/moves.h"
#include "server/planning/replan/replan.h"
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

std::unique_ptr<Trial> Trial::of(Documents documents, BreadTables& tables, const RunningPlan* running) {
  std::unique_ptr<Trial> trial(new Trial(std::move(documents)));
  if (running == nullptr) {
    auto composition = composeProblem(trial->documents_, &tables);
    if (!composition.ok()) return nullptr;
    trial->composition_.emplace(*std::move(composition));
    return trial;
  }
  auto under = runningProblem(trial->documents_, *running);
  if (!under.ok()) return nullptr;
  trial->running_ = running;
  trial->under_ = *std::move(under);
  const planning::Running& state = trial->under_->state;
  trial->remains_ = planning::whatRemains(trial->under_->composition->problem, state, kGrid);
  trial->under_->composition->problem = trial->remains_.problem;
  trial->begun_ = trial->remains_.past;
  for (std::size_t i = 0; i < state.states.size(); ++i)
    if (state.states[i].kind == planning::StepState::Kind::kSkipped) trial->begun_[i] = true;
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

// What is ready is as late as it is.
planning::Problem Trial::inTime() const {
  planning::Problem problem = composition().problem;
  for (planning::Dish& dish : problem.dishes)
    if (begun_.empty() || !begun_[static_cast<std::size_t>(dish.lastStep)]) dish.lateLimit = 0;
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
  const planning::Problem problem = inTime();
  if (under_ != nullptr) {
    auto mended = planning::repairPlan(problem, remains_.expected, options, &monitor);
    if (mended && planning::servesAll(problem, mended->schedule)) return mended;
  }
  return planning::repairPlan(problem, schedule, options, &monitor);
}

std::optional<planning::Outcome> Trial::planned(std::uint64_t seed, std::int64_t conflicts,
                                                const std::function<bool()>& stop) const {
  UntilStopped monitor(stop);
  auto outcome =
      planning::makePlan(inTime(), {.seed = seed, .workLimit = conflicts, .grid = kGrid}, &monitor);
  if (!outcome.ok()) return std::nullopt;
  return *std::move(outcome);
}

v1::Plan Trial::document(const planning::Outcome& outcome, int evenings) const {
  if (under_ == nullptr) return planDocument(composition(), outcome, evenings);
  planning::Replanned made;
  made.remains = remains_;
  made.schedule = outcome.schedule;
  // The solver names no cook where none is needed; who did a finished step is known.
  for (std::size_t i = 0; i < made.schedule.steps.size(); ++i)
    if (remains_.past[i]) made.schedule.steps[i].cook = remains_.expected.steps[i].cook;
  made.cost = outcome.cost;
  made.work = outcome.work;
  made.moves = planning::movesBetween(remains_, under_->state, made.schedule);
  return runningDocument(composition(), made, *running_);
}

}  // namespace suppertide::compose
