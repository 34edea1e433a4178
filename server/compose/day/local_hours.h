// A member's hours on a calendar day.
#pragma once

#include <string>

#include "absl/time/time.h"
#include "google/protobuf/timestamp.pb.h"
#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/household.pb.h"

namespace suppertide::compose {

absl::Time toTime(const google::protobuf::Timestamp& time);
// To the second.
google::protobuf::Timestamp toTimestamp(absl::Time time);

// The event's own or the household's; UTC where neither is known here.
absl::TimeZone zoneOf(const v1::Household& household, const v1::Event& event);

// "HH:MM" on a day; "24:00" is the next midnight. A time that a clock change leaves out is as long
// after the one before.
absl::Time onDay(absl::CivilDay day, const std::string& clock, const absl::TimeZone& zone);

v1::DayHours awakeHours(const v1::Member& member);
// [start, limit) of the hours that begin on the day; a limit before the start is on the next day.
struct Span {
  absl::Time start;
  absl::Time limit;
};
Span hoursOn(absl::CivilDay day, const v1::DayHours& hours, const absl::TimeZone& zone);
// Whether reminders make no sound then.
bool isQuiet(const v1::Member& member, absl::Time when, const absl::TimeZone& zone);

}  // namespace suppertide::compose
