#include "client/terminal/clash_text.h"

#include <algorithm>
#include <vector>

#include "absl/strings/str_cat.h"

namespace suppertide::terminal {
namespace {

std::string dishName(const PlanView& view, const std::string& plannedId) {
  return view.names().dish(splitPlannedId(plannedId).first);
}

// Two bakes of one dish are told apart by their steps.
std::string sideName(const PlanView& view, const v1::OvenClash& clash, const std::string& plannedId) {
  const bool sameDish = splitPlannedId(clash.step_a_id()).first == splitPlannedId(clash.step_b_id()).first;
  return sameDish ? view.titleWithDish(plannedId) : dishName(view, plannedId);
}

// How one side gave way; empty when it did not.
std::string concession(const PlanView& view, const v1::OvenClash& clash, const std::string& plannedId,
                       const google::protobuf::Duration& moved, int degrees, int naiveSetpoint) {
  std::vector<std::string> parts;
  const v1::PlannedStep* step = view.step(plannedId);
  const absl::Duration by = toDuration(moved);
  if (absl::AbsDuration(by) >= absl::Minutes(1)) {
    parts.push_back(
        absl::StrCat("goes ", durationText(by), by < absl::ZeroDuration() ? " earlier" : " later"));
  }
  if (step != nullptr && step->oven_id() != clash.oven_id()) {
    parts.push_back(absl::StrCat("uses ", view.names().oven(step->oven_id()), " instead"));
  }
  if (degrees != 0 && view.units().dial(naiveSetpoint + degrees) != view.units().dial(naiveSetpoint)) {
    parts.push_back(absl::StrCat("bakes at ", view.units().dialNumber(naiveSetpoint + degrees),
                                 " instead of ", view.units().dial(naiveSetpoint)));
  }
  return parts.empty() ? "" : absl::StrCat(sideName(view, clash, plannedId), " ", joinWords(parts));
}

}  // namespace

std::string clashText(const PlanView& view, const v1::OvenClash& clash) {
  const absl::Time from = std::max(toTime(clash.naive_a().start()), toTime(clash.naive_b().start()));
  std::string text = absl::StrCat(sideName(view, clash, clash.step_a_id()), " (",
                                  view.units().dial(clash.naive_setpoint_a_celsius()), ") and ",
                                  sideName(view, clash, clash.step_b_id()), " (",
                                  view.units().dial(clash.naive_setpoint_b_celsius()), ") both wanted ",
                                  view.names().oven(clash.oven_id()), " on ", view.clock().dayHour(from));
  std::vector<std::string> settled;
  for (std::string side : {concession(view, clash, clash.step_a_id(), clash.moved_a(), clash.degrees_a(),
                                      clash.naive_setpoint_a_celsius()),
                           concession(view, clash, clash.step_b_id(), clash.moved_b(), clash.degrees_b(),
                                      clash.naive_setpoint_b_celsius())}) {
    if (!side.empty()) settled.push_back(std::move(side));
  }
  if (clash.shared_setpoint()) settled.push_back("they share the oven at one temperature");
  if (settled.empty()) return text + ".";
  absl::StrAppend(&text, ": ", settled[0]);
  for (std::size_t i = 1; i < settled.size(); ++i) absl::StrAppend(&text, "; ", settled[i]);
  return text + ".";
}

std::string clashesText(const PlanView& view) {
  if (view.plan().oven_clashes_size() == 0) return "";
  std::string text = view.section("Oven clashes, and how they are settled");
  for (const v1::OvenClash& clash : view.plan().oven_clashes())
    text += view.item("• ", clashText(view, clash));
  return text;
}

}  // namespace suppertide::terminal
