// Writes of any kind through one door: what is kept in a queue need not know its call.
#pragma once

#include <google/protobuf/message.h>

#include <chrono>
#include <memory>
#include <string>

#include "absl/status/statusor.h"

namespace grpc {
class Channel;
}  // namespace grpc

namespace suppertide::link {

class OpenCalls;

// The path of the one call that takes such a request, "/suppertide.v1.EventService/UpdateEvent";
// empty when no service of ours takes it or it is a streaming call.
std::string callPathOf(const google::protobuf::Message& request);

// Sets household_id, request_id and the id of a document to be created where the request has these
// and they are empty: what is sent again, or changed before it was sent, keeps its name.
void fillIds(google::protobuf::Message& request, const std::string& householdId);

// Makes the call of `request`, one of `calls`, waits for it and gives the answer: a WriteRecipeResponse, ...
// Errors as of Session; InvalidArgument when it has no call.
absl::StatusOr<std::unique_ptr<google::protobuf::Message>> writeAny(
    const std::shared_ptr<grpc::Channel>& channel, const std::string& deviceToken,
    const google::protobuf::Message& request, std::chrono::milliseconds deadline, OpenCalls& calls);

}  // namespace suppertide::link
