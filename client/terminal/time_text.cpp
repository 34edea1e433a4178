#include "client/terminal/time_text.h"

#include "absl/strings/str_cat.h"

namespace suppertide::terminal {
namespace {

constexpr long long kMinutesOfDay = 24 * 60;

std::string plural(long long count, const char* one, const char* many) {
  return absl::StrCat(count, " ", count == 1 ? one : many);
}

}  // namespace

absl::Time toTime(const google::protobuf::Timestamp& timestamp) {
  return absl::FromUnixSeconds(timestamp.seconds()) + absl::Nanoseconds(timestamp.nanos());
}

absl::Duration toDuration(const google::protobuf::Duration& duration) {
  return absl::Seconds(duration.seconds()) + absl::Nanoseconds(duration.nanos());
}

std::string durationText(absl::Duration duration) {
  const absl::Duration length = absl::AbsDuration(duration);
  const long long minutes = absl::ToInt64Minutes(length + absl::Seconds(30));
  if (minutes < 60) return absl::StrCat(minutes, " min");
  if (minutes < kMinutesOfDay) {
    return minutes % 60 == 0 ? absl::StrCat(minutes / 60, " h")
                             : absl::StrCat(minutes / 60, " h ", minutes % 60, " min");
  }
  const std::string days = plural(minutes / kMinutesOfDay, "day", "days");
  const long long hours = minutes % kMinutesOfDay / 60;
  return hours == 0 ? days : absl::StrCat(days, " ", hours, " h");
}

std::string durationText(const google::protobuf::Duration& duration) {
  return durationText(toDuration(duration));
}

Clock::Clock(const std::string& ianaName) {
  if (ianaName.empty() || !absl::LoadTimeZone(ianaName, &zone_)) zone_ = absl::UTCTimeZone();
}

std::string Clock::hour(absl::Time time) const {
  return absl::FormatTime("%H:%M", time, zone_);
}
std::string Clock::shortDay(absl::Time time) const {
  return absl::FormatTime("%a", time, zone_);
}
std::string Clock::dayHour(absl::Time time) const {
  return absl::FormatTime("%a %H:%M", time, zone_);
}
std::string Clock::day(absl::Time time) const {
  return absl::FormatTime("%A %-d %B", time, zone_);
}
std::string Clock::date(absl::Time time) const {
  return absl::FormatTime("%A %-d %B %Y", time, zone_);
}

absl::Time Clock::midnightBefore(absl::Time time) const {
  return absl::FromCivil(absl::ToCivilDay(time, zone_), zone_);
}

bool Clock::sameDay(absl::Time a, absl::Time b) const {
  return absl::ToCivilDay(a, zone_) == absl::ToCivilDay(b, zone_);
}

std::string Clock::hourSeenFrom(absl::Time reference, absl::Time time) const {
  if (sameDay(reference, time)) return hour(time);
  if (absl::AbsDuration(time - reference) < absl::Hours(6 * 24)) return dayHour(time);
  return absl::FormatTime("%a %-d %B %H:%M", time, zone_);
}

std::string Clock::span(absl::Time start, absl::Time limit) const {
  if (start == limit) return hour(start);
  return absl::StrCat(hour(start), "–", hourSeenFrom(start, limit));
}

std::string Clock::spanWithDay(absl::Time start, absl::Time limit) const {
  if (start == limit) return dayHour(start);
  return absl::StrCat(dayHour(start), "–", hourSeenFrom(start, limit));
}

}  // namespace suppertide::terminal
