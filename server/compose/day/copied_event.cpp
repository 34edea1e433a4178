#include "server/compose/day/copied_event.h"

#include "absl/strings/str_cat.h"
#include "server/compose/day/local_hours.h"

namespace suppertide::compose {
namespace {

// So many calendar days later, at the same hour on the clock.
google::protobuf::Timestamp later(const google::protobuf::Timestamp& time, int days,
                                  const absl::TimeZone& zone) {
  const absl::CivilSecond local = absl::ToCivilSecond(toTime(time), zone);
  const absl::CivilDay day(local);
  return toTimestamp(absl::FromCivil(absl::CivilSecond(day + days) + (local - absl::CivilSecond(day)), zone));
}

}  // namespace

absl::StatusOr<v1::Event> copiedEvent(const v1::Household& household, const v1::Event& event,
                                      const std::string& date) {
  absl::CivilDay day;
  if (date.size() != 10 || !absl::ParseCivilTime(date, &day) || day.year() < 1970 || day.year() > 9998)
    return absl::InvalidArgumentError(absl::StrCat(date, " is no date: give YYYY-MM-DD"));
  const absl::TimeZone zone = zoneOf(household, event);
  v1::Event copy = event;
  copy.clear_id();
  copy.clear_meta();
  copy.clear_pins();
  copy.clear_unavailable();
  if (event.courses().empty()) return copy;
  const auto days = static_cast<int>(day - absl::ToCivilDay(toTime(event.courses(0).serving_time()), zone));
  if (event.has_work_start_time())
    *copy.mutable_work_start_time() = later(event.work_start_time(), days, zone);
  for (v1::Course& course : *copy.mutable_courses())
    *course.mutable_serving_time() = later(course.serving_time(), days, zone);
  for (v1::EventCook& cook : *copy.mutable_cooks())
    for (v1::TimeSpan& span : *cook.mutable_available()) {
      *span.mutable_start() = later(span.start(), days, zone);
      if (span.has_limit()) *span.mutable_limit() = later(span.limit(), days, zone);
    }
  return copy;
}

}  // namespace suppertide::compose
