// The sample dinner behind a real gRPC server of this process, and a window on it.
#pragma once

#include "tests/link/in_process_server.h"
#include "tests/link/scripted_sync.h"
//
#include "client/shell/window_app.h"
#include "tests/window/sample.h"

namespace suppertide::testing {

// Steps later in its plan are told to every open stream once `change` opens.
struct ServedSample {
  link::testing::ScriptedSync sync;
  link::testing::InProcessServer server{sync};

  WindowOptions options() const {
    WindowOptions o;
    o.link.target = server.target();
    o.link.householdId = "quay";
    o.link.deviceToken = "token";
    o.link.firstRetry = std::chrono::milliseconds(5);
    o.at = Instant(std::chrono::seconds(secondsAt("2026-06-20T15:20:00+01:00")));
    o.scheme = WindowOptions::Scheme::kLight;
    return o;
  }
};

}  // namespace suppertide::testing
