// Notes what is wrong with a document, with the path to it.
//
// A Checker stands at one message of the document; at() goes down into a field.
// Each check notes a violation and returns false, or returns true. Field names
// are those of the JSON mapping. Cheap to copy; the list must outlive it.
#pragma once

#include <google/protobuf/duration.pb.h>
#include <google/protobuf/generated_enum_reflection.h>
#include <google/protobuf/timestamp.pb.h>

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "server/compose/validate.h"

namespace suppertide::compose {

// Texts and lists whose size the documents don't state.
inline constexpr int kMostText = 2000;
inline constexpr int kMostItems = 500;
inline constexpr int kMinutesPerHour = 60;
inline constexpr int kMinutesPerDay = 24 * 60;
inline constexpr int kHorizonMinutes = 10 * kMinutesPerDay;

// How many characters valid UTF-8 has; none when it isn't valid.
std::optional<int> characterCount(std::string_view text);
// Minutes, when there is no rest of seconds.
std::optional<std::int64_t> wholeMinutes(const google::protobuf::Duration& duration);
// Minutes without the rest, towards 0.
std::int64_t minutesIn(const google::protobuf::Duration& duration);
// "90 minutes", "10 days".
std::string percentText(double percent);  // "2.5 %"
std::string minutesAsText(std::int64_t minutes);
// "18:05" to minutes of the day, 0 to 24:00; none when it isn't of that form.
std::optional<int> clockMinutes(std::string_view text);
// Whether `name` is in the time zone data.
bool isTimeZone(const std::string& name);

class Checker {
 public:
  explicit Checker(Violations& violations) : violations_(&violations) {}

  Checker at(std::string_view field) const;
  Checker at(std::string_view list, int index) const;

  // Notes a violation at this place. `value` is shortened and made valid UTF-8.
  bool wrong(std::string_view value, std::string_view description) const;

  // 1 to `most` characters that aren't all blank.
  bool text(std::string_view value, int most) const;
  // As text(), or empty.
  bool optionalText(std::string_view value, int most = kMostText) const;
  bool id(std::string_view value) const;
  bool optionalId(std::string_view value) const;
  // [least, most]; not-a-number is wrong. `unit` as in "°C", may be empty.
  bool range(double value, double least, double most, std::string_view unit = {}) const;
  // (0, most].
  bool aboveZero(double value, double most, std::string_view unit = {}) const;
  // 0, which has a meaning of its own, or [least, most].
  bool zeroOrRange(double value, double least, double most, std::string_view unit = {}) const;
  // How many items a list has, [least, most]. `what` in the plural: "steps".
  bool count(int value, int least, int most, std::string_view what) const;
  // Whole minutes in [least, most].
  bool minutes(const google::protobuf::Duration& value, std::int64_t least, std::int64_t most) const;
  // likely in [least, most], the others on their sides of it and within the same ends.
  bool spread(const v1::Spread& value, std::int64_t least, std::int64_t most) const;
  bool hours(const v1::DayHours& value) const;
  bool temperatures(const v1::TemperatureByHour& value) const;
  // `given`: whether the field is there at all. From the year 1 to 9999.
  bool time(bool given, const google::protobuf::Timestamp& value) const;
  // Both there and in order.
  bool span(bool given, const v1::TimeSpan& value) const;
  // A known value other than 0. `what`: "a kind of step".
  template <typename Enum>
  bool chosen(Enum value, std::string_view what) const {
    return (value != 0 && known(value, what)) || (value == 0 && choose("", what));
  }
  // A known value; 0 has a meaning.
  template <typename Enum>
  bool known(Enum value, std::string_view what) const {
    if (google::protobuf::GetEnumDescriptor<Enum>()->FindValueByNumber(value) != nullptr) return true;
    return choose(std::to_string(static_cast<int>(value)), what);
  }

 private:
  bool choose(std::string_view value, std::string_view what) const;

  Violations* violations_;
  std::string path_;
};

// Ids or words of which each may be there once.
class Once {
 public:
  // Notes at `place` when `value` was there before; empty values are left to others.
  bool add(const Checker& place, const std::string& value);

 private:
  std::set<std::string> seen_;
};

}  // namespace suppertide::compose
