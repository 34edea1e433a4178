// A plan as if all of it happened on another day.
#pragma once

#include "absl/time/time.h"
#include "server/compose/day/local_hours.h"
#include "suppertide/v1/plan.pb.h"

namespace suppertide::compose {

// Every step so many days later at the same local time; what else the plan foresees is left out.
inline void shiftDays(v1::Plan& plan, const absl::TimeZone& zone, int days) {
  const auto shift = [&](google::protobuf::Timestamp* time) {
    const absl::CivilSecond local = zone.At(toTime(*time)).cs;
    const absl::CivilDay day = absl::CivilDay(local);
    *time =
        toTimestamp(absl::FromCivil(absl::CivilSecond(day + days) + (local - absl::CivilSecond(day)), zone));
  };
  for (v1::PlannedStep& step : *plan.mutable_steps()) {
    shift(step.mutable_start_time());
    shift(step.mutable_end_time());
  }
  plan.clear_first_actions();
  plan.clear_oven_programs();
  plan.clear_doughs();
  plan.clear_fetches();
}

}  // namespace suppertide::compose
