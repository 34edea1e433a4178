#include "server/compose/loads.h"

#include <algorithm>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"

namespace suppertide::compose {
namespace {

constexpr int kUsualPanMm = 200;
constexpr int kUsualHeightMm = 60;
// Taking one load out and putting the next in. Common practice, no source.
constexpr int kChangeMinutes = 10;
constexpr char kLoadMark[] = ".load-";

int minutes(const google::protobuf::Duration& duration) {
  return static_cast<int>(duration.seconds() / 60);
}

int bakeMinutes(const v1::OvenNeed& need) {
  int sum = minutes(need.duration().likely());
  for (const v1::OvenPhase& phase : need.later_phases()) sum += minutes(phase.duration());
  return sum;
}

bool fitsSomewhere(const planning::Load& load, const planning::Problem& problem) {
  return std::any_of(problem.ovens.begin(), problem.ovens.end(),
                     [&](const planning::Oven& oven) { return oven.racks->fits({load}); });
}

class Divider {
 public:
  Divider(const v1::Recipe& recipe, const planning::Problem& problem) : recipe_(recipe) {
    for (const v1::Step& step : recipe.steps())
      loads_.push_back(step.has_oven() ? loadsOf(step.oven(), problem).most : 1);
  }

  bool divides() const {
    return std::any_of(loads_.begin(), loads_.end(), [](int loads) { return loads > 1; });
  }

  v1::Recipe run() const {
    v1::Recipe divided = recipe_;
    divided.clear_steps();
    for (int k = 0; k < recipe_.steps_size(); ++k)
      for (int load = 1; load <= loads_[static_cast<std::size_t>(k)]; ++load)
        *divided.add_steps() = loadStep(k, load);
    return divided;
  }

 private:
  int loadsAt(int step) const { return loads_[static_cast<std::size_t>(step)]; }

  v1::Step loadStep(int k, int load) const {
    const v1::Step& from = recipe_.steps(k);
    v1::Step step = from;
    step.set_id(loadId(from.id(), load));
    step.clear_after();
    for (const v1::After& after : told(k)) addAfter(after, load, from, step);
    // What began on purpose with nothing before it goes on doing so.
    if (step.after().empty()) step.set_starts_free(true);
    if (load == 1) return step;
    v1::After& turn = *step.add_after();
    turn.set_step_id(loadId(from.id(), load - 1));
    turn.set_from_start(true);
    return step;
  }

  // The step's own afters, or the step before it.
  std::vector<v1::After> told(int k) const {
    const v1::Step& step = recipe_.steps(k);
    std::vector<v1::After> afters(step.after().begin(), step.after().end());
    if (!afters.empty() || k == 0 || step.starts_free()) return afters;
    afters.emplace_back();
    afters.back().set_step_id(recipe_.steps(k - 1).id());
    return afters;
  }

  // After each load of the other step; a later load may wait for those before it.
  void addAfter(const v1::After& after, int load, const v1::Step& from, v1::Step& step) const {
    const auto& steps = recipe_.steps();
    const auto other = std::find_if(steps.begin(), steps.end(),
                                    [&](const v1::Step& s) { return s.id() == after.step_id(); });
    const int others = other == steps.end() ? 1 : loadsAt(static_cast<int>(other - steps.begin()));
    for (int before = 1; before <= (after.from_start() ? 1 : others); ++before) {
      v1::After& added = *step.add_after();
      added = after;
      added.set_step_id(loadId(after.step_id(), before));
      int wait = 0;
      if (load > 1) wait += (load - 1) * (bakeMinutes(from.oven()) + kChangeMinutes);
      if (others > 1) wait += (others - before) * (bakeMinutes(other->oven()) + kChangeMinutes);
      if (wait == 0) continue;
      const bool usual =
          !after.has_most_gap() && !after.from_start() && other != steps.end() && other->has_ferment();
      if (!after.has_most_gap() && !usual) continue;
      const int most = usual ? kFermentGap : minutes(after.most_gap());
      added.mutable_most_gap()->set_seconds((most + wait) * 60);
    }
  }

  const v1::Recipe& recipe_;
  std::vector<int> loads_;  // by step
};

}  // namespace

std::string loadId(const std::string& stepId, int load) {
  return load > 1 ? absl::StrCat(stepId, kLoadMark, load) : stepId;
}

int loadNumber(const std::string& stepId) {
  const std::size_t mark = stepId.rfind(kLoadMark);
  int load = 1;
  if (mark == std::string::npos || !absl::SimpleAtoi(stepId.substr(mark + sizeof(kLoadMark) - 1), &load))
    return 1;
  return load;
}

int pansIn(int pans, int load, int loads) {
  return pans / loads + (load <= pans % loads ? 1 : 0);
}

planning::Load loadOf(const v1::OvenNeed& need, int load, int loads) {
  const v1::Pan& pan = need.pan();
  planning::Load out;
  out.widthMm = pan.width_mm() > 0 ? pan.width_mm() : kUsualPanMm;
  out.depthMm = pan.depth_mm() > 0 ? pan.depth_mm() : kUsualPanMm;
  out.heightMm = pan.height_mm() > 0 ? pan.height_mm() : kUsualHeightMm;
  out.panCount = pansIn(std::max(1, pan.count()), load, loads);
  return out;
}

LoadCount loadsOf(const v1::OvenNeed& need, const planning::Problem& problem) {
  const int pans = std::max(1, need.pan().count());
  const int limit = std::min({need.most_loads() > 0 ? need.most_loads() : kMostLoads, kMostLoads, pans});
  LoadCount count;
  while (count.least < limit && !fitsSomewhere(loadOf(need, 1, count.least), problem)) ++count.least;
  count.most = need.most_loads() > 0 ? limit : count.least;
  return count;
}

std::shared_ptr<const v1::Recipe> inLoads(const v1::Recipe& recipe, const planning::Problem& problem) {
  const Divider divider(recipe, problem);
  if (!divider.divides()) return nullptr;
  return std::make_shared<const v1::Recipe>(divider.run());
}

}  // namespace suppertide::compose
