// A household behind the real server, in memory: what is written there is checked, planned and stored.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>

#include "client/link/request_id.h"
#include "client/link/session.h"
#include "client/shell/window_app.h"
#include "server/embedded.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide::testing {

// Its only device is a host's.
class ServedHousehold {
 public:
  explicit ServedHousehold(const v1::Bundle& bundle) {
    auto started = EmbeddedServer::start({});
    EXPECT_TRUE(started.ok()) << started.status();
    server_ = std::move(*started);
    v1::CreateHouseholdRequest found;
    found.set_host_code(server_->hostCode());
    found.mutable_household()->set_display_name("Test house");
    found.mutable_household()->set_time_zone("Europe/Lisbon");
    found.set_device_name("test");
    found.set_request_id(link::newRequestId());
    link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
    const auto made = stranger.createHousehold(found);
    EXPECT_TRUE(made.ok()) << made.status();
    token_ = made->device_token();
    householdId_ = made->household().id();
    v1::ImportBundleRequest import;
    import.set_household_id(householdId_);
    import.set_request_id(link::newRequestId());
    *import.mutable_bundle() = bundle;
    const auto written = session().importBundle(import);
    EXPECT_TRUE(written.ok()) << written.status();
  }

  // Another client of the same device.
  link::Session session() const {
    return link::Session({.target = server_->target(), .deviceToken = token_, .certificatePem = ""});
  }
  const std::string& householdId() const { return householdId_; }
  WindowOptions options() const {
    WindowOptions options;
    options.link.target = server_->target();
    options.link.householdId = householdId_;
    options.link.deviceToken = token_;
    options.link.firstRetry = std::chrono::milliseconds(5);
    options.scheme = WindowOptions::Scheme::kLight;
    return options;
  }

 private:
  std::unique_ptr<EmbeddedServer> server_;
  std::string token_;
  std::string householdId_;
};

}  // namespace suppertide::testing
