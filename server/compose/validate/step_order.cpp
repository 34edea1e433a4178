#include <algorithm>
#include <map>
#include <vector>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostAfters = 60;
// Plans are made in steps of 5 minutes: a narrower gap may have no room at all.
constexpr int kLeastRoom = 5;

void checkGaps(const Checker& here, const v1::After& after) {
  const bool least = here.at("leastGap").minutes(after.least_gap(), 0, kHorizonMinutes);
  if (!after.has_most_gap()) return;
  const Checker most = here.at("mostGap");
  if (!most.minutes(after.most_gap(), 0, kHorizonMinutes) || !least) return;
  const auto needed = minutesIn(after.least_gap()) + kLeastRoom;
  if (minutesIn(after.most_gap()) < needed)
    most.wrong(minutesAsText(minutesIn(after.most_gap())),
               absl::StrCat("must be at least ", minutesAsText(needed), ": 5 minutes above the least gap"));
}

// Which steps come before which; finds circles by going back from every step.
class Circles {
 public:
  Circles(const v1::Recipe& recipe, std::vector<std::vector<int>> before)
      : recipe_(recipe), before_(std::move(before)), state_(before_.size(), State::kNew) {}

  void check(const Checker& here) {
    for (int i = 0; i < recipe_.steps_size(); ++i)
      if (state_[static_cast<std::size_t>(i)] == State::kNew) visit(here, i);
  }

 private:
  enum class State { kNew, kOnPath, kDone };

  // At most as deep as a recipe has steps.
  void visit(const Checker& here, int step) {
    const auto index = static_cast<std::size_t>(step);
    state_[index] = State::kOnPath;
    path_.push_back(step);
    for (const int earlier : before_[index]) {
      const State state = state_[static_cast<std::size_t>(earlier)];
      if (state == State::kOnPath) note(here, earlier);
      if (state == State::kNew) visit(here, earlier);
    }
    path_.pop_back();
    state_[index] = State::kDone;
  }

  // The path from `first` to its end is a circle; noted at the step listed first in it.
  void note(const Checker& here, int first) {
    const auto from = std::find(path_.begin(), path_.end(), first);
    std::string names;
    for (auto at = from; at != path_.end(); ++at) absl::StrAppend(&names, recipe_.steps(*at).id(), " after ");
    absl::StrAppend(&names, recipe_.steps(first).id());
    here.at("steps", *std::min_element(from, path_.end()))
        .at("after")
        .wrong(names, "these steps wait for each other in a circle; take one of the orders away");
  }

  const v1::Recipe& recipe_;
  std::vector<std::vector<int>> before_;
  std::vector<State> state_;
  std::vector<int> path_;
};

// Steps that `step` names; each checked. An empty list means the step listed before.
std::vector<int> stepsBefore(const Checker& here, const v1::Recipe& recipe, int step,
                             const std::map<std::string, int>& indexOf) {
  const v1::Step& told = recipe.steps(step);
  if (told.after().empty())
    return told.starts_free() || step == 0 ? std::vector<int>{} : std::vector{step - 1};
  if (told.starts_free())
    here.at("startsFree").wrong("true", "a step that starts freely cannot come after others, too");
  std::vector<int> before;
  if (!here.at("after").count(told.after_size(), 0, kMostAfters, "steps that come before")) return before;
  Once seen;
  for (int i = 0; i < told.after_size(); ++i) {
    const v1::After& after = told.after(i);
    const Checker entry = here.at("after", i);
    checkGaps(entry, after);
    const auto found = indexOf.find(after.step_id());
    if (found == indexOf.end()) {
      entry.at("stepId").wrong(after.step_id(), "must be a step of this recipe");
      continue;
    }
    // Both edges of one step may be named: from its start and from its end.
    seen.add(entry.at("stepId"), absl::StrCat(after.step_id(), after.from_start() ? " from its start" : ""));
    before.push_back(found->second);
  }
  return before;
}

}  // namespace

void checkStepOrder(const Checker& here, const v1::Recipe& recipe) {
  std::map<std::string, int> indexOf;
  for (int i = 0; i < recipe.steps_size(); ++i) indexOf.emplace(recipe.steps(i).id(), i);
  std::vector<std::vector<int>> before;
  for (int i = 0; i < recipe.steps_size(); ++i)
    before.push_back(stepsBefore(here.at("steps", i), recipe, i, indexOf));
  Circles(recipe, std::move(before)).check(here);
}

}  // namespace suppertide::compose
