#include "tests/evening/troubles.h"

#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"

namespace suppertide::evening {

Troubles::Troubles(Stage& stage, Telling& telling) : stage_(stage), telling_(telling) {
  const std::int64_t first = stage_.begin;
  const auto between = [&](double low, double high) {
    return first + static_cast<std::int64_t>(stage_.truth.uniform(low, high) *
                                             static_cast<double>(stage_.last - first));
  };
  if (stage_.truth.ovenBreaks()) breaksAt_ = between(0.6, 0.97);
  if (stage_.truth.guestCancels()) cancelsAt_ = between(0.3, 0.95);
  if (stage_.truth.clientDropsOff()) {
    offAt_ = between(0.5, 0.95);
    backAt_ = offAt_ + static_cast<std::int64_t>(stage_.truth.uniform(20, 120)) * kMinute;
  }
}

void Troubles::happen() {
  if (due(offAt_)) {
    CookClient& cook = *stage_.party.cooks.back();
    cook.dropOff();
    stage_.say(absl::StrCat(stage_.name(cook.memberId()), "'s device is off; what ",
                            stage_.name(cook.memberId()), " does is told later."));
  }
  if (due(backAt_)) comeBackAll();
  if (due(breaksAt_)) breakOven();
  if (due(cancelsAt_)) cancelGuest();
}
bool Troubles::due(std::int64_t& moment) {
  if (moment == 0 || stage_.now < moment) return false;
  moment = 0;
  return true;
}

void Troubles::comeBackAll() {
  for (auto& cook : stage_.party.cooks) {
    if (cook->online()) continue;
    cook->comeBack();
    std::string refused;
    cook->tellWaiting(stage_.event.id(), refused);
    if (!refused.empty()) stage_.fault(absl::StrCat("what waited was refused: ", refused));
    stage_.say(absl::StrCat(stage_.name(cook->memberId()), "'s device is back."));
    telling_.corrected("");
  }
}

v1::Event Troubles::stored() {
  return stage_.party.host().replica()->events.at(stage_.event.id());
}

void Troubles::breakOven() {
  v1::Event event = stored();
  const auto& ovens = stage_.bundle.kitchens(0).ovens();
  const std::string oven = ovens[ovens.size() - 1].id();
  v1::Unavailable& away = *event.add_unavailable();
  away.set_thing_id(oven);
  away.mutable_when()->mutable_start()->set_seconds(stage_.now);
  away.mutable_when()->mutable_limit()->set_seconds(stage_.last + 24 * 3600);
  stage_.say(absl::StrCat(stage_.name(oven), " is broken."));
  replan(event);
  // What stood in it begins again elsewhere.
  for (auto& [id, standing] : stage_.steps)
    if (standing.begun != 0 && !standing.over && standing.oven == oven) standing = Standing();
}

void Troubles::cancelGuest() {
  v1::Event event = stored();
  if (event.guests().size() < 2) return;
  const std::string guest = event.guests(event.guests_size() - 1).display_name();
  event.mutable_guests()->RemoveLast();
  stage_.say(absl::StrCat(guest, " cannot come."));
  replan(event);
}

void Troubles::replan(const v1::Event& event) {
  v1::ReplanRequest request;
  request.set_household_id(stage_.party.household());
  request.set_event_id(stage_.event.id());
  *request.mutable_event() = event;
  request.set_request_id(link::newRequestId());
  const auto answer = stage_.party.host().session().replan(request);
  if (!answer.ok()) return stage_.fault(absl::StrCat("replanning was refused: ", answer.status().ToString()));
  telling_.corrected("");
}

}  // namespace suppertide::evening
