// A server in memory (or on a file) with a household, and stubs to call it.
#pragma once

#include <google/protobuf/descriptor.h>
#include <grpcpp/grpcpp.h>

#include <future>
#include <memory>
#include <string>
#include <vector>

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
  // Writes, or only checks, all of a bundle as the host.
  grpc::Status import(const v1::Bundle& bundle, v1::ImportBundleResponse* answer = nullptr,
                      bool validateOnly = false);
  v1::Bundle exported();  // all of the household

  std::string household;
  std::string token;

 private:
  TemporaryFolder folder_;
  ManualClock clock_{Instant(std::chrono::seconds(1'800'000'000))};
  std::unique_ptr<Server> server_;
  std::shared_ptr<grpc::Channel> channel_;
};

// Keeps all `threads` of the workers from starting anything until it goes away; at
// first it waits until they have begun all that was posted before.
class BusyWorkers {
 public:
  BusyWorkers(Workers& workers, int threads);
  ~BusyWorkers() { released_.set_value(); }

 private:
  std::promise<void> released_;
  std::vector<std::promise<void>> busy_;
};

// Every call of every service that is in this program.
std::vector<const google::protobuf::MethodDescriptor*> everyCall();

// One import in one part.
grpc::Status importBundle(v1::HouseholdService::Stub& stub, grpc::ClientContext& context,
                          const v1::ImportBundleRequest& asked, v1::ImportBundleResponse* answer);

// A context with a token and a deadline.
std::unique_ptr<grpc::ClientContext> with(const std::string& token);

std::string freshRequest();

}  // namespace suppertide::service
