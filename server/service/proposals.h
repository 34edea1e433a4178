// Corrected plans that wait for a host's word.
#pragma once

#include "server/service/backend.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::service {

// Each calls `finish` once, perhaps from the writing thread.
void acceptProposal(Backend& backend, const Caller& caller, const v1::AcceptProposalRequest& asked,
                    v1::AcceptProposalResponse* answer, const Finish& finish);
void dismissProposal(Backend& backend, const Caller& caller, const v1::DismissProposalRequest& asked,
                     v1::DismissProposalResponse* answer, const Finish& finish);

}  // namespace suppertide::service
