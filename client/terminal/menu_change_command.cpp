// What another menu would change: for the guests, the shopping and the plan.
#include <algorithm>
#include <optional>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "client/link/error_detail.h"
#include "client/link/request_id.h"
#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/moved_text.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

constexpr std::int64_t kDay = 86'400;

bool named(const std::string& id, const std::string& name, const std::string& wanted) {
  return id == wanted || absl::AsciiStrToLower(name) == absl::AsciiStrToLower(wanted);
}

// The event as the command line would have it. Every option at fault is told.
class ChangedEvent {
 public:
  ChangedEvent(const MenuChangeCommand& command, const EventTask& task)
      : task_(task), names_(task.bundle, task.event), event_(task.event) {
    for (const std::string& dish : command.without) leaveOut(dish);
    for (const std::string& text : command.serves) serve(text);
    for (const std::string& text : command.times) move(text);
    if (command.without.empty() && command.serves.empty() && command.times.empty())
      wrong("--without", "", "say what changes: --without, --serves or --time");
  }

  const v1::Event& event() const { return event_; }
  const Violations& mistakes() const { return mistakes_; }

 private:
  void wrong(const char* option, const std::string& value, const std::string& allowed) {
    v1::FieldViolation violation;
    violation.set_field_path(option);
    violation.set_value(value);
    violation.set_description(allowed);
    mistakes_.push_back(violation);
  }

  v1::Dish* dishOf(const char* option, const std::string& wanted) {
    std::string known;
    for (v1::Dish& dish : *event_.mutable_dishes()) {
      if (named(dish.id(), names_.dish(dish.id()), wanted)) return &dish;
      absl::StrAppend(&known, known.empty() ? "" : ", ", dish.id());
    }
    wrong(option, wanted, absl::StrCat("must be one of ", known));
    return nullptr;
  }

  void leaveOut(const std::string& wanted) {
    const v1::Dish* dish = dishOf("--without", wanted);
    if (dish == nullptr) return;
    const std::string id = dish->id();
    const auto drop = [&](auto& list, auto matches) {
      list.erase(std::remove_if(list.begin(), list.end(), matches), list.end());
    };
    drop(*event_.mutable_dishes(), [&](const v1::Dish& one) { return one.id() == id; });
    drop(*event_.mutable_pins(), [&](const v1::StepPin& pin) { return pin.dish_id() == id; });
  }

  void serve(const std::string& text) {
    const std::vector<std::string> parts = absl::StrSplit(text, '=');
    int count = 0;
    if (parts.size() != 2 || !absl::SimpleAtoi(parts[1], &count))
      return wrong("--serves", text, "must be a dish and a number, like berry-kissel=20");
    if (v1::Dish* dish = dishOf("--serves", parts[0])) dish->set_serving_count(count);
  }

  void move(const std::string& text) {
    const std::vector<std::string> parts = absl::StrSplit(text, '=');
    absl::TimeZone zone = absl::UTCTimeZone();
    absl::LoadTimeZone(event_.time_zone().empty() ? task_.bundle.household().time_zone() : event_.time_zone(),
                       &zone);
    for (v1::Course& course : *event_.mutable_courses()) {
      if (parts.size() != 2 || !named(course.id(), course.display_name(), parts[0])) continue;
      const std::string day = absl::FormatTime("%Y-%m-%d ", toTime(course.serving_time()), zone);
      absl::Time time;
      std::string error;
      if (!absl::ParseTime("%Y-%m-%d %H:%M", day + parts[1], zone, &time, &error)) break;
      course.mutable_serving_time()->set_seconds(absl::ToUnixSeconds(time));
      return;
    }
    std::string known;
    for (const v1::Course& course : event_.courses())
      absl::StrAppend(&known, known.empty() ? "" : ", ", course.id());
    wrong("--time", text, absl::StrCat("must be a course and an hour, like main=19:45; courses are ", known));
  }

  const EventTask& task_;
  const Names names_;
  v1::Event event_;
  Violations mistakes_;
};

// The option that gave the event a field: "event.courses[1].servingTime" is the --time of that course.
Violations inOptions(const MenuChangeCommand& command, const v1::Event& changed, Violations mistakes) {
  const auto from = [](const std::vector<std::string>& texts, const std::string& id,
                       const std::string& name) {
    for (const std::string& text : texts)
      if (named(id, name, text.substr(0, text.find('=')))) return text;
    return std::string();
  };
  for (v1::FieldViolation& mistake : mistakes) {
    std::string given;
    const char* option = "--time";
    for (int i = 0; i < changed.courses_size(); ++i)
      if (mistake.field_path() == absl::StrCat("event.courses[", i, "].servingTime"))
        given = from(command.times, changed.courses(i).id(), changed.courses(i).display_name());
    for (int i = 0; i < changed.dishes_size(); ++i) {
      if (mistake.field_path() != absl::StrCat("event.dishes[", i, "].servingCount")) continue;
      option = "--serves";
      given = from(command.serves, changed.dishes(i).id(), changed.dishes(i).display_name());
    }
    if (given.empty()) continue;
    mistake.set_field_path(option);
    mistake.set_value(given);
  }
  return mistakes;
}

struct Effects {
  v1::CheckMenuResponse before;
  v1::CheckMenuResponse after;
  v1::MakeShoppingListResponse shopping;
  std::optional<v1::MakePlanResponse> plan;  // absent: the event has none yet
};

absl::Status askMenu(const EventTask& task, const v1::Event& changed, Effects& effects) {
  v1::CheckMenuRequest check;
  check.set_household_id(task.connection.householdId);
  check.set_event_id(task.event.id());
  auto before = task.connection.session->checkMenu(check);
  if (!before.ok()) return before.status();
  *check.mutable_event() = changed;
  auto after = task.connection.session->checkMenu(check);
  if (!after.ok()) return after.status();
  v1::MakeShoppingListRequest list;
  list.set_household_id(task.connection.householdId);
  list.set_event_id(task.event.id());
  *list.mutable_event() = changed;
  auto shopping = task.connection.session->makeShoppingList(list);
  if (!shopping.ok()) return shopping.status();
  effects.before = *std::move(before);
  effects.after = *std::move(after);
  effects.shopping = *std::move(shopping);
  return absl::OkStatus();
}

// A file's event is planned as it was; then what moves is asked before any work has begun.
absl::Status askPlan(const EventTask& task, const v1::Event& changed, bool fromFile, Effects& effects) {
  if (fromFile && task.bundle.plans().empty())
    if (auto status = planFirst(task); !status.ok()) return status;
  v1::ReplanRequest request;
  request.set_household_id(task.connection.householdId);
  request.set_event_id(task.event.id());
  request.set_request_id(link::newRequestId());
  request.set_validate_only(true);
  *request.mutable_event() = changed;
  if (fromFile)
    request.mutable_now()->set_seconds(task.event.has_work_start_time()
                                           ? task.event.work_start_time().seconds()
                                           : task.event.courses(0).serving_time().seconds() - 4 * kDay);
  auto answer = task.connection.session->replan(request);
  if (absl::IsNotFound(answer.status())) return absl::OkStatus();
  if (!answer.ok()) return answer.status();
  effects.plan = *std::move(answer);
  return absl::OkStatus();
}

void print(const EventTask& task, const v1::Event& changed, const Effects& effects,
           Environment& environment) {
  const Page page{environment.width, environment.colour,
                  task.bundle.household().measure_system() == v1::MEASURE_SYSTEM_US};
  const Style style(environment.colour);
  const std::string news = newWarningsText(task.bundle, changed, effects.before, effects.after, page);
  const std::string gone = newWarningsText(task.bundle, task.event, effects.after, effects.before, page);
  environment.out << style.heading("Guests") << "\n";
  environment.out << (news.empty() ? "Nobody is worse off.\n" : news);
  if (!gone.empty()) environment.out << "No longer so:\n" << gone;
  environment.out << "\n" << style.heading("Shopping") << "\n" << shoppingChangesText(effects.shopping, page);
  environment.out << "\n" << style.heading("Plan") << "\n";
  if (!effects.plan) {
    environment.out << "There is no plan yet.\n";
    return;
  }
  // What is left out has its name in the event as it was.
  const PlanView view(task.bundle, task.event, effects.plan->plan(), page.width, page.colour);
  environment.out << replanText(view, *effects.plan);
}

std::string json(const Effects& effects) {
  std::string text =
      absl::StrCat("{\"before\": ", jsonOf(effects.before), ", \"after\": ", jsonOf(effects.after),
                   ", \"shopping\": ", jsonOf(effects.shopping));
  if (effects.plan) absl::StrAppend(&text, ", \"plan\": ", jsonOf(*effects.plan));
  return text + "}\n";
}

}  // namespace

int runMenuChange(const MenuChangeCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task =
      eventTask({command.bundle, command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  const ChangedEvent changed(command, *task);
  if (!changed.mistakes().empty()) return reportMistakes(environment, changed.mistakes(), command.json);
  Effects effects;
  if (auto status = askMenu(*task, changed.event(), effects); !status.ok()) {
    const auto detail = link::errorDetail(status);
    if (!detail || detail->violations().empty()) return reportFailure(environment, status, command.json);
    return reportMistakes(
        environment,
        inOptions(command, changed.event(), {detail->violations().begin(), detail->violations().end()}),
        command.json);
  }
  if (auto status = askPlan(*task, changed.event(), !command.bundle.empty(), effects); !status.ok())
    return reportFailure(environment, status, command.json);
  if (command.json)
    environment.out << json(effects);
  else
    print(*task, changed.event(), effects, environment);
  return effects.plan && effects.plan->plan().unserved_size() > 0 ? kPlanFallsShort : kOk;
}

}  // namespace suppertide::terminal
