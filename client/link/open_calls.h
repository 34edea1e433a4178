// Calls under way that one word ends: what a closing program would else wait for.
#pragma once

#include <grpcpp/client_context.h>

#include <mutex>
#include <set>

namespace suppertide::link {

// Any thread. Outlives its calls.
class OpenCalls {
 public:
  // The context of one call, for as long as it runs.
  class Call {
   public:
    explicit Call(OpenCalls& calls);
    ~Call();
    Call(const Call&) = delete;
    Call& operator=(const Call&) = delete;
    grpc::ClientContext& context() { return context_; }

   private:
    OpenCalls& calls_;
    grpc::ClientContext context_;
  };

  // Ends every call with CANCELLED, and each that begins later.
  void cancel();

 private:
  std::mutex mutex_;  // guards all below
  std::set<grpc::ClientContext*> open_;
  bool cancelled_ = false;
};

}  // namespace suppertide::link
