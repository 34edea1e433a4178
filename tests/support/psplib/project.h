// Published project schedules: jobs with modes, lags and resources, as read from their files.
//
// The formats of PSPLIB (Kolisch and Sprecher, European Journal of Operational
// Research 96, 1997) and of ProGen/max (Schwindt): `.sm` one mode a job, `.mm`
// several modes and resources that are used up, `.sch` minimum and maximum lags
// between starts. Only what scheduling needs is kept. Jobs count from 0 here.
#pragma once

#include <istream>
#include <vector>

#include "absl/status/statusor.h"
#include "server/planning/model/problem.h"

namespace suppertide::planning::psplib {

struct Project {
  struct Mode {
    Minute length = 0;
    std::vector<int> uses;      // of each renewable resource, from start to end
    std::vector<int> consumes;  // of each resource that is used up
  };
  // Job `to` starts at least `least` after this job's `from` edge. A negative
  // `least` between starts is a maximum lag the other way round.
  struct Lag {
    int to = 0;
    Edge from = Edge::kEnd;
    Minute least = 0;
  };
  struct Job {
    std::vector<Mode> modes;
    std::vector<Lag> lags;
  };
  std::vector<Job> jobs;        // the first is the source, the last the sink
  std::vector<int> capacities;  // of the renewable resources
  std::vector<int> stocks;      // of those that are used up
};

// Reads `.sm` and `.mm`. InvalidArgument names the part that is missing or broken.
absl::StatusOr<Project> readProject(std::istream& in);

// Reads `.sch`. InvalidArgument as above.
absl::StatusOr<Project> readLagProject(std::istream& in);

// The length of the longest chain of lags with every job in its shortest mode:
// no schedule ends before it. With a cycle of lags that no schedule can keep,
// some length that means nothing.
Minute longestChain(const Project& project);

// The project as one dish whose steps are the jobs, served at longestChain():
// its lateness is how far the makespan is above that, and it is unserved when
// no schedule exists. Plan it on a grid of 1. InvalidArgument when a job of no
// length needs a resource, which a Problem does not know.
absl::StatusOr<Problem> toProblem(const Project& project);

}  // namespace suppertide::planning::psplib
