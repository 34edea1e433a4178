#include "server/service/running_event.h"

#include "server/compose/live_correction.h"
#include "server/service/bundle_import.h"

namespace suppertide::service {

Failure readProgress(Backend& backend, const std::string& householdId, const std::string& eventId,
                     v1::Progress& progress) {
  const auto stored = backend.store().get(householdId, {"progress", eventId});
  if (stored.ok())
    progress = read<v1::Progress>(*stored);
  else if (stored.status().code() != absl::StatusCode::kNotFound)
    return fromStorage(stored.status());
  return {};
}

Failure readRunningEvent(Backend& backend, const std::string& householdId, const std::string& eventId,
                         RunningEvent& event) {
  if (const Failure wrong =
          documentsOf(backend, householdId, eventId, event.documents, event.inputRevision, &event.inputEtags);
      wrong.failed())
    return wrong;
  const auto plan = backend.store().get(householdId, {"plan", eventId});
  if (!plan.ok()) return fromStorage(plan.status());
  event.running.plan = read<v1::Plan>(*plan);
  event.running.now.set_seconds(backend.clock().now().time_since_epoch().count());
  return readProgress(backend, householdId, eventId, event.running.progress);
}

void stampPlan(const RunningEvent& event, v1::Plan& plan) {
  plan.set_input_revision(event.inputRevision);
  for (const auto& [document, etag] : event.inputEtags) (*plan.mutable_input_etags())[document] = etag;
  compose::carryOver(event.running.plan, event.running.progress.reports_size() > 0, plan);
}

storage::Put withoutProposal(const std::string& eventId) {
  return {{kindOf(v1::PlanProposal()), eventId}, "", storage::Expect::kAnything, "", true};
}

}  // namespace suppertide::service
