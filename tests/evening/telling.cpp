#include "tests/evening/telling.h"

#include <chrono>
#include <cstdlib>
#include <ctime>

#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"

namespace suppertide::evening {
namespace {

const char* causeWords(v1::MoveCause cause) {
  switch (cause) {
    case v1::MOVE_CAUSE_REPORTED:
      return "as was reported";
    case v1::MOVE_CAUSE_FOLLOWS:
      return "after what comes before it";
    case v1::MOVE_CAUSE_COOK:
      return "its cook is busy";
    case v1::MOVE_CAUSE_OVEN:
      return "for the oven";
    case v1::MOVE_CAUSE_THING:
      return "for what is in use";
    case v1::MOVE_CAUSE_NOT_BEGUN:
      return "it has not begun";
    case v1::MOVE_CAUSE_LENGTH:
      return "it takes another time";
    case v1::MOVE_CAUSE_SERVING:
      return "to be in time";
    case v1::MOVE_CAUSE_PINNED:
      return "for what stays where it is";
    case v1::MOVE_CAUSE_DISH:
      return "its dish is planned anew";
    default:
      return "to make room";
  }
}

const char* lossWords(v1::Cause cause) {
  switch (cause) {
    case v1::CAUSE_FOOD_SAFETY:
      return "which is not safe to eat any more";
    case v1::CAUSE_SERVING:
      return "which would be later than its course may be";
    case v1::CAUSE_MUST_FOLLOW:
      return "which has waited too long";
    case v1::CAUSE_THING_BUSY:
      return "for which no oven, cook or place is left";
    default:
      return "which has no room beside the others";
  }
}

// Whether somebody has to do something at another time or place, who did not say so themselves.
bool isMinded(const v1::Plan& plan, const v1::MovedStep& moved) {
  if (moved.cause() == v1::MOVE_CAUSE_REPORTED || moved.cause() == v1::MOVE_CAUSE_NOT_BEGUN) return false;
  const v1::PlannedStep* step = Stage::find(plan, moved.step_id());
  return step == nullptr || !step->cook_member_id().empty() || step->kind() == v1::STEP_KIND_OVEN;
}

}  // namespace

v1::Report Telling::about(const v1::PlannedStep& step) const {
  v1::Report report;
  report.set_id(link::newRequestId());
  report.set_dish_id(step.dish_id());
  report.set_step_id(step.step_id());
  report.mutable_happen_time()->set_seconds(stage_.now);
  return report;
}

void Telling::tell(CookClient& cook, v1::Report report) {
  report.set_member_id(cook.memberId());
  told_.push_back(report.id());
  ++stage_.out.reports;
  const auto before = std::chrono::steady_clock::now();
  const std::clock_t worked = std::clock();
  std::string refused;
  cook.tell(stage_.event.id(), report, refused);
  if (!refused.empty())
    stage_.fault(absl::StrCat(report.dish_id(), "/", report.step_id(), " was refused: ", refused));
  if (!cook.online()) return;
  stage_.party.server().backend().corrections().waitUntilCorrected();
  everybodySees();
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - before;
  const double work = static_cast<double>(std::clock() - worked) / CLOCKS_PER_SEC;
  if (!corrected(report.id())) return;
  stage_.out.corrections.push_back(took.count());
  stage_.out.correctionWork.push_back(work);
}

void Telling::everybodySees() {
  const auto revision = stage_.party.server().backend().store().revision(stage_.party.household());
  for (auto& cook : stage_.party.cooks)
    if (cook->online() && !cook->waitFor(revision.value_or(0)))
      stage_.fault(absl::StrCat(cook->memberId(), " is not told any more"));
}

bool Telling::corrected(const std::string& reportId) {
  stage_.party.server().backend().corrections().waitUntilDone();
  everybodySees();
  const Seen seen = stage_.hostSees();
  const v1::Plan& now = stage_.planIn(seen);
  if (now.meta().revision() == lastPlan_) return false;
  const bool first = lastPlan_ == 0;
  lastPlan_ = now.meta().revision();
  if (first && reportId.empty()) return false;
  ++stage_.out.plans;
  sayServed(now);
  // A dish under way may be over its dough's own limits, or late, rather than be thrown away; the plan says
  // so.
  for (const v1::Breach& breach : now.breaches())
    if (breach.rule() != v1::HARD_RULE_READINESS && breach.rule() != v1::HARD_RULE_SERVING &&
        breach.rule() != v1::HARD_RULE_GAP)
      stage_.fault(absl::StrCat("a stored plan breaks a rule: ", breach.ShortDebugString()));
  for (const v1::MovedStep& moved : now.moved_steps()) {
    ++stage_.out.moves;
    if (isMinded(now, moved)) ++stage_.out.movesTold;
    if (!moved.has_new_start_time() || !moved.has_old_start_time()) continue;
    const std::int64_t by = moved.new_start_time().seconds() - moved.old_start_time().seconds();
    if (by != 0 && std::abs(by) < 5 * kMinute)
      stage_.fault(absl::StrCat("a flutter of ", by, " s: ", moved.step_id()));
    if (by == 0) continue;
    const v1::PlannedStep* step = Stage::find(now, moved.step_id());
    stage_.say(absl::StrCat("    the plan moves ", step == nullptr ? moved.title() : stage_.stepName(*step),
                            " from ", stage_.clock(moved.old_start_time().seconds()), " to ",
                            stage_.clock(moved.new_start_time().seconds()), why(now, moved)));
  }
  return true;
}

void Telling::sayServed(const v1::Plan& plan) {
  std::set<std::string> left;
  for (const v1::Unserved& one : plan.unserved()) left.insert(one.dish_id());
  for (const v1::Unserved& one : plan.unserved())
    if (left_.count(one.dish_id()) == 0)
      stage_.say(
          absl::StrCat("    the plan leaves out ", stage_.name(one.dish_id()), ", ", lossWords(one.cause())));
  for (const std::string& dish : left_)
    if (left.count(dish) == 0) {
      ++stage_.out.takenBack;
      stage_.say(absl::StrCat("    the plan serves ", stage_.name(dish), " again"));
    }
  left_ = std::move(left);
}

std::string Telling::why(const v1::Plan& plan, const v1::MovedStep& moved) const {
  const v1::PlannedStep* other = Stage::find(plan, moved.cause_step_id());
  return absl::StrCat(", ", causeWords(moved.cause()),
                      other == nullptr ? "" : absl::StrCat(" (", stage_.stepName(*other), ")"));
}

}  // namespace suppertide::evening
