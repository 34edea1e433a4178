// What the auditor's rules share: the schedule being replayed, and where they write what they find.
//
// Internal to the auditor. Each rule looks at what is in its name and at nothing
// else, so that one mistake spoils one rule.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "server/base/index.h"
#include "server/planning/audit/audit.h"

namespace suppertide::planning {

struct Replay {
  Replay(const Problem& problemToKeep, const Schedule& scheduleToReplay);

  const Problem& problem;
  const Schedule& schedule;
  std::vector<int> served;  // steps of served dishes in a mode that exists, ascending

  const Step& step(int index) const { return nth(problem.steps, index); }
  const Placement& at(int index) const { return nth(schedule.steps, index); }
  const Mode& mode(int index) const { return nth(step(index).modes, at(index).mode); }
  bool modeExists(int index) const;
  bool isServed(int index) const;
  bool isAt(int index, Minute minute) const { return at(index).start <= minute && minute < at(index).end; }
  Minute edge(int index, Edge which) const { return which == Edge::kStart ? at(index).start : at(index).end; }
};

// The breaches of one rule; it stamps them with the rule's id.
class Findings {
 public:
  Findings(Rule rule, std::vector<Breach>& breaches) : rule_(rule), breaches_(breaches) {}
  void add(Breach breach) {
    breach.rule = rule_;
    breaches_.push_back(breach);
  }

 private:
  Rule rule_;
  std::vector<Breach>& breaches_;
};

// Joins a breach's consecutive minutes into one. Tell it every minute in order,
// then close(): a minute without a breach, or another pair of steps, ends the run.
class BreachRun {
 public:
  enum class Amount { kMinutes, kPeak };  // minutes of the run, or the worst minute's amount
  BreachRun(Findings& findings, Amount amount) : findings_(findings), amount_(amount) {}
  void minute(const std::optional<Breach>& now);
  void close();

 private:
  Findings& findings_;
  Amount amount_;
  std::optional<Breach> open_;
};

// How the step's length is out of the range that its mode allows at its start.
std::optional<Breach> lengthBreach(const Replay& replay, int index);

// What one step takes of a thing of limited amount.
struct Demand {
  int step;
  int amount;
};
// `at` (its thing and minute) filled in when `taken` and the demands present in
// that minute are above `capacity`: the step that came last, one beside it, by how much.
std::optional<Breach> overload(const Replay& replay, const std::vector<Demand>& demands, Breach at, int taken,
                               int capacity);

}  // namespace suppertide::planning
