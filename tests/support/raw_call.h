// One call of raw bytes, as anybody may send them.
#pragma once

#include <grpcpp/grpcpp.h>

#include <memory>
#include <string>

namespace suppertide {

// Sends `bytes` as the only message to `path` ("/suppertide.v1.SyncService/Watch") and returns how the
// call ended, with the first message of the answer in `answer`. Give `context` a deadline where the call
// may go on.
grpc::Status rawCall(const std::shared_ptr<grpc::Channel>& channel, grpc::ClientContext& context,
                     const std::string& path, const std::string& bytes, std::string* answer = nullptr);

}  // namespace suppertide
