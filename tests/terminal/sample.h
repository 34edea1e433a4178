// A small dinner by hand: two days, two cooks, two ovens, one bread, one clash.
#pragma once

#include <string>

#include "suppertide/v1/bundle.pb.h"

namespace suppertide::terminal::testing {

// 2026-06-19 is a Friday; the dinner is on Saturday at 19:00 in Lisbon (UTC+1).
google::protobuf::Timestamp at(const std::string& rfc3339);
google::protobuf::Duration minutes(int count);

v1::Bundle sampleBundle();
v1::Plan samplePlan();

}  // namespace suppertide::terminal::testing
