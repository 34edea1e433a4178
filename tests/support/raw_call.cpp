#include "tests/support/raw_call.h"

#include <grpcpp/generic/generic_stub.h>

namespace suppertide {

grpc::Status rawCall(const std::shared_ptr<grpc::Channel>& channel, grpc::ClientContext& context,
                     const std::string& path, const std::string& bytes, std::string* answer) {
  grpc::CompletionQueue queue;
  grpc::GenericStub stub(channel);
  const grpc::Slice slice(bytes);
  const auto reader = stub.PrepareUnaryCall(&context, path, grpc::ByteBuffer(&slice, 1), &queue);
  reader->StartCall();
  grpc::ByteBuffer answered;
  grpc::Status status;
  reader->Finish(&answered, &status, nullptr);
  void* tag = nullptr;
  bool ok = false;
  queue.Next(&tag, &ok);
  grpc::Slice whole;
  if (answer != nullptr && status.ok() && answered.DumpToSingleSlice(&whole).ok())
    answer->assign(reinterpret_cast<const char*>(whole.begin()), whole.size());
  return status;
}

}  // namespace suppertide
