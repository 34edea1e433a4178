// The lines of iCalendar (RFC 5545): folded, escaped, ended by CR LF.
#pragma once

#include <string>

#include "absl/time/time.h"

namespace suppertide::compose {

class CalendarLines {
 public:
  // "NAME:value" as it is; `name` may have parameters: "DTSTART;TZID=Europe/Lisbon".
  void add(const std::string& name, const std::string& value);
  // A text value: backslash, semicolon, comma and line break are escaped, other control characters left out.
  void addText(const std::string& name, const std::string& text);
  // "20270307T183000Z".
  void addUtc(const std::string& name, absl::Time time);
  // In local time, with the zone's name as TZID; UTC is written as such, and so is what local time
  // says twice: two equal hours when clocks are put back.
  void addLocal(const std::string& name, absl::Time time, const absl::TimeZone& zone);

  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

std::string utcText(absl::Time time);

// A VTIMEZONE with every change of the clock that matters to times in [from, limit).
void addTimeZone(CalendarLines& lines, const absl::TimeZone& zone, absl::Time from, absl::Time limit);

}  // namespace suppertide::compose
