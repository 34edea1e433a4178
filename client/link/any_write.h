// Writes of any kind through one door: what is kept in a queue need not know its call.
#pragma once

#include <google/protobuf/message.h>

#include <chrono>
#include <memory>
#include <string>

#include "absl/status/status.h"

namespace grpc {
class Channel;
}  // namespace grpc

namespace suppertide::link {

// The path of the one call that takes such a request, "/suppertide.v1.EventService/UpdateEvent";
// empty when no service of ours takes it or it is a streaming call.
std::string callPathOf(const google::protobuf::Message& request);

// Sets household_id and request_id where the request has these fields and they are empty.
void fillIds(google::protobuf::Message& request, const std::string& householdId);

// Makes the call of `request` and waits for it. Errors as of Session; InvalidArgument when it has no call.
absl::Status writeAny(const std::shared_ptr<grpc::Channel>& channel, const std::string& deviceToken,
                      const google::protobuf::Message& request, std::chrono::milliseconds deadline);

}  // namespace suppertide::link
