// How people get in: invitations, and devices that use them.
#pragma once

#include <string>

#include "server/service/backend.h"
#include "suppertide/v1/household_service.pb.h"

namespace suppertide::service {

Failure wrongCode();
// OK when `peer` may try a code now; RESOURCE_EXHAUSTED after too many wrong ones.
Failure mayTryCode(Backend& backend, const std::string& peer);

// At most 60 characters.
Failure checkDeviceName(const std::string& name);
// Made now.
storage::Device newDevice(Backend& backend, const std::string& householdId, const std::string& memberId,
                          const std::string& name);

// Makes an invitation of the caller's household. Blocking.
Failure invite(Backend& backend, const Caller& caller, const v1::CreateInvitationRequest& asked,
               v1::CreateInvitationResponse& answer);

// Lets a device in and calls `finish` once, from any thread. An invitation without
// a member adds one to the household in the same commit. The same request again
// gives the same member, and a token that works in place of the lost one.
void join(Backend& backend, const v1::JoinHouseholdRequest& asked, const std::string& peer,
          v1::JoinHouseholdResponse* answer, const Finish& finish);

}  // namespace suppertide::service
