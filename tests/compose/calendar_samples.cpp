// Prints calendars of the small dinner with what they must say, as JSON, for parsers in other languages.
#include <cstdio>

#include <nlohmann/json.hpp>

#include "server/compose/day/calendar.h"
#include "server/compose/day/calendar_uid.h"
#include "tests/compose/shifted_plan.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

nlohmann::json sample(const Documents& documents, const v1::Plan& plan, const std::string& gone = "") {
  const v1::Progress none;
  const CalendarEvent event{{documents.household, documents.event, plan, none},
                            documents.kitchen,
                            {{"roast", "Pork, slow; \"crackling\" \\ no rind\nsalted — “ãé”"}}};
  nlohmann::json steps = nlohmann::json::object();
  for (const v1::PlannedStep& step : plan.steps())
    if (!step.cook_member_id().empty())
      steps[calendarUid("h/supper/" + step.id())] = {{"start", step.start_time().seconds()},
                                                     {"end", step.end_time().seconds()},
                                                     {"sequence", step.move_count()}};
  return {{"calendar", calendarOf({event}, "")},
          {"steps", steps},
          {"odd", calendarUid("h/supper/roast/season")},
          {"gone", gone.empty() ? "" : calendarUid("h/supper/" + gone)}};
}

// As the correction that took its first step of a cook away.
nlohmann::json withoutAStep(const Documents& documents, v1::Plan plan) {
  int i = 0;
  while (plan.steps(i).cook_member_id().empty() || plan.steps(i).id() == "roast/season") ++i;
  v1::MovedStep& moved = *plan.add_moved_steps();
  moved.set_step_id(plan.steps(i).id());
  moved.set_title(plan.steps(i).title());
  *moved.mutable_old_start_time() = plan.steps(i).start_time();
  *moved.mutable_old_end_time() = plan.steps(i).end_time();
  moved.set_old_cook_member_id(plan.steps(i).cook_member_id());
  plan.mutable_steps()->DeleteSubrange(i, 1);
  plan.mutable_meta()->set_revision(9);
  return sample(documents, plan, moved.step_id());
}

}  // namespace
}  // namespace suppertide::compose

int main() {
  using namespace suppertide::compose;
  const Documents documents = documentsOf(smallDinner());
  auto plan = planEvent(documents, {.seed = 1, .workLimit = 3000});
  if (!plan.ok()) return 1;
  plan->mutable_steps(0)->set_move_count(3);
  nlohmann::json samples = nlohmann::json::array({sample(documents, *plan)});
  // Three weeks on the clocks of Lisbon change on the day.
  shiftDays(*plan, zoneOf(documents.household, documents.event), 21);
  samples.push_back(sample(documents, *plan));
  samples.push_back(withoutAStep(documents, *plan));
  std::printf("%s\n", samples.dump().c_str());
  return 0;
}
