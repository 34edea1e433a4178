// One timed run of a planner on one dinner, in a process of its own.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

inline constexpr double kNever = std::numeric_limits<double>::infinity();

// All times in seconds of processor time from the begin of the run.
struct Found {
  double when = 0;
  TierCosts cost{};
};

struct Run {
  std::vector<Found> plans;       // each better than the one before
  double proof = kNever;          // when every tier was proven
  double unservedProof = kNever;  // when it was proven that not all can be served
  double startUp = 0;             // of a peer: loading and building its model; in no other time
  TierCosts cost{};               // of the last plan
  TierCosts bound{};              // as in Outcome
  int provenTiers = 0;
  int breaches = -1;  // that the auditor finds in the last plan; -1: no plan came back
  double memoryMegabytes = 0;

  bool hasPlan() const { return !plans.empty(); }
  double firstPlan() const { return plans.empty() ? kNever : plans.front().when; }
  // When a plan first was at most 1 % above `best` in every tier.
  double firstNear(const TierCosts& best) const;
  // In the first tier that is not proven, as part of its cost; 0 when all are proven.
  double gap() const;
};

using Planner = std::function<Run(const Problem&, std::uint64_t seed, double limitSeconds)>;

// The engine.
Run planWithEngine(const Problem& problem, std::uint64_t seed, double limitSeconds);

// Runs `planner` in a child process and waits for it. A child that dies leaves a run without a plan.
Run runApart(const Planner& planner, const Problem& problem, std::uint64_t seed, double limitSeconds);

}  // namespace suppertide::planning
