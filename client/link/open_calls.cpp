#include "client/link/open_calls.h"

namespace suppertide::link {

OpenCalls::Call::Call(OpenCalls& calls) : calls_(calls) {
  const std::lock_guard<std::mutex> lock(calls_.mutex_);
  calls_.open_.insert(&context_);
  if (calls_.cancelled_) context_.TryCancel();
}

OpenCalls::Call::~Call() {
  const std::lock_guard<std::mutex> lock(calls_.mutex_);
  calls_.open_.erase(&context_);
}

void OpenCalls::cancel() {
  const std::lock_guard<std::mutex> lock(mutex_);
  cancelled_ = true;
  for (grpc::ClientContext* context : open_) context->TryCancel();
}

}  // namespace suppertide::link
