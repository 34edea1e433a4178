#include "tests/support/raw_call.h"

#include <grpcpp/generic/generic_stub.h>

namespace suppertide {

grpc::Status rawCall(const std::shared_ptr<grpc::Channel>& channel, grpc::ClientContext& context,
                     const std::string& path, const std::string& bytes) {
  grpc::CompletionQueue queue;
  grpc::GenericStub stub(channel);
  const grpc::Slice slice(bytes);
  const auto reader = stub.PrepareUnaryCall(&context, path, grpc::ByteBuffer(&slice, 1), &queue);
  reader->StartCall();
  grpc::ByteBuffer answer;
  grpc::Status status;
  reader->Finish(&answer, &status, nullptr);
  void* tag = nullptr;
  bool ok = false;
  queue.Next(&tag, &ok);
  return status;
}

}  // namespace suppertide
