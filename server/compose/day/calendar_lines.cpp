#include "server/compose/day/calendar_lines.h"

#include <cstdlib>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace suppertide::compose {
namespace {

// Octets of a line without its end; the blank that begins a folded one counts.
constexpr std::size_t kLongestLine = 75;

bool continues(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
}

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\n') {
      out += "\\n";
    } else if (c == '\\' || c == ';' || c == ',') {
      out += '\\';
      out += c;
    } else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F) {
      out += c;
    }
  }
  return out;
}

std::string offsetText(int seconds) {
  const int minutes = std::abs(seconds) / 60;
  return absl::StrFormat("%c%02d%02d", seconds < 0 ? '-' : '+', minutes / 60, minutes % 60);
}

bool isUtc(const absl::TimeZone& zone) {
  return zone == absl::UTCTimeZone() || zone.name() == "UTC";
}

// One stretch of a zone between two changes of its clock.
struct Observance {
  absl::Time onset;
  int offsetFrom = 0;  // seconds east
  absl::TimeZone::CivilInfo at;
};

// When the clock is changed. One of the two hours it jumps between is skipped or there twice.
absl::Time momentOf(const absl::TimeZone::CivilTransition& change, const absl::TimeZone& zone) {
  const absl::TimeZone::TimeInfo from = zone.At(change.from);
  if (from.kind == absl::TimeZone::TimeInfo::SKIPPED) return from.trans;
  const absl::TimeZone::TimeInfo to = zone.At(change.to);
  return to.kind == absl::TimeZone::TimeInfo::REPEATED ? to.trans : to.pre;
}

void addObservance(CalendarLines& lines, const Observance& one) {
  const char* kind = one.at.is_dst ? "DAYLIGHT" : "STANDARD";
  lines.add("BEGIN", kind);
  lines.add("DTSTART", absl::FormatTime("%Y%m%dT%H%M%S", one.onset, absl::FixedTimeZone(one.offsetFrom)));
  lines.add("TZOFFSETFROM", offsetText(one.offsetFrom));
  lines.add("TZOFFSETTO", offsetText(one.at.offset));
  lines.addText("TZNAME", one.at.zone_abbr);
  lines.add("END", kind);
}

}  // namespace

void CalendarLines::add(const std::string& name, const std::string& value) {
  const std::string line = absl::StrCat(name, ":", value);
  std::size_t begin = 0;
  std::size_t room = kLongestLine;
  while (line.size() - begin > room) {
    std::size_t end = begin + room;
    while (end > begin + 1 && continues(line[end])) --end;
    absl::StrAppend(&text_, line.substr(begin, end - begin), "\r\n ");
    begin = end;
    room = kLongestLine - 1;
  }
  absl::StrAppend(&text_, line.substr(begin), "\r\n");
}

void CalendarLines::addText(const std::string& name, const std::string& text) {
  add(name, escaped(text));
}

std::string utcText(absl::Time time) {
  return absl::FormatTime("%Y%m%dT%H%M%SZ", time, absl::UTCTimeZone());
}

void CalendarLines::addUtc(const std::string& name, absl::Time time) {
  add(name, utcText(time));
}

void CalendarLines::addLocal(const std::string& name, absl::Time time, const absl::TimeZone& zone) {
  // A local time that is there twice is the first one, but not every program reads it so.
  const bool twice = zone.At(zone.At(time).cs).kind == absl::TimeZone::TimeInfo::REPEATED;
  if (isUtc(zone) || twice) return addUtc(name, time);
  add(absl::StrCat(name, ";TZID=", zone.name()), absl::FormatTime("%Y%m%dT%H%M%S", time, zone));
}

void addTimeZone(CalendarLines& lines, const absl::TimeZone& zone, absl::Time from, absl::Time limit) {
  if (isUtc(zone)) return;
  lines.add("BEGIN", "VTIMEZONE");
  lines.add("TZID", zone.name());
  absl::TimeZone::CivilTransition change;
  std::vector<Observance> all;
  // The one that holds at the beginning, then each change.
  Observance first{absl::FromUnixSeconds(0), zone.At(from).offset, zone.At(from)};
  absl::Time next = from;
  if (zone.PrevTransition(from + absl::Nanoseconds(1), &change)) {
    first.onset = momentOf(change, zone);
    first.offsetFrom = zone.At(first.onset - absl::Seconds(1)).offset;
  }
  all.push_back(first);
  while (zone.NextTransition(next, &change)) {
    next = momentOf(change, zone);
    if (next >= limit || next <= all.back().onset) break;
    all.push_back({next, zone.At(next - absl::Seconds(1)).offset, zone.At(next)});
  }
  for (const Observance& one : all) addObservance(lines, one);
  lines.add("END", "VTIMEZONE");
}

}  // namespace suppertide::compose
