#include "tests/evening/cook_client.h"

#include "client/link/request_id.h"

namespace suppertide::evening {

CookClient::CookClient(std::string memberId, const link::LinkOptions& options)
    : memberId_(std::move(memberId)),
      options_(options),
      session_({.target = options.target, .deviceToken = options.deviceToken, .certificatePem = ""}),
      replica_(std::make_shared<const link::Replica>()) {
  comeBack();
}

CookClient::~CookClient() {
  link_.reset();
}

void CookClient::dropOff() {
  link_.reset();
}

void CookClient::comeBack() {
  if (link_ != nullptr) return;
  link_ = std::make_unique<link::Link>(options_, *this);
  link_->start();
}

void CookClient::replicaChanged(std::shared_ptr<const link::Replica> replica,
                                const std::string& /*memberId*/) {
  const std::lock_guard lock(mutex_);
  replica_ = std::move(replica);
  changed_.notify_all();
}

std::shared_ptr<const link::Replica> CookClient::replica() const {
  const std::lock_guard lock(mutex_);
  return replica_;
}

bool CookClient::waitFor(std::int64_t revision) {
  std::unique_lock lock(mutex_);
  return changed_.wait_for(lock, std::chrono::seconds(30), [&] { return replica_->revision >= revision; });
}

std::int64_t CookClient::tell(const std::string& eventId, const v1::Report& report, std::string& refused) {
  if (online()) return send(eventId, {report}, refused);
  waiting_.push_back(report);
  return 0;
}

std::int64_t CookClient::tellWaiting(const std::string& eventId, std::string& refused) {
  if (waiting_.empty()) return 0;
  const std::int64_t revision = send(eventId, waiting_, refused);
  waiting_.clear();
  return revision;
}

std::int64_t CookClient::send(const std::string& eventId, const std::vector<v1::Report>& reports,
                              std::string& refused) {
  v1::AddReportsRequest request;
  request.set_household_id(options_.householdId);
  request.set_event_id(eventId);
  request.set_request_id(link::newRequestId());
  for (const v1::Report& report : reports) *request.add_reports() = report;
  const auto answer = session_.addReports(request);
  if (answer.ok()) return answer->revision();
  refused = std::string(answer.status().message());
  return 0;
}

}  // namespace suppertide::evening
