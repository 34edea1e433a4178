#include "server/compose/day/local_hours.h"

#include "absl/strings/numbers.h"

namespace suppertide::compose {

absl::Time toTime(const google::protobuf::Timestamp& time) {
  return absl::FromUnixSeconds(time.seconds());
}

google::protobuf::Timestamp toTimestamp(absl::Time time) {
  google::protobuf::Timestamp out;
  out.set_seconds(absl::ToUnixSeconds(time));
  return out;
}

absl::TimeZone zoneOf(const v1::Household& household, const v1::Event& event) {
  const std::string& name = event.time_zone().empty() ? household.time_zone() : event.time_zone();
  absl::TimeZone zone = absl::UTCTimeZone();
  if (!absl::LoadTimeZone(name, &zone)) return absl::UTCTimeZone();
  return zone;
}

absl::Time onDay(absl::CivilDay day, const std::string& clock, const absl::TimeZone& zone) {
  int hour = 0;
  int minute = 0;
  if (clock.size() == 5) {
    (void)absl::SimpleAtoi(clock.substr(0, 2), &hour);
    (void)absl::SimpleAtoi(clock.substr(3, 2), &minute);
  }
  return absl::FromCivil(absl::CivilMinute(day.year(), day.month(), day.day(), hour, minute), zone);
}

v1::DayHours awakeHours(const v1::Member& member) {
  if (member.has_awake()) return member.awake();
  v1::DayHours usual;
  usual.set_start("07:00");
  usual.set_limit("22:30");
  return usual;
}

Span hoursOn(absl::CivilDay day, const v1::DayHours& hours, const absl::TimeZone& zone) {
  const bool overMidnight = hours.limit() <= hours.start();
  return {onDay(day, hours.start(), zone), onDay(overMidnight ? day + 1 : day, hours.limit(), zone)};
}

bool isQuiet(const v1::Member& member, absl::Time when, const absl::TimeZone& zone) {
  const v1::DayHours hours = member.has_quiet() ? member.quiet() : awakeHours(member);
  const absl::CivilDay today = absl::ToCivilDay(when, zone);
  bool within = false;
  for (const absl::CivilDay day : {today - 1, today}) {
    const Span span = hoursOn(day, hours, zone);
    within = within || (span.start <= when && when < span.limit);
  }
  return member.has_quiet() ? within : !within;
}

}  // namespace suppertide::compose
