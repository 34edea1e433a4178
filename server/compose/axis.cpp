#include "server/compose/axis.h"

#include <cstdlib>

namespace suppertide::compose {
namespace {

constexpr std::int64_t kGridSeconds = 300;

std::int64_t floorDivide(std::int64_t value, std::int64_t by) {
  return value >= 0 ? value / by : -((-value + by - 1) / by);
}

}  // namespace

int minutesOf(const google::protobuf::Duration& duration) {
  return static_cast<int>(duration.seconds() / 60);
}

google::protobuf::Duration durationOf(std::int64_t minutes) {
  google::protobuf::Duration duration;
  duration.set_seconds(minutes * 60);
  return duration;
}

TimeAxis::TimeAxis(const google::protobuf::Timestamp& origin, const absl::TimeZone& zone)
    : origin_(absl::FromUnixSeconds(floorDivide(origin.seconds(), kGridSeconds) * kGridSeconds)),
      zone_(zone) {}

int TimeAxis::minuteOf(const google::protobuf::Timestamp& time) const {
  return static_cast<int>(floorDivide(time.seconds() - absl::ToUnixSeconds(origin_), 60));
}

google::protobuf::Timestamp TimeAxis::timeOf(int minute) const {
  google::protobuf::Timestamp time;
  time.set_seconds(absl::ToUnixSeconds(origin_) + std::int64_t{minute} * 60);
  return time;
}

int TimeAxis::clockAtZero() const {
  const absl::CivilSecond local = absl::ToCivilSecond(origin_, zone_);
  return local.hour() * 60 + local.minute();
}

std::string TimeAxis::dateOf(int minute) const {
  return absl::FormatTime("%Y-%m-%d", origin_ + absl::Minutes(minute), zone_);
}

int TimeAxis::minuteOfClock(int days, const std::string& clock) const {
  const int hour = std::atoi(clock.substr(0, 2).c_str());
  const int minute = clock.size() >= 5 ? std::atoi(clock.substr(3, 2).c_str()) : 0;
  const absl::CivilDay day = absl::ToCivilDay(origin_, zone_) + days;
  const absl::CivilMinute local = absl::CivilMinute(day) + hour * 60 + minute;
  return static_cast<int>(absl::ToInt64Minutes(absl::FromCivil(local, zone_) - origin_));
}

int TimeAxis::daysUpTo(int limit) const {
  const absl::CivilDay first = absl::ToCivilDay(origin_, zone_);
  const absl::CivilDay last = absl::ToCivilDay(origin_ + absl::Minutes(limit), zone_);
  return static_cast<int>(last - first) + 1;
}

}  // namespace suppertide::compose
