#include "tests/evening/evening.h"

#include <cstdlib>

#include "client/link/request_id.h"
#include "tests/evening/checks.h"
#include "tests/evening/cooking.h"
#include "tests/evening/learned.h"
#include "tests/evening/stage.h"
#include "tests/evening/telling.h"
#include "tests/evening/troubles.h"

namespace suppertide::evening {
namespace {

constexpr int kTick = kMinute;
constexpr int kWaitedFor = 2 * 60 * kMinute;  // after the last course

bool allOver(Stage& stage) {
  const Seen seen = stage.hostSees();
  for (const v1::PlannedStep& step : stage.planIn(seen).steps())
    if (!step.left_out() && !stage.steps[step.id()].over) return false;
  return true;
}

}  // namespace

Outcome playEvening(const v1::Bundle& planned, std::uint64_t seed) {
  Stage stage(planned, seed);
  Telling telling(stage);
  Troubles troubles(stage, telling);
  Cooking cooking(stage, telling);
  telling.everybodySees();
  for (stage.now = stage.begin; stage.now <= stage.last + kWaitedFor && !allOver(stage); stage.now += kTick) {
    stage.party.clock().set(Instant(std::chrono::seconds(stage.now)));
    troubles.happen();
    cooking.goAround();
  }
  troubles.comeBackAll();
  telling.everybodySees();
  checkEvening(stage, telling.told());
  stage.out.learned = learnedOn(stage);
  return std::move(stage.out);
}

v1::Bundle withPlan(v1::Bundle bundle, int seconds) {
  bundle.clear_plans();
  bundle.clear_progresses();
  Party party(bundle, bundle.events(0).courses(0).serving_time().seconds() - 5 * 24 * 3600);
  v1::MakePlanRequest request;
  request.set_household_id(party.household());
  request.set_event_id(bundle.events(0).id());
  request.mutable_time_limit()->set_seconds(seconds);
  request.set_request_id(link::newRequestId());
  const auto made = party.host().session().makePlan(request, nullptr);
  if (!made.ok()) std::abort();
  *bundle.add_plans() = made->plan();
  bundle.mutable_plans(0)->clear_meta();
  return bundle;
}

}  // namespace suppertide::evening
