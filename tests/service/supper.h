// The small dinner with two ovens alike, planned and stored on a server, and what its cooks do.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <string>

#include "tests/service/served.h"

namespace suppertide::service {

constexpr std::int64_t kMinute = 60;  // in seconds

// Live changes of a household from now on.
class Follower {
 public:
  Follower(Served& served, const std::string& token);
  ~Follower() { context_->TryCancel(); }
  // The next change that `wanted` is true of; fails the test when none comes within half a minute.
  v1::Change next(const std::function<bool(const v1::Change&)>& wanted);
  v1::Plan nextPlan();

 private:
  std::unique_ptr<grpc::ClientContext> context_;
  std::unique_ptr<v1::SyncService::Stub> stub_;
  std::unique_ptr<grpc::ClientReader<v1::WatchResponse>> stream_;
};

class Supper {
 public:
  explicit Supper(v1::LiveCorrection correction = v1::LIVE_CORRECTION_AT_ONCE, Backend::Options options = {},
                  const std::string& calendar = "");

  Served& served() { return served_; }
  v1::Plan makePlan();
  v1::Plan stored();
  const v1::Event& event() const { return event_; }

  // Not told yet; the id is fresh.
  static v1::Report about(const std::string& stepId);
  grpc::Status tell(const v1::Report& report, v1::AddReportsResponse* answer = nullptr,
                    const std::string& token = "");
  void timeIs(std::int64_t seconds) { served_.clock().set(Instant(std::chrono::seconds(seconds))); }

  static const v1::PlannedStep& step(const v1::Plan& plan, const std::string& id);
  static const v1::MovedStep* moved(const v1::Plan& plan, const std::string& id);
  static std::int64_t startOf(const v1::Plan& plan, const std::string& id) {
    return step(plan, id).start_time().seconds();
  }

 private:
  Served served_;
  v1::Event event_;
};

}  // namespace suppertide::service
