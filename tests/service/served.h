// A server in memory (or on a file) with a household, and stubs to call it.
#pragma once

#include <grpcpp/grpcpp.h>

#include <memory>
#include <string>

#include "server/service/server.h"
#include "suppertide/v1/event_service.grpc.pb.h"
#include "suppertide/v1/household_service.grpc.pb.h"
#include "suppertide/v1/plan_service.grpc.pb.h"
#include "suppertide/v1/progress_service.grpc.pb.h"
#include "suppertide/v1/recipe_service.grpc.pb.h"
#include "suppertide/v1/sync_service.grpc.pb.h"

namespace suppertide::service {

// A folder that goes away with its owner.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

class Served {
 public:
  // Empty `dataFile`: in memory.
  explicit Served(Backend::Options options = {}, const std::string& dataFile = "",
                  const std::string& calendar = "");

  Server& server() { return *server_; }
  std::shared_ptr<grpc::Channel> channel() const { return channel_; }
  ManualClock& clock() { return clock_; }

  // Creates the household "Harbour Lane" with this device as its host "Ana".
  void found();
  std::string invite(v1::Role role);  // the device token of a new member
  void importDinner();                // the small dinner, with the event "supper"

  std::string household;
  std::string token;

 private:
  TemporaryFolder folder_;
  ManualClock clock_{Instant(std::chrono::seconds(1'800'000'000))};
  std::unique_ptr<Server> server_;
  std::shared_ptr<grpc::Channel> channel_;
};

// A context with a token and a deadline.
std::unique_ptr<grpc::ClientContext> with(const std::string& token);

std::string freshRequest();

}  // namespace suppertide::service
