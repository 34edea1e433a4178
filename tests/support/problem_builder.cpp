#include "tests/support/problem_builder.h"

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <utility>

#include "server/base/index.h"

namespace suppertide::planning {
namespace {

[[noreturn]] void giveUp(std::string_view what, std::string_view which) {
  std::fprintf(stderr, "problem builder: %.*s %.*s\n", static_cast<int>(what.size()), what.data(),
               static_cast<int>(which.size()), which.data());
  std::abort();
}

template <typename T>
int indexOf(const std::vector<T>& things, std::string_view id, std::string_view what) {
  for (std::size_t i = 0; i < things.size(); ++i)
    if (things[i].id == id) return static_cast<int>(i);
  giveUp(what, id);
}

}  // namespace

int stepIndex(const Problem& problem, std::string_view id) {
  return indexOf(problem.steps, id, "no step");
}
int dishIndex(const Problem& problem, std::string_view id) {
  return indexOf(problem.dishes, id, "no dish");
}
int cookIndex(const Problem& problem, std::string_view id) {
  return indexOf(problem.cooks, id, "no cook");
}
int ovenIndex(const Problem& problem, std::string_view id) {
  return indexOf(problem.ovens, id, "no oven");
}
int resourceIndex(const Problem& problem, std::string_view id) {
  return indexOf(problem.resources, id, "no resource");
}
int unknownIndex(const Problem& problem, std::string_view id) {
  return indexOf(problem.unknowns, id, "no unknown");
}

int modeIndex(const Step& step, std::string_view name) {
  for (std::size_t m = 0; m < step.modes.size(); ++m)
    if (step.modes[m].name == name) return static_cast<int>(m);
  giveUp("no mode", name);
}

int setpointIndex(const Oven& oven, int celsius) {
  for (std::size_t s = 0; s < oven.setpoints.size(); ++s)
    if (oven.setpoints[s] == celsius) return static_cast<int>(s);
  giveUp("no such setpoint in oven", oven.id);
}

Step& StepBuilder::step() {
  return problem_.steps[at(index_)];
}
Mode& StepBuilder::mode() {
  return step().modes.back();
}

StepBuilder& StepBuilder::kind(StepKind kind) {
  step().kind = kind;
  return *this;
}

StepBuilder& StepBuilder::lasting(Minute length) {
  return lasting(LengthTable::fixed(length));
}

StepBuilder& StepBuilder::lasting(Minute shortest, Minute best, Minute longest) {
  return lasting(LengthTable::range(shortest, best, longest));
}

StepBuilder& StepBuilder::lasting(LengthTable table) {
  mode().length = std::move(table);
  return *this;
}

StepBuilder& StepBuilder::by(std::initializer_list<std::string_view> cooks, int attention) {
  mode().attention = attention;
  for (const std::string_view id : cooks) mode().cooks.push_back({cookIndex(problem_, id), 0});
  return *this;
}

StepBuilder& StepBuilder::using_(std::string_view resource, int amount) {
  mode().uses.push_back({resourceIndex(problem_, resource), amount});
  return *this;
}

StepBuilder& StepBuilder::in(std::string_view oven, int celsius, int racks) {
  return in(oven, {{celsius, 0}}, racks);
}

StepBuilder& StepBuilder::in(std::string_view oven, std::initializer_list<CelsiusFor> phases, int racks) {
  step().kind = StepKind::kBake;
  OvenNeed need;
  need.oven = ovenIndex(problem_, oven);
  need.load.racks = racks;
  for (const CelsiusFor& phase : phases)
    need.phases.push_back({setpointIndex(problem_.ovens[at(need.oven)], phase.celsius), phase.length});
  mode().oven = need;
  return *this;
}

StepBuilder& StepBuilder::coldStart() {
  mode().oven->preheated = false;
  return *this;
}

StepBuilder& StepBuilder::linkedTo(std::string_view step, std::vector<int> modes) {
  mode().links.push_back({stepIndex(problem_, step), std::move(modes)});
  return *this;
}

StepBuilder& StepBuilder::quality(int modeCost, int shortMinuteCost, int longMinuteCost) {
  mode().qualityCost = modeCost;
  mode().shortMinuteCost = shortMinuteCost;
  mode().longMinuteCost = longMinuteCost;
  return *this;
}

StepBuilder& StepBuilder::orMode(std::string_view name) {
  step().modes.emplace_back();
  mode().name = std::string(name);
  return *this;
}

StepBuilder& StepBuilder::after(std::string_view step, Minute least, Minute most) {
  problem_.gaps.push_back({stepIndex(problem_, step), Edge::kEnd, index_, Edge::kStart, least, most});
  return *this;
}

StepBuilder& StepBuilder::notBefore(Minute earliest) {
  step().earliest = earliest;
  return *this;
}

StepBuilder& StepBuilder::notAfter(Minute latest) {
  step().latest = latest;
  return *this;
}

StepBuilder& StepBuilder::pinned(Pin pin) {
  step().pin = pin;
  return *this;
}

StepBuilder& StepBuilder::announced(Minute start, std::string_view cook, int weight) {
  step().announced = Announced{start, 0, cook.empty() ? -1 : cookIndex(problem_, cook), weight};
  return *this;
}

StepBuilder& StepBuilder::air(Minute minutes) {
  problem_.gaps.back().air = minutes;
  return *this;
}

StepBuilder& StepBuilder::spread(double least, double most) {
  mode().spread.least = least;
  mode().spread.most = most;
  return *this;
}

StepBuilder& StepBuilder::follows(std::string_view unknown, double power) {
  mode().spread.follows.push_back({unknownIndex(problem_, unknown), power});
  return *this;
}

ProblemBuilder::ProblemBuilder(Minute limit) {
  problem_.limit = limit;
  problem_.shareBlockCost = 0;
}

int ProblemBuilder::cook(std::string_view id) {
  return cook(id, 0, problem_.limit);
}

int ProblemBuilder::cook(std::string_view id, Minute start, Minute limit) {
  Cook cook;
  cook.id = std::string(id);
  cook.available = {{start, limit}};
  problem_.cooks.push_back(cook);
  return static_cast<int>(problem_.cooks.size()) - 1;
}

int ProblemBuilder::oven(std::string_view id, std::vector<int> setpoints, OvenSpec spec) {
  Oven oven;
  oven.id = std::string(id);
  const std::size_t count = setpoints.size();
  oven.change.assign(count, std::vector<Minute>(count, spec.changeMinutes));
  for (std::size_t s = 0; s < count; ++s) oven.change[s][s] = 0;
  oven.heatFromCold.assign(count, spec.changeMinutes);
  oven.setpoints = std::move(setpoints);
  oven.racks = std::make_shared<RackCount>(spec.racks);
  oven.idleMinuteCost = spec.idleMinuteCost;
  problem_.ovens.push_back(oven);
  return static_cast<int>(problem_.ovens.size()) - 1;
}

int ProblemBuilder::resource(std::string_view id, int capacity) {
  problem_.resources.push_back({std::string(id), capacity, {}});
  return static_cast<int>(problem_.resources.size()) - 1;
}

int ProblemBuilder::stock(std::string_view id, int capacity) {
  const int index = resource(id, capacity);
  problem_.resources.back().usedUp = true;
  return index;
}

int ProblemBuilder::unknown(std::string_view id, double sigma) {
  problem_.unknowns.push_back({std::string(id), sigma});
  return static_cast<int>(problem_.unknowns.size()) - 1;
}

void ProblemBuilder::clock(std::string_view id, Minute most, std::initializer_list<SpanSpec> spans) {
  Clock clock;
  clock.id = std::string(id);
  clock.most = most;
  for (const SpanSpec& span : spans)
    clock.spans.push_back({stepIndex(problem_, span.from), span.fromEdge,
                           span.to.empty() ? -1 : stepIndex(problem_, span.to), span.toEdge, span.modes});
  problem_.clocks.push_back(clock);
}

void ProblemBuilder::separation(std::string_view id, std::string_view clean, std::string_view other,
                                Minute cleaning) {
  Separation separation;
  separation.id = std::string(id);
  separation.clean = stepIndex(problem_, clean);
  separation.other = stepIndex(problem_, other);
  separation.cleaning = cleaning;
  problem_.separations.push_back(separation);
}

int ProblemBuilder::dish(std::string_view id, DishSpec spec) {
  Dish dish;
  dish.id = std::string(id);
  dish.serve = spec.serve;
  dish.holdLimit = spec.holdLimit;
  dish.lateLimit = spec.lateLimit;
  problem_.dishes.push_back(dish);
  return static_cast<int>(problem_.dishes.size()) - 1;
}

StepBuilder ProblemBuilder::step(std::string_view id) {
  if (problem_.dishes.empty()) giveUp("no dish yet for step", id);
  Step step;
  step.id = std::string(id);
  step.dish = static_cast<int>(problem_.dishes.size()) - 1;
  step.modes.emplace_back();
  step.modes.back().name = "plain";
  const int index = static_cast<int>(problem_.steps.size());
  problem_.steps.push_back(step);
  problem_.dishes.back().lastStep = index;
  return {problem_, index};
}

void ProblemBuilder::gap(std::string_view from, Edge fromEdge, std::string_view to, Edge toEdge, Minute least,
                         Minute most) {
  problem_.gaps.push_back(
      {stepIndex(problem_, from), fromEdge, stepIndex(problem_, to), toEdge, least, most});
}

Problem ProblemBuilder::build() const {
  if (const absl::Status status = check(problem_); !status.ok()) giveUp("not a problem:", status.ToString());
  return problem_;
}

ScheduleBuilder::ScheduleBuilder(const Problem& problem) : problem_(problem) {
  schedule_.steps.resize(problem.steps.size());
  schedule_.unserved.assign(problem.dishes.size(), false);
}

ScheduleBuilder& ScheduleBuilder::put(std::string_view step, Minute start, std::string_view cook, int mode) {
  const int index = stepIndex(problem_, step);
  const Mode& chosen = problem_.steps[at(index)].modes[at(mode)];
  const Length length = chosen.length.at(start);
  schedule_.steps[at(index)] = {start, start + length.shortest, mode,
                                cook.empty() ? -1 : cookIndex(problem_, cook)};
  return *this;
}

ScheduleBuilder& ScheduleBuilder::until(std::string_view step, Minute end) {
  schedule_.steps[at(stepIndex(problem_, step))].end = end;
  return *this;
}

ScheduleBuilder& ScheduleBuilder::without(std::string_view dish) {
  schedule_.unserved[at(dishIndex(problem_, dish))] = true;
  return *this;
}

}  // namespace suppertide::planning
