// An event like an old one, on another day. Pure.
#pragma once

#include <string>

#include "absl/status/statusor.h"
#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/household.pb.h"

namespace suppertide::compose {

// `date`: the day of the first course, "YYYY-MM-DD" in the event's zone. Every time keeps its hour on the
// clock and its distance in days; pins and what was not to be had are left out, as are id and meta.
// InvalidArgument when the date is none.
absl::StatusOr<v1::Event> copiedEvent(const v1::Household& household, const v1::Event& event,
                                      const std::string& date);

}  // namespace suppertide::compose
