// The demo's household with its feast planned, on a real server in memory; one for all tests of a program.
#pragma once

#include <google/protobuf/util/json_util.h>

#include <cstdlib>
#include <fstream>
#include <memory>
#include <sstream>

#include "client/link/link.h"
#include "client/link/request_id.h"
#include "client/link/session.h"
#include "server/embedded.h"

namespace suppertide::testing {

class DemoHousehold {
 public:
  DemoHousehold() {
    std::ifstream file(SUPPERTIDE_DEMO);
    std::stringstream text;
    text << file.rdbuf();
    v1::Bundle bundle;
    if (!google::protobuf::util::JsonStringToMessage(text.str(), &bundle).ok()) std::abort();
    server_ = *EmbeddedServer::start({});
    link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
    v1::CreateHouseholdRequest found;
    found.set_host_code(server_->hostCode());
    *found.mutable_household() = bundle.household();
    found.mutable_household()->clear_id();
    found.set_member_id(bundle.household().members(0).id());
    found.set_device_name("laptop");
    found.set_request_id(link::newRequestId());
    const auto founded = stranger.createHousehold(found);
    if (!founded.ok()) std::abort();
    options_.target = server_->target();
    options_.householdId = founded->household().id();
    options_.deviceToken = founded->device_token();
    link::Session host(
        {.target = options_.target, .deviceToken = options_.deviceToken, .certificatePem = ""});
    v1::ImportBundleRequest import;
    import.set_household_id(options_.householdId);
    *import.mutable_bundle() = bundle;
    import.set_request_id(link::newRequestId());
    if (!host.importBundle(import).ok()) std::abort();
    v1::MakePlanRequest plan;
    plan.set_household_id(options_.householdId);
    plan.set_event_id(bundle.events(0).id());
    plan.set_work_limit(300);
    plan.set_request_id(link::newRequestId());
    if (!host.makePlan(plan, nullptr).ok()) std::abort();
  }
  const link::LinkOptions& options() const { return options_; }

 private:
  std::unique_ptr<EmbeddedServer> server_;
  link::LinkOptions options_;
};

inline DemoHousehold& demo() {
  static auto* household = new DemoHousehold;
  return *household;
}

}  // namespace suppertide::testing
