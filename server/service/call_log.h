// One line in the log for each call: what, how it ended, how long it took. No
// names, codes, tokens or contents.
#pragma once

#include <grpcpp/support/status.h>

#include <chrono>
#include <string>

namespace suppertide::service {

// Starts the watch when made. Lines go to the program's log "suppertide"; without one, nowhere.
class CallLog {
 public:
  // `requestId` is told only when it is one, as a client may send any text.
  explicit CallLog(std::string method, const std::string& requestId = "");
  void finished(const grpc::Status& status) const;

 private:
  std::string method_;
  std::string requestId_;
  std::chrono::steady_clock::time_point begin_;
};

}  // namespace suppertide::service
