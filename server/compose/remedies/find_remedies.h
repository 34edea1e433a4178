// Changes that make an event fit, each planned and audited before it is told.
//
// The clash comes first; ideas about its wishes are tried on the few dishes that
// clash, then on the whole event. Where clashes are several, changes are put
// together until none is left.
#pragma once

#include <cstdint>
#include <vector>

#include "absl/status/statusor.h"
#include "server/compose/replanner.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/remedy.pb.h"

namespace suppertide::compose {

struct FoundRemedy {
  int number = 0;                   // from 1, in the order found
  std::vector<v1::Remedy> changes;  // one, or several made together
  Documents documents;              // with the changes made
  v1::Plan plan;                    // serves every dish in time and breaks no rule
  int size = 0;                     // of all changes, in points
};

// Told of progress on the calling thread.
class RemedyMonitor {
 public:
  virtual ~RemedyMonitor() = default;
  virtual void clashesKnown(const std::vector<v1::Clash>& /*clashes*/) {}  // all so far, when one is found
  virtual void found(const FoundRemedy& /*remedy*/) {}
  virtual void tried(int /*tried*/, int /*candidates*/) {}  // changes, on all or some dishes
  virtual bool stop() { return false; }                     // asked often
};

struct RemedyOptions {
  std::uint64_t seed = 1;
  int most = 5;
  // Solver conflicts to decide whether a change helps the dishes that clash, and whether all
  // dishes then fit; and rounds to better a plan that is kept.
  std::int64_t tryConflicts = 300;
  std::int64_t planConflicts = 1'000;
  int rounds = 20;
  int evenings = 500;  // simulated for each plan's chances
  // A second thread asks ahead what the first will want to know. The same is found with one and with two.
  bool twoThreads = true;
};

struct RemedySearch {
  bool fits = false;  // as it is; then nothing else is set
  std::vector<v1::Clash> clashes;
  std::vector<FoundRemedy> remedies;  // smallest change first, then by the plan's costs
};

// InvalidArgument for documents that planEvent() would refuse. Stopped: what was found so far. `running`: of
// an event that is under way; what has happened stays, and no change touches a step that has begun.
absl::StatusOr<RemedySearch> findRemedies(const Documents& documents, const RemedyOptions& options,
                                          RemedyMonitor* monitor = nullptr,
                                          const RunningPlan* running = nullptr);

}  // namespace suppertide::compose
