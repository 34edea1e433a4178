// Documents in, a plan document out: the only bridge between the wire's words
// and the engines. Pure: no clock, no storage, no threads.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "absl/status/statusor.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide::compose {

// What one event is planned from. Valid by validate() (validate.h) and complete:
// every id that the event refers to is here.
struct Documents {
  v1::Household household;
  v1::Kitchen kitchen;  // the event's
  std::vector<v1::Starter> starters;
  std::vector<v1::Recipe> recipes;
  v1::Event event;
};

struct PlanOptions {
  std::uint64_t seed = 1;
  std::int64_t workLimit = 0;  // 0: until proven or stopped
  // Replanning only: what wishes clash is not worked out, which may take longer than the plan. Where
  // nothing moves, it is as it was told.
  bool clashesLater = false;
};

// Told of progress on the planning thread.
class PlanMonitor {
 public:
  virtual ~PlanMonitor() = default;
  virtual void improved(const v1::Plan& /*plan*/) {}  // audited and complete
  virtual void progressed(const v1::Quality& /*quality*/) {}
  virtual bool stop() { return false; }  // asked often
};

// Plans the event. A dinner that does not fit is OK, with unserved dishes.
// Times, revisions and etags in meta are left to the caller, as is SearchInfo.time_used.
absl::StatusOr<v1::Plan> planEvent(const Documents& documents, const PlanOptions& options,
                                   PlanMonitor* monitor = nullptr);

struct AuditResult {
  std::vector<v1::Breach> breaches;
  v1::TierCosts costs;
};
// Audits any plan of the event, also one edited by hand. InvalidArgument when
// the plan names steps, cooks, ovens or places that the documents lack.
absl::StatusOr<AuditResult> auditPlan(const Documents& documents, const v1::Plan& plan);

}  // namespace suppertide::compose
