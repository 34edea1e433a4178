// Planning, auditing and checking a bundle.
#include <optional>
#include <utility>

#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"
#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/headline.h"
#include "client/terminal/plan_text.h"
#include "client/terminal/progress_line.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

absl::StatusOr<v1::MakePlanResponse> plan(const PlanCommand& command, const EventTask& task,
                                          Environment& environment) {
  v1::MakePlanRequest request;
  request.set_household_id(task.connection.householdId);
  request.set_event_id(task.event.id());
  if (command.timeLimitSeconds > 0) request.mutable_time_limit()->set_seconds(command.timeLimitSeconds);
  request.set_work_limit(command.workLimit);
  request.set_seed(command.seed);
  request.set_request_id(link::newRequestId());
  ProgressLine progress(environment);
  bool stopped = false;
  return task.connection.session->makePlan(request, [&](const v1::MakePlanResponse& message) {
    progress.show(message);
    if (stopped || !environment.wasInterrupted()) return;
    // The best so far is kept and told.
    stopped = true;
    v1::StopPlanningRequest stop;
    stop.set_household_id(request.household_id());
    stop.set_event_id(request.event_id());
    task.connection.session->stopPlanning(stop).status().IgnoreError();
  });
}

}  // namespace

int runPlan(const PlanCommand& command, Environment& environment) {
  int exitCode = kFailed;
  auto task =
      eventTask({command.bundle, command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  const auto answer = plan(command, *task, environment);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  const v1::Plan& made = answer->plan();
  if (!command.output.empty()) {
    if (absl::Status status = writeFile(command.output, jsonOf(made)); !status.ok()) {
      return reportFailure(environment, status, command.json);
    }
  }
  if (command.json) {
    environment.out << jsonOf(made);
  } else {
    const PlanView view(task->bundle, task->event, made, environment.width, environment.colour);
    environment.out << planText(view, {.cookId = "", .instructions = command.instructions});
  }
  return made.unserved_size() > 0 || made.breaches_size() > 0 ? kPlanFallsShort : kOk;
}

int runAudit(const AuditCommand& command, Environment& environment) {
  const auto text = readFile(command.plan);
  if (!text.ok()) return reportFailure(environment, text.status(), command.json);
  v1::AuditPlanRequest request;
  const Reading reading = readMessage(*text, *request.mutable_plan());
  if (!reading.mistakes.empty()) return reportMistakes(environment, reading.mistakes, command.json);
  int exitCode = kFailed;
  const std::string eventId = command.eventId.empty() ? request.plan().id() : command.eventId;
  auto task = eventTask({command.bundle, eventId, "", command.json}, environment, exitCode);
  if (!task) return exitCode;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  const auto answer = task->connection.session->auditPlan(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  const bool clean = answer->breaches_size() == 0;
  if (command.json) {
    environment.out << jsonOf(*answer);
    return clean ? kOk : kPlanFallsShort;
  }
  const PlanView view(task->bundle, task->event, request.plan(), environment.width, environment.colour);
  environment.out << (clean ? "The plan keeps every rule.\n"
                            : absl::StrCat("The plan breaks ",
                                           counted(answer->breaches_size(), "rule", "rules"), ":\n"));
  for (const v1::Breach& breach : answer->breaches())
    environment.out << view.item("• ", breachText(view, breach));
  return clean ? kOk : kPlanFallsShort;
}

int runCheck(const CheckCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto checked =
      checkedBundle(command.bundle, localOpener(environment), environment, command.json, exitCode);
  if (!checked) return exitCode;
  if (command.json) {
    environment.out << "{\n  \"violations\": []\n}\n";
    return kOk;
  }
  const v1::Bundle& bundle = checked->bundle;
  environment.out << "No mistakes: "
                  << joinWords({counted(bundle.events_size(), "event", "events"),
                                counted(bundle.recipes_size(), "recipe", "recipes"),
                                counted(bundle.kitchens_size(), "kitchen", "kitchens"),
                                counted(bundle.starters_size(), "starter", "starters")})
                  << ".\n";
  return kOk;
}

}  // namespace suppertide::terminal
