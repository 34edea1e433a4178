#include "server/compose/validate/checker.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/time/time.h"
#include "server/base/ids.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kMostValueBytes = 60;
// 0001-01-01 to 9999-12-31, as the standard JSON mapping allows.
constexpr std::int64_t kFirstSecond = -62135596800;
constexpr std::int64_t kLastSecond = 253402300799;

// Bytes of the character at the start of `text`; 0 when it isn't valid UTF-8
// (too long forms, surrogates and what lies above U+10FFFF included).
std::size_t characterBytes(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t size = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || text.size() < size) return 0;
  for (std::size_t i = 1; i < size; ++i)
    if ((byte(i) & 0xC0U) != 0x80U) return 0;
  const unsigned second = byte(1);
  const bool tooLong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
  const bool noCharacter = (first == 0xED && second > 0x9F) || (first == 0xF4 && second > 0x8F);
  return tooLong || noCharacter ? 0 : size;
}

std::string shortened(std::string_view text) {
  std::string shown;
  while (!text.empty()) {
    const std::size_t size = characterBytes(text);
    if (shown.size() + std::max<std::size_t>(size, 1) > kMostValueBytes) return shown + "…";
    shown += size == 0 ? "?" : std::string(text.substr(0, size));
    text.remove_prefix(std::max<std::size_t>(size, 1));
  }
  return shown;
}

std::string withUnit(double number, std::string_view unit) {
  return unit.empty() ? absl::StrCat(number) : absl::StrCat(number, " ", std::string(unit));
}

std::string secondsAsText(const google::protobuf::Duration& value) {
  if (value.nanos() != 0)
    return absl::StrCat(static_cast<double>(value.seconds()) + value.nanos() / 1e9, "s");
  const auto minutes = wholeMinutes(value);
  return minutes ? minutesAsText(*minutes) : absl::StrCat(value.seconds(), "s");
}

std::string timeAsText(const google::protobuf::Timestamp& value) {
  return absl::FormatTime("%Y-%m-%dT%H:%M:%SZ", absl::FromUnixSeconds(value.seconds()), absl::UTCTimeZone());
}

}  // namespace

std::optional<int> characterCount(std::string_view text) {
  int count = 0;
  while (!text.empty()) {
    const std::size_t size = characterBytes(text);
    if (size == 0) return std::nullopt;
    text.remove_prefix(size);
    ++count;
  }
  return count;
}

std::optional<std::int64_t> wholeMinutes(const google::protobuf::Duration& duration) {
  if (duration.nanos() != 0 || duration.seconds() % 60 != 0) return std::nullopt;
  return duration.seconds() / 60;
}

std::int64_t minutesIn(const google::protobuf::Duration& duration) {
  return duration.seconds() / 60;
}

std::string percentText(double percent) {
  return absl::StrFormat("%.4g %%", percent);
}

std::string minutesAsText(std::int64_t minutes) {
  const auto said = [](std::int64_t count, const char* one) {
    return absl::StrCat(count, " ", one, count == 1 ? "" : "s");
  };
  if (minutes >= 2 * kMinutesPerDay && minutes % kMinutesPerDay == 0)
    return said(minutes / kMinutesPerDay, "day");
  if (minutes >= 2 * kMinutesPerHour && minutes % kMinutesPerHour == 0)
    return said(minutes / kMinutesPerHour, "hour");
  return said(minutes, "minute");
}

std::optional<int> clockMinutes(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  for (const std::size_t i : {0U, 1U, 3U, 4U})
    if (text[i] < '0' || text[i] > '9') return std::nullopt;
  const auto number = [&](std::size_t i) { return (text[i] - '0') * 10 + (text[i + 1] - '0'); };
  const int minutes = number(0) * 60 + number(3);
  if (number(3) > 59 || minutes > kMinutesPerDay) return std::nullopt;
  return minutes;
}

bool isTimeZone(const std::string& name) {
  absl::TimeZone zone;
  // The machine's own zone isn't the same everywhere.
  return name != "localtime" && absl::LoadTimeZone(name, &zone);
}

Checker Checker::at(std::string_view field) const {
  Checker below = *this;
  below.path_ = path_.empty() ? std::string(field) : path_ + "." + std::string(field);
  return below;
}

Checker Checker::at(std::string_view list, int index) const {
  Checker below = at(list);
  absl::StrAppend(&below.path_, "[", index, "]");
  return below;
}

bool Checker::wrong(std::string_view value, std::string_view description) const {
  v1::FieldViolation violation;
  violation.set_field_path(path_);
  violation.set_value(shortened(value));
  violation.set_description(std::string(description));
  violations_->push_back(std::move(violation));
  return false;
}

bool Checker::text(std::string_view value, int most) const {
  if (value.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return wrong(value, absl::StrCat("must have between 1 and ", most, " characters"));
  return optionalText(value, most);
}

bool Checker::optionalText(std::string_view value, int most) const {
  const auto count = characterCount(value);
  if (!count) return wrong(value, "must be text in UTF-8");
  return *count <= most || wrong(value, absl::StrCat("must have at most ", most, " characters"));
}

bool Checker::id(std::string_view value) const {
  return isId(value) || wrong(value, "must be an id: 1 to 64 of a-z A-Z 0-9 - _ .");
}

bool Checker::optionalId(std::string_view value) const {
  return value.empty() || id(value);
}

bool Checker::range(double value, double least, double most, std::string_view unit) const {
  if (value >= least && value <= most) return true;
  return wrong(absl::StrCat(value), absl::StrCat("must be between ", least, " and ", withUnit(most, unit)));
}

bool Checker::aboveZero(double value, double most, std::string_view unit) const {
  if (value > 0 && value <= most) return true;
  return wrong(absl::StrCat(value), absl::StrCat("must be above 0 and at most ", withUnit(most, unit)));
}

bool Checker::zeroOrRange(double value, double least, double most, std::string_view unit) const {
  return value == 0 || range(value, least, most, unit);
}

bool Checker::count(int value, int least, int most, std::string_view what) const {
  if (value >= least && value <= most) return true;
  const std::string allowed =
      least > 0 ? absl::StrCat("between ", least, " and ", most) : absl::StrCat("at most ", most);
  return wrong(absl::StrCat(value), absl::StrCat("there must be ", allowed, " ", std::string(what)));
}

bool Checker::minutes(const google::protobuf::Duration& value, std::int64_t least, std::int64_t most) const {
  const auto length = wholeMinutes(value);
  if (!length) return wrong(secondsAsText(value), "must be whole minutes");
  if (*length >= least && *length <= most) return true;
  return wrong(secondsAsText(value),
               absl::StrCat("must be between ", minutesAsText(least), " and ", minutesAsText(most)));
}

bool Checker::spread(const v1::Spread& value, std::int64_t least, std::int64_t most) const {
  bool good = at("likely").minutes(value.likely(), least, most);
  if (value.has_least()) good = at("least").minutes(value.least(), least, most) && good;
  if (value.has_most()) good = at("most").minutes(value.most(), least, most) && good;
  if (!good) return false;
  const std::string likely = secondsAsText(value.likely());
  if (value.has_least() && value.least().seconds() > value.likely().seconds())
    good = at("least").wrong(secondsAsText(value.least()),
                             absl::StrCat("must not be more than the likely ", likely));
  if (value.has_most() && value.most().seconds() < value.likely().seconds())
    good = at("most").wrong(secondsAsText(value.most()),
                            absl::StrCat("must not be less than the likely ", likely));
  return good;
}

bool Checker::hours(const v1::DayHours& value) const {
  const auto start = clockMinutes(value.start());
  const auto limit = clockMinutes(value.limit());
  bool good = true;
  if (!start || *start == kMinutesPerDay)
    good = at("start").wrong(value.start(), "must be a time of day between 00:00 and 23:59");
  if (!limit) good = at("limit").wrong(value.limit(), "must be a time of day between 00:00 and 24:00");
  if (good && *start == *limit)
    return at("limit").wrong(value.limit(), "must differ from the start; all day is 00:00 to 24:00");
  return good;
}

bool Checker::temperatures(const v1::TemperatureByHour& value) const {
  const Checker list = at("celsius");
  if (value.celsius_size() != 1 && value.celsius_size() != 24)
    return list.wrong(absl::StrCat(value.celsius_size()),
                      "there must be 1 temperature, or 24 for the hours of the day");
  bool good = true;
  for (int hour = 0; hour < value.celsius_size(); ++hour)
    good = at("celsius", hour).range(value.celsius(hour), -40, 60, "°C") && good;
  return good;
}

bool Checker::time(bool given, const google::protobuf::Timestamp& value) const {
  if (!given) return wrong("", "must be a date and time");
  const bool inRange = value.seconds() >= kFirstSecond && value.seconds() <= kLastSecond;
  if (inRange && value.nanos() >= 0 && value.nanos() < 1'000'000'000) return true;
  return wrong(absl::StrCat(value.seconds()), "must be a date and time between the years 1 and 9999");
}

bool Checker::span(bool given, const v1::TimeSpan& value) const {
  if (!given) return wrong("", "must have a start and a limit");
  const bool start = at("start").time(value.has_start(), value.start());
  const bool limit = at("limit").time(value.has_limit(), value.limit());
  if (!start || !limit) return false;
  const auto key = [](const google::protobuf::Timestamp& t) { return std::pair(t.seconds(), t.nanos()); };
  if (key(value.start()) < key(value.limit())) return true;
  return at("limit").wrong(timeAsText(value.limit()),
                           absl::StrCat("must be after the start, ", timeAsText(value.start())));
}

bool Checker::choose(std::string_view value, std::string_view what) const {
  return wrong(value, absl::StrCat("must be ", std::string(what)));
}

bool Once::add(const Checker& place, const std::string& value) {
  if (value.empty() || seen_.insert(value).second) return true;
  return place.wrong(value, "is there twice; each must be there only once");
}

}  // namespace suppertide::compose
