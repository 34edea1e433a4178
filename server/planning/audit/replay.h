// What the auditor's parts share: the schedule being replayed and the breaches found so far.
//
// Internal to the auditor. Each part looks at the rules in its name and at
// nothing else, so that one mistake spoils one rule.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "server/planning/audit/audit.h"

namespace suppertide::planning {

template <typename T>
const T& nth(const std::vector<T>& values, int index) {
  return values[static_cast<std::size_t>(index)];
}

struct Replay {
  const Problem& problem;
  const Schedule& schedule;
  std::vector<int> served;  // steps of served dishes in a mode that exists, ascending
  std::vector<Breach> breaches;

  const Step& step(int index) const { return nth(problem.steps, index); }
  const Placement& at(int index) const { return nth(schedule.steps, index); }
  const Mode& mode(int index) const { return nth(step(index).modes, at(index).mode); }
  bool isServed(int index) const;
  bool isAt(int index, Minute minute) const { return at(index).start <= minute && minute < at(index).end; }
};

// Joins a breach's consecutive minutes into one. Tell it every minute in order,
// then close(): a minute without a breach, or another pair of steps, ends the run.
class BreachRun {
 public:
  enum class Amount { kMinutes, kPeak };  // minutes of the run, or the worst minute's amount
  BreachRun(Replay& replay, Amount amount) : replay_(replay), amount_(amount) {}
  void minute(const std::optional<Breach>& now);
  void close();

 private:
  Replay& replay_;
  Amount amount_;
  std::optional<Breach> open_;
};

void auditBounds(Replay& replay);     // kGap, kReadiness of single steps
void auditGaps(Replay& replay);       // kGap between steps
void auditServing(Replay& replay);    // kServing
void auditDecisions(Replay& replay);  // kPinned, kModeLink
void auditCooks(Replay& replay);      // kCook
void auditResources(Replay& replay);  // kCapacity
void auditOvens(Replay& replay);      // kOvenTemperature, kOvenProofing, kOvenRacks

}  // namespace suppertide::planning
