#include "server/compose/day/reminders.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "absl/strings/str_cat.h"
#include "server/compose/day/local_hours.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::compose {
namespace {

constexpr absl::Duration kSoon = absl::Minutes(10);
// Before the end of the waking hours.
constexpr absl::Duration kEvening = absl::Hours(1);
constexpr std::int64_t kIdGrid = 5 * 60;

class Reminding {
 public:
  explicit Reminding(const DayDocuments& day) : day_(day), zone_(zoneOf(day.household, day.event)) {
    for (const v1::PlannedStep& step : day.plan.steps()) steps_[step.id()] = &step;
    for (const v1::Member& member : day.household.members()) members_[member.id()] = &member;
    for (const v1::Report* report : standingReports(day.progress)) note(*report);
  }

  std::vector<v1::Reminder> run() {
    for (const v1::PlannedStep& step : day_.plan.steps())
      if (!step.left_out()) addStep(step);
    for (const v1::OvenProgram& program : day_.plan.oven_programs()) addPreheats(program);
    for (const v1::DoughForecast& dough : day_.plan.doughs())
      for (const v1::FermentForecast& stage : dough.stages()) addLook(stage);
    for (const v1::Fetch& fetch : day_.plan.fetches()) addFetch(fetch);
    addMornings();
    std::stable_sort(out_.begin(), out_.end(), [](const v1::Reminder& a, const v1::Reminder& b) {
      return std::forward_as_tuple(a.remind_time().seconds(), a.due_time().seconds(), a.id()) <
             std::forward_as_tuple(b.remind_time().seconds(), b.due_time().seconds(), b.id());
    });
    return std::move(out_);
  }

 private:
  using Step = v1::PlannedStep;

  void note(const v1::Report& report) {
    const std::string step = absl::StrCat(report.dish_id(), "/", report.step_id());
    if (report.what_case() == v1::Report::kStarted) begun_.insert(step);
    if (report.what_case() == v1::Report::kFinished || report.what_case() == v1::Report::kSkipped) {
      begun_.insert(step);
      over_.insert(step);
    }
  }

  static bool needsHands(const Step& step) {
    return !step.cook_member_id().empty() && step.attention_percent() > 0;
  }

  void addStep(const Step& step) {
    const absl::Time start = toTime(step.start_time());
    if (needsHands(step) && begun_.count(step.id()) == 0) {
      const absl::Duration soon = soonOf(step.cook_member_id());
      if (soon > absl::ZeroDuration())
        add(v1::REMINDER_KIND_STEP_SOON, step, step.cook_member_id(), start - soon, start);
      add(v1::REMINDER_KIND_STEP_DUE, step, step.cook_member_id(), start, start);
    }
    if (step.kind() == v1::STEP_KIND_OVEN && !step.oven_id().empty() && over_.count(step.id()) == 0) {
      const absl::Time end = toTime(step.end_time());
      add(v1::REMINDER_KIND_TAKE_OUT, step, whoSeesTo(step, end), end, end);
    }
  }

  // Switched on, or to another temperature.
  void addPreheats(const v1::OvenProgram& program) {
    for (int s = 0; s < program.segments_size(); ++s) {
      const v1::OvenSegment& segment = program.segments(s);
      if (segment.kind() != v1::OVEN_SEGMENT_KIND_HEATING && segment.kind() != v1::OVEN_SEGMENT_KIND_COOLING)
        continue;
      const Step* first = nullptr;
      for (int next = s + 1; next < program.segments_size() && first == nullptr; ++next)
        first = firstIn(program.segments(next));
      // Cooling to where dough may stand needs no hand on the dial.
      if (first == nullptr || first->kind() != v1::STEP_KIND_OVEN || begun_.count(first->id()) > 0) continue;
      const absl::Time start = toTime(segment.start_time());
      v1::Reminder* reminder = add(v1::REMINDER_KIND_PREHEAT, *first,
                                   whoSeesTo(*first, toTime(first->start_time())), start, start);
      if (reminder == nullptr) continue;
      reminder->set_oven_id(program.oven_id());
      reminder->set_setpoint_celsius(segment.setpoint_celsius());
    }
  }

  const Step* firstIn(const v1::OvenSegment& segment) const {
    const Step* first = nullptr;
    for (const v1::RackUse& rack : segment.racks()) {
      const auto found = steps_.find(rack.step_id());
      if (found == steps_.end()) continue;
      if (first == nullptr || found->second->start_time().seconds() < first->start_time().seconds())
        first = found->second;
    }
    return first;
  }

  void addLook(const v1::FermentForecast& stage) {
    const auto step = steps_.find(stage.step_id());
    if (step == steps_.end() || over_.count(stage.step_id()) > 0 || !stage.has_ready_from_time()) return;
    const absl::Time from = std::max(toTime(stage.ready_from_time()), toTime(stage.start_time()));
    // What comes next says it as well.
    if (from >= toTime(stage.end_time())) return;
    v1::Reminder* reminder = add(v1::REMINDER_KIND_DOUGH_LOOK, *step->second,
                                 whoSeesTo(*step->second, toTime(stage.end_time())), from, from);
    if (reminder == nullptr) return;
    if (stage.has_ready_until_time()) *reminder->mutable_until_time() = stage.ready_until_time();
    reminder->set_wanted_rise(stage.wanted_rise());
  }

  void addFetch(const v1::Fetch& fetch) {
    if (!fetch.has_take_out_time() || fetch.own_step() || begun_.count(fetch.for_step_id()) > 0) return;
    const auto step = steps_.find(fetch.for_step_id());
    const std::string who = !fetch.cook_member_id().empty() ? fetch.cook_member_id()
                            : step != steps_.end()
                                ? whoSeesTo(*step->second, toTime(step->second->start_time()))
                                : anybody();
    v1::Reminder reminder;
    reminder.set_title(fetch.name());
    reminder.set_dish_id(fetch.dish_id());
    reminder.set_step_id(fetch.for_step_id());
    reminder.set_from(fetch.from());
    reminder.set_to(fetch.to());
    const absl::Time when = toTime(fetch.take_out_time());
    put(std::move(reminder), v1::REMINDER_KIND_FETCH, who, when, when,
        absl::StrCat(fetch.for_step_id(), "/", nameId(fetch.name())));
  }

  // The evening before, and when the day begins.
  void addMornings() {
    for (const v1::FirstAction& action : day_.plan.first_actions()) {
      const auto step = steps_.find(action.step_id());
      const auto member = members_.find(action.cook_member_id());
      absl::CivilDay day;
      if (step == steps_.end() || member == members_.end() || begun_.count(action.step_id()) > 0 ||
          !absl::ParseCivilTime(action.date(), &day))
        continue;
      const v1::DayHours awake = awakeHours(*member->second);
      const std::string key = absl::StrCat(member->first, "/", action.date());
      const absl::Time start = toTime(step->second->start_time());
      const absl::Time evening = hoursOn(day - 1, awake, zone_).limit - kEvening;
      const absl::Time morning = std::min(hoursOn(day, awake, zone_).start, start);
      add(v1::REMINDER_KIND_TOMORROW, *step->second, member->first, std::min(evening, start), start, key);
      add(v1::REMINDER_KIND_MORNING, *step->second, member->first, morning, start, key);
    }
  }

  absl::Duration soonOf(const std::string& memberId) const {
    const auto member = members_.find(memberId);
    if (member == members_.end() || !member->second->has_soon_duration()) return kSoon;
    return absl::Seconds(member->second->soon_duration().seconds());
  }

  // Who sees to what happens at `when` to a step: its own cook, who does the next of its dish, or
  // who did the last.
  std::string whoSeesTo(const Step& step, absl::Time when) const {
    if (!step.cook_member_id().empty()) return step.cook_member_id();
    const Step* next = nullptr;
    const Step* last = nullptr;
    for (const Step& other : day_.plan.steps()) {
      if (other.dish_id() != step.dish_id() || !needsHands(other)) continue;
      if (toTime(other.start_time()) < when)
        last = &other;
      else if (next == nullptr)
        next = &other;
    }
    if (next != nullptr) return next->cook_member_id();
    return last != nullptr ? last->cook_member_id() : anybody();
  }

  std::string anybody() const { return day_.event.cooks().empty() ? "" : day_.event.cooks(0).member_id(); }

  v1::Reminder* add(v1::ReminderKind kind, const Step& step, const std::string& member, absl::Time when,
                    absl::Time due, const std::string& key = "") {
    v1::Reminder reminder;
    reminder.set_step_id(step.id());
    reminder.set_title(step.title());
    reminder.set_dish_id(step.dish_id());
    reminder.set_oven_id(step.oven_id());
    reminder.set_setpoint_celsius(step.setpoint_celsius());
    reminder.set_place_id(step.place_id());
    return put(std::move(reminder), kind, member, when, due,
               key.empty() ? absl::StrCat(step.id(), "/", absl::ToUnixSeconds(due) / kIdGrid) : key);
  }

  v1::Reminder* put(v1::Reminder reminder, v1::ReminderKind kind, const std::string& member, absl::Time when,
                    absl::Time due, const std::string& key) {
    const auto who = members_.find(member);
    if (who == members_.end()) return nullptr;
    reminder.set_id(absl::StrCat(static_cast<int>(kind), "/", day_.event.id(), "/", key));
    reminder.set_event_id(day_.event.id());
    reminder.set_member_id(member);
    reminder.set_kind(kind);
    *reminder.mutable_remind_time() = toTimestamp(when);
    *reminder.mutable_due_time() = toTimestamp(due);
    reminder.set_quiet(isQuiet(*who->second, when, zone_));
    out_.push_back(std::move(reminder));
    return &out_.back();
  }

  // A name as a part of an id.
  static std::string nameId(const std::string& name) { return name.substr(0, 60); }

  const DayDocuments& day_;
  const absl::TimeZone zone_;
  std::map<std::string, const Step*> steps_;
  std::map<std::string, const v1::Member*> members_;
  std::set<std::string> begun_;
  std::set<std::string> over_;
  std::vector<v1::Reminder> out_;
};

}  // namespace

std::vector<v1::Reminder> remindersOf(const DayDocuments& day) {
  return Reminding(day).run();
}

std::vector<v1::Reminder> withMarks(std::vector<v1::Reminder> reminders, const v1::ReminderLog& log) {
  std::map<std::string, const v1::ReminderMark*> marks;
  for (const v1::ReminderMark& mark : log.marks()) marks[mark.reminder_id()] = &mark;
  std::vector<v1::Reminder> left;
  for (v1::Reminder& reminder : reminders) {
    const auto mark = marks.find(reminder.id());
    if (mark != marks.end()) {
      if (mark->second->has_settled_time()) continue;
      if (mark->second->has_snoozed_until_time())
        *reminder.mutable_remind_time() = mark->second->snoozed_until_time();
    }
    left.push_back(std::move(reminder));
  }
  std::stable_sort(left.begin(), left.end(), [](const v1::Reminder& a, const v1::Reminder& b) {
    return a.remind_time().seconds() < b.remind_time().seconds();
  });
  return left;
}

}  // namespace suppertide::compose
