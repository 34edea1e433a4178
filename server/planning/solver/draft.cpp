#include "server/planning/solver/draft.h"

#include <algorithm>

#include "server/planning/model/costs/people.h"

namespace suppertide::planning {
namespace {

// What a minute more of each cook's work costs when the cook is above the fair share.
std::vector<std::int64_t> cookPrices(const Problem& problem, const Schedule& plan) {
  std::vector<std::int64_t> prices(problem.cooks.size(), 0);
  if (problem.shareBlock <= 0 || problem.shareBlockCost == 0) return prices;
  const std::int64_t price = std::int64_t{1024} * problem.shareBlockCost / problem.shareBlock;
  std::vector<std::int64_t> work(problem.cooks.size(), 0);
  std::int64_t all = 0;
  std::int64_t shares = 0;
  for (const Cook& cook : problem.cooks) shares += cook.share;
  for (int i = 0; i < sizeOf(problem.steps); ++i) {
    const Placement& place = nth(plan.steps, i);
    if (plan.unserved[static_cast<std::size_t>(nth(problem.steps, i).dish)] || place.cook < 0) continue;
    const auto minutes = workMinutes(nth(nth(problem.steps, i).modes, place.mode), place.start, place.end);
    nth(work, place.cook) += minutes;
    all += minutes;
  }
  for (int c = 0; c < sizeOf(prices); ++c) {
    const std::int64_t fair = shares > 0 ? all * nth(problem.cooks, c).share / shares : all;
    nth(prices, c) = nth(work, c) >= fair ? price : price * nth(work, c) / (2 * fair + 1);
  }
  return prices;
}

}  // namespace

Draft::Draft(const GridModel& model)
    : model_(model),
      plan_{std::vector<Placement>(model.problem().steps.size()),
            std::vector<bool>(model.problem().dishes.size(), true)},
      occupancy_(model.problem()),
      placer_(model, occupancy_) {
  for (int i = 0; i < sizeOf(plan_.steps); ++i)
    if (model.used(i)) steps_.push_back(i);
  for (int d = 0; d < sizeOf(model.problem().dishes); ++d) {
    orders_.emplace_back(model, d);
    before_.emplace_back();
    ringed_.push_back(ringCount(model, d) > sizeOf(model.distances(d).steps) / 3);
  }
}

bool Draft::put(int dish, std::mt19937& random, int tries) {
  if (model_.dropped(dish)) return false;
  const bool ringed = ringed_[static_cast<std::size_t>(dish)];
  if (!ringed && placer_.place(dish, plan_, cookPrices(model_.problem(), plan_))) return true;
  return putInOrders(dish, random, ringed ? tries : 1);
}

// The best of several orders of the dish's steps: like the best so far, or by how late they may be, in turn.
bool Draft::putInOrders(int dish, std::mt19937& random, int tries) {
  const auto& steps = model_.distances(dish).steps;
  const double noise = 0.04 * nth(model_.problem().dishes, dish).serve;
  std::vector<Placement> best;
  TierCosts bestCost{};
  std::vector<Placement> pattern = nth(before_, dish);
  const auto lay = [&](const std::vector<Placement>& places) {
    for (std::size_t k = 0; k < steps.size(); ++k) nth(plan_.steps, steps[k]) = places[k];
  };
  const auto keep = [&] {
    const TierCosts cost = costOf(model_.problem(), plan_).total;
    if (!best.empty() && cost >= bestCost) return;
    best.clear();
    for (const int i : steps) best.push_back(nth(plan_.steps, i));
    pattern = best;
    bestCost = cost;
  };
  const int likeFrom = pattern.empty() ? 1 : 0;
  for (int k = 0; k < tries; ++k) {
    const bool like = !pattern.empty() && k % 2 == likeFrom;
    if (like) lay(pattern);
    if (!nth(orders_, dish).place(plan_, occupancy_, random, k == 0 && !like ? 0.0 : noise, like)) continue;
    keep();
    if (isLate(dish) && nth(orders_, dish).justify(plan_, occupancy_)) keep();
    take(dish);
    if (bestCost == TierCosts{}) break;
  }
  if (best.empty()) return false;
  lay(best);
  for (const int i : steps) occupancy_.add(i, nth(plan_.steps, i));
  nth(before_, dish) = std::move(best);
  plan_.unserved[static_cast<std::size_t>(dish)] = false;
  return true;
}

bool Draft::isLate(int dish) const {
  const Dish& data = nth(model_.problem().dishes, dish);
  return nth(plan_.steps, data.lastStep).end > data.serve;
}

void Draft::take(int dish) {
  for (const int i : model_.distances(dish).steps) occupancy_.remove(i, nth(plan_.steps, i));
  plan_.unserved[static_cast<std::size_t>(dish)] = true;
}

void Draft::load(const Schedule& other) {
  const int dishes = sizeOf(model_.problem().dishes);
  for (int d = 0; d < dishes; ++d)
    if (served(d) && !sameDish(d, other)) take(d);
  for (int d = 0; d < dishes; ++d) {
    if (served(d) || other.unserved[static_cast<std::size_t>(d)]) continue;
    for (const int i : model_.distances(d).steps) {
      nth(plan_.steps, i) = nth(other.steps, i);
      occupancy_.add(i, nth(plan_.steps, i));
    }
    plan_.unserved[static_cast<std::size_t>(d)] = false;
  }
}

bool Draft::sameDish(int dish, const Schedule& other) const {
  if (other.unserved[static_cast<std::size_t>(dish)]) return false;
  const auto& steps = model_.distances(dish).steps;
  return std::all_of(steps.begin(), steps.end(),
                     [&](int i) { return nth(plan_.steps, i) == nth(other.steps, i); });
}

// The cooks who may do the step in its mode.
const std::vector<CookOption>& Draft::cooksOf(int step) const {
  static const std::vector<CookOption> kNobody;
  for (const Choice& choice : model_.step(step).choices)
    if (choice.mode == nth(plan_.steps, step).mode) return choice.cooks;
  return kNobody;
}

int Draft::pickStep(std::mt19937& random) const {
  if (steps_.empty()) return -1;
  const int i = nth(steps_, static_cast<int>(random() % steps_.size()));
  return served(nth(model_.problem().steps, i).dish) && cooksOf(i).size() > 1 ? i : -1;
}

bool Draft::moveCooks(std::mt19937& random) {
  const int a = pickStep(random);
  const int b = random() % 2 == 0 ? pickStep(random) : -1;
  if (a < 0 || a == b) return false;
  const int cookA = nth(plan_.steps, a).cook;
  if (b < 0) return assign({{a, cooksOf(a)[random() % cooksOf(a).size()].cook}});
  return assign({{a, nth(plan_.steps, b).cook}, {b, cookA}});
}

void Draft::undoCooks() {
  const auto back = moved_;
  assign(back);
}

// Gives each step to its cook; false, with nothing changed, when a rule forbids it.
bool Draft::assign(const std::vector<StepCook>& wanted) {
  std::vector<StepCook> before;
  for (const auto& [step, cook] : wanted) {
    const auto& cooks = cooksOf(step);
    before.push_back({step, nth(plan_.steps, step).cook});
    const bool able = std::any_of(cooks.begin(), cooks.end(), [wantedCook = cook](const CookOption& option) {
      return option.cook == wantedCook;
    });
    if (!able || cook == before.back().cook) return false;
  }
  for (const auto& [step, cook] : wanted) occupancy_.remove(step, nth(plan_.steps, step));
  std::size_t put = 0;
  for (; put < wanted.size(); ++put) {
    Placement& place = nth(plan_.steps, wanted[put].step);
    place.cook = wanted[put].cook;
    if (!occupancy_.fitsOnce(wanted[put].step, place)) break;
    occupancy_.add(wanted[put].step, place);
  }
  if (put == wanted.size()) {
    moved_ = before;
    return true;
  }
  for (std::size_t k = 0; k < put; ++k) occupancy_.remove(wanted[k].step, nth(plan_.steps, wanted[k].step));
  for (const auto& [step, cook] : before) {
    nth(plan_.steps, step).cook = cook;
    occupancy_.add(step, nth(plan_.steps, step));
  }
  return false;
}

}  // namespace suppertide::planning
