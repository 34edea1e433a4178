#include "server/service/call_log.h"

#include <spdlog/spdlog.h>

#include <utility>

#include "server/base/ids.h"
#include "server/service/metrics.h"

namespace suppertide::service {
namespace {

// Calls that went wrong for the server's own reasons; those refused for the caller's are everyday.
spdlog::level::level_enum levelOf(grpc::StatusCode code) {
  switch (code) {
    case grpc::StatusCode::INTERNAL:
    case grpc::StatusCode::DATA_LOSS:
    case grpc::StatusCode::UNKNOWN:
      return spdlog::level::err;
    case grpc::StatusCode::UNAVAILABLE:
    case grpc::StatusCode::RESOURCE_EXHAUSTED:
      return spdlog::level::warn;
    default:
      return spdlog::level::debug;
  }
}

}  // namespace

CallLog::CallLog(Metrics& metrics, std::string method, const std::string& requestId)
    : metrics_(metrics),
      method_(std::move(method)),
      requestId_(isId(requestId) ? requestId : "-"),
      begin_(std::chrono::steady_clock::now()) {}

void CallLog::finished(const grpc::Status& status, const std::string& householdId) const {
  const auto spent =
      std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begin_);
  const int code = static_cast<int>(status.error_code());
  metrics_.called(method_, code, spent);
  const auto log = spdlog::get("suppertide");
  if (log == nullptr) return;
  log->log(levelOf(status.error_code()), "event=call method={} code={} ms={:.1f} request={} household={}",
           method_, code, static_cast<double>(spent.count()) / 1000.0, requestId_,
           householdId.empty() ? "-" : householdId);
}

}  // namespace suppertide::service
