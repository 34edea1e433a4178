// The planner's axis of minutes against instants and the wall clock.
#pragma once

#include <cstdint>
#include <string>

#include "absl/time/time.h"
#include "google/protobuf/duration.pb.h"
#include "google/protobuf/timestamp.pb.h"
#include "server/base/interval.h"

namespace suppertide::compose {

// Whole minutes, rounded towards zero; 0 when unset.
int minutesOf(const google::protobuf::Duration& duration);
google::protobuf::Duration durationOf(std::int64_t minutes);

class TimeAxis {
 public:
  // Minute 0 is `origin` rounded down to five minutes.
  TimeAxis(const google::protobuf::Timestamp& origin, const absl::TimeZone& zone);

  // Rounded down.
  int minuteOf(const google::protobuf::Timestamp& time) const;
  google::protobuf::Timestamp timeOf(int minute) const;
  // Minutes after local midnight at minute 0; places with hourly temperatures
  // follow it, an hour off after a clock change.
  int clockAtZero() const;
  // Local calendar day of a minute, "YYYY-MM-DD".
  std::string dateOf(int minute) const;
  // Minute of "HH:MM" on the local day that is `days` after the day of minute 0;
  // "24:00" is the next midnight.
  int minuteOfClock(int days, const std::string& clock) const;
  // How many local days [0, limit) touches.
  int daysUpTo(int limit) const;

 private:
  absl::Time origin_;
  absl::TimeZone zone_;
};

}  // namespace suppertide::compose
