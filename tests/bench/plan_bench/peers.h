// Other solvers that plan the same dinners, to compare with.
//
// All get the same reduced dinner: every dish is served and only lateness, then
// quality counts. Each has a model of its own kind, with its own global constraints.
#pragma once

#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "tests/bench/plan_bench/run.h"

namespace suppertide::planning {

struct PeerPaths {
  std::string node = "node";  // the Node program
  std::string minizinc;       // folder of the Node package minizinc
};

struct Peer {
  std::string name;
  Planner planner;
};

// The peers that can be asked for, also those that are not at hand.
std::vector<std::string> peerNames();

// NotFound says what is lacking.
absl::StatusOr<Peer> peerOf(const std::string& name, const PeerPaths& paths);

// The dinner without what it costs to ask people: the tiers below quality are 0.
Problem reduced(Problem problem);

// OK, or Unimplemented naming what the peers' models cannot say: clocks,
// separations, pins, announced steps, air, idle heat, closed ovens, elastic work,
// what is used up or not on the grid.
absl::Status peersKnow(const Problem& problem, Minute grid);

// Adds the plan to the run if it is better than the last, and counts its breaches.
void addPlan(const Problem& problem, const std::vector<Placement>& places, double when, Run& run);

// OK, or NotFound naming what is lacking: the package or Node.
absl::Status minizincAtHand(const PeerPaths& paths);

// Chuffed in the WebAssembly build of the Node package minizinc, the
// tiers one after the other (a folded cost was several times slower). Times
// are seconds of search; loading, flattening and setting up are the start-up.
Run planWithMinizinc(const Problem& problem, const PeerPaths& paths, double limitSeconds);

// Gecode, where the build has it; the start-up is the building of its model.
Run planWithGecode(const Problem& problem, std::uint64_t seed, double limitSeconds);

}  // namespace suppertide::planning
