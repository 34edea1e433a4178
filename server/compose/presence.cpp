// Somebody is there: a bake begins and ends, and food is put into a place, only
// while one of the cooks is awake and at home. Nobody sleeps beside a hot oven.
#include <algorithm>

#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

constexpr int kGrid = 5;

class Presence {
 public:
  explicit Presence(const planning::Problem& problem)
      : awayFrom_(static_cast<std::size_t>(problem.limit) + 1, 0) {
    std::vector<char> there(awayFrom_.size(), 0);
    for (const planning::Cook& cook : problem.cooks)
      for (const auto& span : cook.available)
        for (int t = std::max(0, span.start); t < std::min(problem.limit, span.limit); ++t)
          there[static_cast<std::size_t>(t)] = 1;
    int away = problem.limit;
    for (std::size_t t = awayFrom_.size(); t-- > 0;) {
      if (!there[t]) away = static_cast<int>(t);
      awayFrom_[t] = away;
    }
  }
  // Whether somebody is there from `start` to `end`; for an empty span, just before it or at it.
  bool covers(int start, int end) const {
    if (start < 0 || end >= static_cast<int>(awayFrom_.size())) return false;
    if (start == end && start > 0) return at(start - 1) > start - 1;
    return at(start) >= end;
  }

 private:
  int at(int minute) const { return awayFrom_[static_cast<std::size_t>(minute)]; }
  std::vector<int> awayFrom_;  // by minute: the first one from it on at which nobody is there
};

// Takes out the starts at which `possible` says no; a table with one row gets one for each start.
template <typename Possible>
void narrow(planning::LengthTable& table, int limit, Possible possible) {
  if (table.pitch == 0) {
    table.rows.resize(static_cast<std::size_t>(limit / kGrid) + 1, table.rows.front());
    table.pitch = kGrid;
  }
  for (std::size_t k = 0; k < table.rows.size(); ++k) {
    const int start = table.origin + static_cast<int>(k) * table.pitch;
    if (table.rows[k].possible() && !possible(start, table.rows[k])) table.rows[k] = {1, 1, 0};
  }
}

}  // namespace

absl::Status addPresence(Composition& composition) {
  planning::Problem& problem = composition.problem;
  const Presence presence(problem);
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const bool bakes = problem.steps[i].kind == planning::StepKind::kBake;
    for (std::size_t m = 0; m < problem.steps[i].modes.size(); ++m) {
      planning::Mode& mode = problem.steps[i].modes[m];
      const bool placed = composition.steps[i].modes[m].place >= 0;
      if (mode.attention > 0 || (!bakes && !placed) || composition.steps[i].modes[m].leftOut) continue;
      mode.anyHour = mode.length;
      narrow(mode.length, problem.limit, [&](int start, const planning::Length& length) {
        return presence.covers(start, bakes ? start + length.longest : start);
      });
    }
  }
  return absl::OkStatus();
}

}  // namespace suppertide::compose
