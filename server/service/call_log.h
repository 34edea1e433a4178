// One line in the log for each call: what, how it ended, how long it took, for
// which household and request. No names, codes, tokens or contents.
#pragma once

#include <grpcpp/support/status.h>

#include <chrono>
#include <string>

namespace suppertide::service {

class Metrics;

// Starts the watch when made. Lines go to the program's log "suppertide"; without
// one, nowhere. Counts the call among the metrics, which outlive it.
class CallLog {
 public:
  // `requestId` is told only when it is one, as a client may send any text.
  CallLog(Metrics& metrics, std::string method, const std::string& requestId = "");
  // `householdId` is empty when nobody was admitted.
  void finished(const grpc::Status& status, const std::string& householdId = "") const;

 private:
  Metrics& metrics_;
  std::string method_;
  std::string requestId_;
  std::chrono::steady_clock::time_point begin_;
};

}  // namespace suppertide::service
