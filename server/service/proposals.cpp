#include "server/service/proposals.h"

#include "server/service/document_calls.h"
#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

constexpr char kAccept[] = "PlanService/AcceptProposal";

// The write that makes the proposal the plan. A proposal that is not there any more may have been
// accepted by this very request: then storage knows its outcome.
storage::WriteRequest accepting(Backend& backend, const Caller& caller,
                                const v1::AcceptProposalRequest& asked) {
  auto write = writeRequest(caller, kAccept, asked.request_id(), asked, asked.validate_only());
  const auto stored = backend.store().get(caller.householdId, {kindOf(v1::PlanProposal()), asked.event_id()});
  v1::PlanProposal proposal;
  if (stored.ok()) proposal = read<v1::PlanProposal>(*stored);
  proposal.mutable_plan()->set_id(asked.event_id());
  write.puts.push_back(putOf(proposal.plan(), storage::Expect::kPresent));
  write.puts.back().etag = proposal.running_plan_etag();
  write.puts.push_back(withoutProposal(asked.event_id()));
  write.puts.back().expect = storage::Expect::kPresent;
  write.puts.back().etag = asked.etag();
  return write;
}

}  // namespace

void acceptProposal(Backend& backend, const Caller& caller, const v1::AcceptProposalRequest& asked,
                    v1::AcceptProposalResponse* answer, const Finish& finish) {
  if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
  if (asked.etag().empty())
    return finish(invalidField("etag", "", "must be the one of the proposal that was looked at"));
  const auto there = backend.store().get(caller.householdId, {kindOf(v1::PlanProposal()), asked.event_id()});
  auto write = accepting(backend, caller, asked);
  // Never an empty plan in place of the one that runs.
  if (!there.ok()) write.puts.front().etag = "none";
  backend.queue().submit(
      std::move(write), [&backend, caller, event = asked.event_id(), answer, finish,
                         missing = !there.ok()](absl::StatusOr<storage::WriteResult> result) {
        if (!result.ok() && missing)
          return finish(failure(absl::NotFoundError("no corrected plan waits for an answer"), "NO_PROPOSAL"));
        if (!result.ok()) return finish(fromStorage(result.status()));
        *answer->mutable_plan() = read<v1::Plan>(result->documents.front());
        answer->set_revision(result->revision);
        // What was told since it was made.
        if (result->changed) backend.corrections().reported(caller.householdId, event);
        finish({});
      });
}

void dismissProposal(Backend& backend, const Caller& caller, const v1::DismissProposalRequest& asked,
                     v1::DismissProposalResponse* answer, const Finish& finish) {
  if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
  auto write =
      writeRequest(caller, "PlanService/DismissProposal", asked.request_id(), asked, asked.validate_only());
  write.puts.push_back(withoutProposal(asked.event_id()));
  write.puts.back().etag = asked.etag();
  backend.queue().submit(std::move(write), [answer, finish](absl::StatusOr<storage::WriteResult> result) {
    if (!result.ok()) return finish(fromStorage(result.status()));
    answer->set_revision(result->revision);
    finish({});
  });
}

}  // namespace suppertide::service
