// A server of its own with a household's people on it, each with a device.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "server/base/clock.h"
#include "server/service/server.h"
#include "suppertide/v1/bundle.pb.h"
#include "tests/evening/cook_client.h"

namespace suppertide::evening {

// Whatever fails while it is set up ends the program.
class Party {
 public:
  // `begin`: seconds since 1970.
  Party(const v1::Bundle& bundle, std::int64_t begin);
  ~Party();

  service::Server& server() { return *server_; }
  ManualClock& clock() { return clock_; }
  CookClient& host() { return *cooks.front(); }
  const std::string& household() const { return household_; }

  std::vector<std::unique_ptr<CookClient>> cooks;  // the host first

 private:
  void found(const v1::Bundle& bundle);
  void join(const std::string& memberId);
  void add(const std::string& memberId, const std::string& token);

  ManualClock clock_;
  const std::filesystem::path folder_;
  std::unique_ptr<service::Server> server_;
  std::string household_;
};

}  // namespace suppertide::evening
