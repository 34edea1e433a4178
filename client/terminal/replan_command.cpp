// Replanning a running event, and asking why a step lies where it does.
#include <algorithm>
#include <optional>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"
#include "client/terminal/bundle_file.h"
#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/moved_text.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

class Change {
 public:
  Change(const ReplanCommand& command, const EventTask& task, v1::ReplanRequest& request)
      : command_(command), task_(task), request_(request) {}

  // Puts all that was said on the command line into the request. InvalidArgument, in words.
  absl::Status read() {
    if (auto status = readTime(); !status.ok()) return status;
    for (const auto& [minutes, step] : command_.late) {
      v1::Report* report = add(step);
      if (report == nullptr) return unknownStep(step);
      report->mutable_delayed_by()->set_seconds(minutes * 60);
    }
    if (auto status = readAll(command_.started, [](v1::Report& r) { r.set_started(true); }); !status.ok())
      return status;
    if (auto status = readAll(command_.finished, [](v1::Report& r) { r.set_finished(true); }); !status.ok())
      return status;
    if (auto status = readAll(command_.skipped, [](v1::Report& r) { r.set_skipped(true); }); !status.ok())
      return status;
    if (auto status = readSights(); !status.ok()) return status;
    for (const std::string& cook : command_.withoutCook)
      if (auto status = leave(cook); !status.ok()) return status;
    for (const std::string& thing : command_.broken)
      if (auto status = breakThing(thing); !status.ok()) return status;
    return absl::OkStatus();
  }

 private:
  absl::TimeZone zone() const {
    const std::string& name =
        task_.event.time_zone().empty() ? task_.bundle.household().time_zone() : task_.event.time_zone();
    absl::TimeZone zone = absl::UTCTimeZone();
    absl::LoadTimeZone(name, &zone);
    return zone;
  }

  absl::Status readTime() {
    now_ = absl::Now();
    if (command_.at.empty()) return absl::OkStatus();
    std::string error;
    const absl::Time dinner = toTime(task_.event.courses(0).serving_time());
    const std::string onTheDay = absl::StrCat(absl::FormatTime("%Y-%m-%d ", dinner, zone()), command_.at);
    if (!absl::ParseTime("%Y-%m-%d %H:%M", command_.at, zone(), &now_, &error) &&
        !absl::ParseTime("%Y-%m-%d %H:%M", onTheDay, zone(), &now_, &error))
      return absl::InvalidArgumentError(absl::StrCat(
          "--at ", command_.at, ": give HH:MM of the first course's day, or \"YYYY-MM-DD HH:MM\""));
    request_.mutable_now()->set_seconds(absl::ToUnixSeconds(now_));
    return absl::OkStatus();
  }

  // A step of the recipe, or one that the plan made of it: a later load, or what is taken out for it.
  bool known(const std::string& dish, const std::string& planned) const {
    const std::string step = planned.substr(0, std::min(planned.find(".fetch"), planned.find(".load-")));
    for (const v1::Dish& one : task_.event.dishes())
      for (const v1::Recipe& recipe : task_.bundle.recipes())
        if (one.id() == dish && one.recipe_id() == recipe.id())
          return std::any_of(recipe.steps().begin(), recipe.steps().end(),
                             [&](const v1::Step& s) { return s.id() == step; });
    return false;
  }
  static absl::Status unknownStep(const std::string& step) {
    return absl::InvalidArgumentError(absl::StrCat(
        "there is no step ", step, "; a step is named dish/step, as suppertide plan --json lists them"));
  }

  v1::Report* add(const std::string& name) {
    const auto [dish, step] = splitPlannedId(name);
    if (!known(dish, step)) return nullptr;
    v1::Report& report = *request_.add_reports();
    report.set_id(link::newRequestId());
    report.set_dish_id(dish);
    report.set_step_id(step);
    report.mutable_happen_time()->set_seconds(absl::ToUnixSeconds(now_));
    return &report;
  }

  template <typename Tell>
  absl::Status readAll(const std::vector<std::string>& steps, Tell tell) {
    for (const std::string& step : steps) {
      v1::Report* report = add(step);
      if (report == nullptr) return unknownStep(step);
      tell(*report);
    }
    return absl::OkStatus();
  }

  // Which number of which step was wrong, in the words of the command line.
  template <typename Tell>
  absl::Status readNumbers(const std::vector<std::pair<std::string, std::string>>& seen, const char* flag,
                           double least, double most, const char* unit, Tell tell) {
    for (const auto& [step, given] : seen) {
      double value = 0;
      if (!absl::SimpleAtod(given, &value) || !(value >= least && value <= most))
        return absl::InvalidArgumentError(
            absl::StrCat(flag, " ", step, " ", given, ": must be ", least, " to ", most, unit));
      v1::Report* report = add(step);
      if (report == nullptr) return unknownStep(step);
      tell(*report, value);
    }
    return absl::OkStatus();
  }

  absl::Status readSights() {
    auto status = readNumbers(command_.rises, "--rise", 0.5, 8, " times the volume at first",
                              [](v1::Report& r, double value) { r.set_rise(value); });
    status.Update(readNumbers(command_.doughCelsius, "--dough-temperature", -10, 60, " °C",
                              [](v1::Report& r, double value) { r.set_dough_celsius(value); }));
    status.Update(readNumbers(command_.coreCelsius, "--core-temperature", -30, 150, " °C",
                              [](v1::Report& r, double value) { r.set_core_celsius(value); }));
    status.Update(readNumbers(command_.ovenCelsius, "--oven-temperature", 0, 550, " °C",
                              [](v1::Report& r, double value) { r.set_oven_celsius(value); }));
    for (const auto& [step, what] : command_.dents) {
      const v1::DentTest test = what == "springs-back" ? v1::DENT_TEST_SPRINGS_BACK
                                : what == "slow"       ? v1::DENT_TEST_SLOW_RETURN
                                : what == "stays"      ? v1::DENT_TEST_STAYS
                                                       : v1::DENT_TEST_UNSPECIFIED;
      if (test == v1::DENT_TEST_UNSPECIFIED)
        return absl::InvalidArgumentError(
            absl::StrCat("--dent ", step, " ", what, ": must be springs-back, slow or stays"));
      v1::Report* report = add(step);
      if (report == nullptr) return unknownStep(step);
      report->set_dent_test(test);
    }
    return status;
  }

  v1::Event& event() {
    if (!request_.has_event()) *request_.mutable_event() = task_.event;
    return *request_.mutable_event();
  }

  // Away from now on; what they did before stays.
  absl::Status leave(const std::string& name) {
    std::string id;
    for (const v1::Member& member : task_.bundle.household().members())
      if (member.id() == name || absl::AsciiStrToLower(member.display_name()) == absl::AsciiStrToLower(name))
        id = member.id();
    for (v1::EventCook& cook : *event().mutable_cooks()) {
      if (cook.member_id() != id || id.empty()) continue;
      if (cook.available().empty())
        cook.add_available()->mutable_start()->set_seconds(absl::ToUnixSeconds(now_) - 14 * 86'400);
      auto& spans = *cook.mutable_available();
      const std::int64_t now = absl::ToUnixSeconds(now_);
      spans.erase(std::remove_if(spans.begin(), spans.end(),
                                 [&](const v1::TimeSpan& span) { return span.start().seconds() >= now; }),
                  spans.end());
      for (v1::TimeSpan& span : spans)
        if (!span.has_limit() || span.limit().seconds() > now) span.mutable_limit()->set_seconds(now);
      if (spans.empty()) {
        // Nothing is left of their time; a moment long past says so.
        spans.Add()->mutable_start()->set_seconds(now - 14 * 86'400);
        spans.rbegin()->mutable_limit()->set_seconds(now - 14 * 86'400 + 60);
      }
      return absl::OkStatus();
    }
    return absl::InvalidArgumentError(absl::StrCat("nobody called ", name, " cooks at this event"));
  }

  absl::Status breakThing(const std::string& name) {
    std::string id;
    for (const v1::Kitchen& kitchen : task_.bundle.kitchens()) {
      if (kitchen.id() != task_.event.kitchen_id()) continue;
      const auto look = [&](const auto& things) {
        for (const auto& thing : things)
          if (thing.id() == name ||
              absl::AsciiStrToLower(thing.display_name()) == absl::AsciiStrToLower(name))
            id = thing.id();
      };
      look(kitchen.ovens());
      look(kitchen.equipment());
    }
    if (id.empty())
      return absl::InvalidArgumentError(absl::StrCat("the kitchen has no oven or equipment called ", name));
    v1::Unavailable& away = *event().add_unavailable();
    away.set_thing_id(id);
    away.mutable_when()->mutable_start()->set_seconds(absl::ToUnixSeconds(now_));
    away.mutable_when()->mutable_limit()->set_seconds(absl::ToUnixSeconds(now_) + 3 * 86'400);
    return absl::OkStatus();
  }

  const ReplanCommand& command_;
  const EventTask& task_;
  v1::ReplanRequest& request_;
  absl::Time now_;
};

// With --keep the reports are stored first: the plan then is made of what is stored.
absl::Status tell(const EventTask& task, v1::ReplanRequest& request) {
  request.clear_now();
  if (request.reports().empty()) return absl::OkStatus();
  v1::AddReportsRequest reports;
  reports.set_household_id(request.household_id());
  reports.set_event_id(request.event_id());
  reports.set_request_id(link::newRequestId());
  reports.mutable_reports()->Swap(request.mutable_reports());
  return task.connection.session->addReports(reports).status();
}

}  // namespace

int runReplan(const ReplanCommand& command, Environment& environment) {
  int exitCode = kFailed;
  auto task =
      eventTask({command.bundle, command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  v1::ReplanRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  request.set_request_id(link::newRequestId());
  request.set_validate_only(!command.keep);
  if (!command.plan.empty()) {
    const auto text = readFile(command.plan);
    if (!text.ok()) return reportFailure(environment, text.status(), command.json);
    const Reading reading = readMessage(*text, *request.mutable_plan());
    if (!reading.mistakes.empty()) return reportMistakes(environment, reading.mistakes, command.json);
  }
  if (absl::Status status = Change(command, *task, request).read(); !status.ok())
    return reportFailure(environment, status, command.json);
  if (command.keep)
    if (absl::Status status = tell(*task, request); !status.ok())
      return reportFailure(environment, status, command.json);
  const auto answer = task->connection.session->replan(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (!command.output.empty())
    if (absl::Status status = writeFile(command.output, jsonOf(answer->plan())); !status.ok())
      return reportFailure(environment, status, command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
  } else {
    const v1::Event& event = request.has_event() ? request.event() : task->event;
    const PlanView view(task->bundle, event, answer->plan(), environment.width, environment.colour);
    environment.out << replanText(view, *answer);
    if (!command.keep && command.bundle.empty())
      environment.out << "\n" << view.paragraph("Nothing is changed yet; --keep makes it so for everybody.");
  }
  return answer->plan().unserved_size() > 0 || answer->plan().breaches_size() > 0 ? kPlanFallsShort : kOk;
}

int runWhy(const WhyCommand& command, Environment& environment) {
  int exitCode = kFailed;
  auto task = eventTask({"", command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  v1::ExplainStepRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  request.set_step_id(command.step);
  const int shift = command.laterMinutes - command.earlierMinutes;
  if (shift != 0) request.mutable_shift_duration()->set_seconds(shift * 60);
  const auto answer = task->connection.session->explainStep(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  v1::Plan plan;
  for (const v1::Plan& one : task->bundle.plans())
    if (one.id() == task->event.id()) plan = one;
  const PlanView view(task->bundle, task->event, plan, environment.width, environment.colour);
  environment.out << whyText(view, *answer, shift);
  return kOk;
}

}  // namespace suppertide::terminal
