// A dinner on a real server of this process whose clock the test sets, with a device for each of its cooks.
#pragma once

#include <map>
#include <memory>
#include <string>

#include "client/link/link.h"
#include "client/link/session.h"
#include "server/base/clock.h"
#include "server/service/server.h"
#include "tests/support/temp_dir.h"

namespace suppertide::testing {

class Party {
 public:
  // The first host of the household founds it; every cook of its first event has a device. Aborts on errors.
  Party(const v1::Bundle& bundle, std::chrono::sys_seconds begin);

  ManualClock& clock() { return clock_; }
  // Of a cook.
  link::LinkOptions deviceOf(const std::string& memberId) const;
  link::Session& host() { return *host_; }
  const std::string& id() const { return id_; }
  const std::string& eventId() const { return eventId_; }
  // With so much work, so that every run finds the same plan.
  void plan(std::int64_t workLimit);

 private:
  void join(const std::string& memberId);

  TempDir folder_;
  ManualClock clock_;
  std::unique_ptr<service::Server> server_;
  std::string id_, eventId_;
  std::map<std::string, std::string> tokens_;  // by member
  std::unique_ptr<link::Session> host_;
};

}  // namespace suppertide::testing
