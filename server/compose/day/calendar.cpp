#include "server/compose/day/calendar.h"

#include <algorithm>
#include <set>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "server/compose/day/calendar_lines.h"
#include "server/compose/day/calendar_uid.h"
#include "server/compose/day/local_hours.h"

namespace suppertide::compose {
namespace {

// Clock changes are told a little around the times there are.
constexpr absl::Duration kAround = absl::Hours(24 * 370);

bool isAlarmOfItsStep(v1::ReminderKind kind) {
  return kind == v1::REMINDER_KIND_STEP_SOON || kind == v1::REMINDER_KIND_TOMORROW ||
         kind == v1::REMINDER_KIND_MORNING;
}

std::string idPart(v1::ReminderKind kind) {
  switch (kind) {
    case v1::REMINDER_KIND_PREHEAT:
      return "preheat/";
    case v1::REMINDER_KIND_DOUGH_LOOK:
      return "look/";
    case v1::REMINDER_KIND_FETCH:
      return "fetch/";
    case v1::REMINDER_KIND_TAKE_OUT:
      return "out/";
    default:
      return "";
  }
}

class EventWriter {
 public:
  EventWriter(const CalendarEvent& event, const std::string& memberId, CalendarLines& lines)
      : event_(event),
        memberId_(memberId),
        lines_(lines),
        zone_(zoneOf(event.day.household, event.day.event)) {
    for (const v1::PlannedStep& step : event.day.plan.steps()) steps_[step.id()] = &step;
    for (const v1::Member& member : event.day.household.members())
      cooks_[member.id()] = member.display_name();
    for (const v1::Oven& oven : event.kitchen.ovens()) things_[oven.id()] = oven.display_name();
    for (const v1::Place& place : event.kitchen.places()) things_[place.id()] = place.display_name();
  }

  void write() {
    const v1::Progress none;
    const auto reminders = remindersOf({event_.day.household, event_.day.event, event_.day.plan, none});
    std::map<std::string, std::vector<v1::Reminder>> alarms;  // by step
    for (const v1::Reminder& reminder : reminders)
      if (isAlarmOfItsStep(reminder.kind())) alarms[reminder.step_id()].push_back(reminder);
    for (const v1::Reminder& reminder : reminders) {
      if (isAlarmOfItsStep(reminder.kind()) || (!memberId_.empty() && reminder.member_id() != memberId_))
        continue;
      if (reminder.kind() == v1::REMINDER_KIND_STEP_DUE)
        writeStep(reminder, alarms[reminder.step_id()]);
      else
        writeMoment(reminder);
    }
    for (const v1::MovedStep& moved : plan().moved_steps())
      if (isGone(moved)) writeGone(moved);
  }

 private:
  const v1::Plan& plan() const { return event_.day.plan; }

  void begin(const v1::Reminder& reminder, std::int64_t sequence) {
    const std::string key = reminder.kind() == v1::REMINDER_KIND_FETCH
                                ? absl::StrCat(reminder.step_id(), "/", reminder.title())
                                : reminder.step_id();
    begin(idPart(reminder.kind()) + key, sequence);
  }

  void begin(const std::string& key, std::int64_t sequence) {
    lines_.add("BEGIN", "VEVENT");
    lines_.addText(
        "UID", calendarUid(absl::StrCat(event_.day.household.id(), "/", event_.day.event.id(), "/", key)));
    lines_.addUtc("DTSTAMP", toTime(plan().meta().update_time()));
    lines_.add("SEQUENCE", absl::StrCat(sequence & 0x7FFFFFFF));
  }

  // Whether this calendar had the step before the last correction and has it no more.
  bool isGone(const v1::MovedStep& moved) const {
    if (moved.old_cook_member_id().empty() || !moved.has_old_start_time()) return false;
    if (memberId_.empty()) return !moved.has_new_start_time();
    return moved.old_cook_member_id() == memberId_ && moved.new_cook_member_id() != memberId_;
  }

  // A calendar that took the entry in before takes it off; one that reads us anew shows it as cancelled.
  void writeGone(const v1::MovedStep& moved) {
    begin(moved.step_id(), plan().meta().revision());
    lines_.add("STATUS", "CANCELLED");
    lines_.addLocal("DTSTART", toTime(moved.old_start_time()), zone_);
    if (moved.old_end_time().seconds() > moved.old_start_time().seconds())
      lines_.addLocal("DTEND", toTime(moved.old_end_time()), zone_);
    lines_.add("TRANSP", "TRANSPARENT");
    lines_.addText("SUMMARY", moved.title());
    lines_.add("END", "VEVENT");
  }

  // A property without a value is none.
  void addSaid(const char* name, const std::string& value) {
    if (!value.empty()) lines_.addText(name, value);
  }

  void writeStep(const v1::Reminder& reminder, const std::vector<v1::Reminder>& alarms) {
    const v1::PlannedStep& step = *steps_.at(reminder.step_id());
    begin(reminder, step.move_count());
    lines_.addLocal("DTSTART", toTime(step.start_time()), zone_);
    if (step.end_time().seconds() > step.start_time().seconds())
      lines_.addLocal("DTEND", toTime(step.end_time()), zone_);
    const std::string summary = summaryOf(reminder, step.title());
    lines_.addText("SUMMARY", summary);
    addSaid("LOCATION", thing(step.oven_id().empty() ? step.place_id() : step.oven_id()));
    addSaid("DESCRIPTION", aboutStep(step));
    for (const v1::Reminder& alarm : alarms) {
      if (alarm.member_id() != reminder.member_id()) continue;
      if (alarm.kind() == v1::REMINDER_KIND_STEP_SOON)
        writeAlarm(
            absl::StrCat("-PT", (alarm.due_time().seconds() - alarm.remind_time().seconds()) / 60, "M"),
            summary);
      else
        writeAlarmAt(toTime(alarm.remind_time()), summary);
    }
    writeAlarm("PT0S", summary);
    lines_.add("END", "VEVENT");
  }

  // What takes no time of its own.
  void writeMoment(const v1::Reminder& reminder) {
    begin(reminder, plan().meta().revision());
    lines_.addLocal("DTSTART", toTime(reminder.due_time()), zone_);
    lines_.add("TRANSP", "TRANSPARENT");
    const std::string summary = summaryOf(reminder, momentTitle(reminder));
    lines_.addText("SUMMARY", summary);
    writeAlarm("PT0S", summary);
    lines_.add("END", "VEVENT");
  }

  std::string momentTitle(const v1::Reminder& reminder) const {
    switch (reminder.kind()) {
      case v1::REMINDER_KIND_PREHEAT:
        return absl::StrCat(thing(reminder.oven_id()), " to ", degrees(reminder.setpoint_celsius()), " for ",
                            reminder.title());
      case v1::REMINDER_KIND_DOUGH_LOOK:
        return absl::StrCat("Look at the dough: ", reminder.title());
      case v1::REMINDER_KIND_FETCH:
        return absl::StrCat("Take out: ", reminder.title());
      case v1::REMINDER_KIND_TAKE_OUT:
        return absl::StrCat("Out of ", thing(reminder.oven_id()), ": ", reminder.title());
      default:
        return reminder.title();
    }
  }

  std::string summaryOf(const v1::Reminder& reminder, const std::string& title) const {
    const auto dish = event_.dishNames.find(reminder.dish_id());
    std::string summary = title;
    if (dish != event_.dishNames.end()) absl::StrAppend(&summary, " · ", dish->second);
    const auto cook = cooks_.find(reminder.member_id());
    if (memberId_.empty() && cook != cooks_.end()) summary = absl::StrCat(cook->second, ": ", summary);
    return summary;
  }

  std::string aboutStep(const v1::PlannedStep& step) const {
    std::vector<std::string> lines;
    if (!step.oven_id().empty() && step.setpoint_celsius() != 0)
      lines.push_back(absl::StrCat(thing(step.oven_id()), ", ", degrees(step.setpoint_celsius())));
    for (const v1::Weighing& weighing : step.weighings())
      lines.push_back(
          absl::StrCat(weighing.name(), " ", static_cast<std::int64_t>(weighing.mass_g() + 0.5), " g"));
    if (step.has_water_celsius())
      lines.push_back(absl::StrCat("Water at ", degrees(static_cast<int>(step.water_celsius() + 0.5))));
    if (!step.instructions().empty()) lines.push_back(step.instructions());
    return absl::StrJoin(lines, "\n");
  }

  std::string degrees(int celsius) const {
    if (event_.day.household.temperature_unit() != v1::TEMPERATURE_UNIT_FAHRENHEIT)
      return absl::StrCat(celsius, " °C");
    return absl::StrCat((celsius * 9 + (celsius >= 0 ? 2 : -2)) / 5 + 32, " °F");
  }

  std::string thing(const std::string& id) const {
    const auto found = things_.find(id);
    return found == things_.end() ? id : found->second;
  }

  void writeAlarm(const std::string& trigger, const std::string& summary) {
    lines_.add("BEGIN", "VALARM");
    lines_.add("ACTION", "DISPLAY");
    lines_.add("TRIGGER", trigger);
    lines_.addText("DESCRIPTION", summary);
    lines_.add("END", "VALARM");
  }
  void writeAlarmAt(absl::Time when, const std::string& summary) {
    lines_.add("BEGIN", "VALARM");
    lines_.add("ACTION", "DISPLAY");
    lines_.add("TRIGGER;VALUE=DATE-TIME", utcText(when));
    lines_.addText("DESCRIPTION", summary);
    lines_.add("END", "VALARM");
  }

  const CalendarEvent& event_;
  const std::string& memberId_;
  CalendarLines& lines_;
  const absl::TimeZone zone_;
  std::map<std::string, const v1::PlannedStep*> steps_;
  std::map<std::string, std::string> cooks_;
  std::map<std::string, std::string> things_;
};

void addZones(const std::vector<CalendarEvent>& events, CalendarLines& lines) {
  std::set<std::string> named;
  for (const CalendarEvent& one : events) {
    const absl::TimeZone zone = zoneOf(one.day.household, one.day.event);
    if (!named.insert(zone.name()).second) continue;
    absl::Time from = absl::InfiniteFuture();
    absl::Time limit = absl::InfinitePast();
    for (const CalendarEvent& other : events) {
      if (zoneOf(other.day.household, other.day.event).name() != zone.name()) continue;
      for (const v1::PlannedStep& step : other.day.plan.steps()) {
        from = std::min(from, toTime(step.start_time()));
        limit = std::max(limit, toTime(step.end_time()));
      }
    }
    if (from < limit) addTimeZone(lines, zone, from - kAround, limit + kAround);
  }
}

}  // namespace

std::string calendarOf(const std::vector<CalendarEvent>& events, const std::string& memberId) {
  CalendarLines lines;
  lines.add("BEGIN", "VCALENDAR");
  lines.add("VERSION", "2.0");
  lines.add("PRODID", "-//Suppertide//Suppertide//EN");
  if (events.size() == 1) lines.addText("NAME", events.front().day.event.display_name());
  lines.add("REFRESH-INTERVAL;VALUE=DURATION", "PT5M");
  addZones(events, lines);
  for (const CalendarEvent& event : events) EventWriter(event, memberId, lines).write();
  lines.add("END", "VCALENDAR");
  return lines.text();
}

}  // namespace suppertide::compose
