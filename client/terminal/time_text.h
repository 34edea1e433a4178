// Instants and spans as people say them, in a plan's time zone, 24-hour.
#pragma once

#include <string>

#include "absl/time/time.h"
#include "google/protobuf/duration.pb.h"
#include "google/protobuf/timestamp.pb.h"

namespace suppertide::terminal {

absl::Time toTime(const google::protobuf::Timestamp& timestamp);
absl::Duration toDuration(const google::protobuf::Duration& duration);

// "5 min", "1 h 20 min", "2 days 3 h". The sign is left out; whole minutes, rounded.
std::string durationText(absl::Duration duration);
std::string durationText(const google::protobuf::Duration& duration);

// Words for the times of one time zone.
class Clock {
 public:
  // An unknown zone is read as UTC; zoneName() says which it is.
  explicit Clock(const std::string& ianaName);

  std::string zoneName() const { return zone_.name(); }
  std::string hour(absl::Time time) const;           // "17:40"
  std::string shortDay(absl::Time time) const;       // "Sat"
  std::string dayHour(absl::Time time) const;        // "Sat 17:40"
  std::string day(absl::Time time) const;            // "Saturday 20 June"
  std::string date(absl::Time time) const;           // "Saturday 20 June 2026"
  absl::Time midnightBefore(absl::Time time) const;  // when its day began
  bool sameDay(absl::Time a, absl::Time b) const;
  // "17:40" when on the day of `reference`, else "Sun 07:00"; beyond six days "Sun 28 June 07:00".
  std::string hourSeenFrom(absl::Time reference, absl::Time time) const;
  // "17:40–18:05", "22:30–Sun 07:00"; one time when it has no length.
  std::string span(absl::Time start, absl::Time limit) const;
  // Same, seen from another day: "Sat 22:30–Sun 07:00".
  std::string spanWithDay(absl::Time start, absl::Time limit) const;

 private:
  absl::TimeZone zone_;
};

}  // namespace suppertide::terminal
