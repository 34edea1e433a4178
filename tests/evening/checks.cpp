#include "tests/evening/checks.h"

#include <google/protobuf/util/message_differencer.h>

#include <algorithm>
#include <map>
#include <set>

#include "absl/strings/str_cat.h"

namespace suppertide::evening {
namespace {

// Minutes; what follows the last report need not be told any more.
constexpr int kToldWithin = 10;

void checkServed(Stage& stage) {
  const Seen seen = stage.hostSees();
  const v1::Plan& final = stage.planIn(seen);
  stage.out.unserved = final.unserved_size();
  std::map<std::string, std::int64_t> serving;
  for (const v1::Course& course : stage.event.courses())
    serving[course.id()] = course.serving_time().seconds();
  for (const v1::Dish& dish : stage.event.dishes()) {
    const bool unserved = std::any_of(final.unserved().begin(), final.unserved().end(),
                                      [&](const v1::Unserved& u) { return u.dish_id() == dish.id(); });
    if (unserved) {
      stage.say(absl::StrCat(stage.name(dish.id()), " is not served; the plan says so."));
      continue;
    }
    std::int64_t ready = 0;
    for (const v1::PlannedStep& step : final.steps()) {
      if (step.dish_id() != dish.id() || step.left_out()) continue;
      const Standing& standing = stage.steps[step.id()];
      if (!standing.over)
        stage.fault(absl::StrCat(stage.name(dish.id()), " was never finished: ", step.title()));
      ready = std::max(ready, standing.ends);
    }
    const auto late = static_cast<int>((ready - serving[dish.course_id()]) / kMinute);
    stage.out.lateMinutes = std::max(stage.out.lateMinutes, late);
    if (late <= kToldWithin) continue;
    int told = 0;
    for (const v1::PlannedDish& planned : final.dishes())
      if (planned.dish_id() == dish.id())
        told = static_cast<int>(planned.late_duration().seconds() / kMinute);
    stage.say(absl::StrCat(stage.name(dish.id()), " is ", late, " minutes late; the plan said ", told, "."));
    if (told == 0)
      stage.fault(
          absl::StrCat(stage.name(dish.id()), " was ", late, " minutes late and the plan never said so"));
  }
}

void checkAgreement(Stage& stage) {
  v1::ExportBundleRequest request;
  request.set_household_id(stage.party.household());
  const auto bundle = stage.party.host().session().exportBundle(request);
  if (!bundle.ok()) return stage.fault("nothing can be exported");
  for (auto& cook : stage.party.cooks) {
    const auto replica = cook->replica();
    using google::protobuf::util::MessageDifferencer;
    const bool same =
        MessageDifferencer::Equals(replica->plans.at(stage.event.id()), bundle->plans(0)) &&
        MessageDifferencer::Equals(replica->progresses.at(stage.event.id()), bundle->progresses(0)) &&
        MessageDifferencer::Equals(replica->events.at(stage.event.id()), bundle->events(0));
    if (!same)
      stage.fault(
          absl::StrCat(stage.name(cook->memberId()), "'s client shows another evening than the server"));
  }
}

void checkNothingLost(Stage& stage, const std::vector<std::string>& told) {
  std::set<std::string> kept;
  for (const v1::Report& report : stage.party.host().replica()->progresses.at(stage.event.id()).reports())
    kept.insert(report.id());
  for (const std::string& id : told)
    if (kept.count(id) == 0) stage.fault("a report was lost");
}

}  // namespace

void checkEvening(Stage& stage, const std::vector<std::string>& told) {
  checkServed(stage);
  checkAgreement(stage);
  checkNothingLost(stage, told);
}

}  // namespace suppertide::evening
