#include "client/terminal/step_text.h"

#include <algorithm>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string ovenWords(const PlanView& view, const v1::PlannedStep& step) {
  const int recipe = step.recipe_setpoint_celsius();
  const std::string oven = view.names().oven(step.oven_id());
  if (step.oven_phases_size() > 1) {
    std::vector<std::string> phases;
    for (const v1::OvenPhase& phase : step.oven_phases()) {
      phases.push_back(
          absl::StrCat(view.units().dial(phase.setpoint_celsius()), " for ", durationText(phase.duration())));
    }
    return absl::StrCat(oven, " at ", absl::StrJoin(phases, ", then "));
  }
  if (step.setpoint_celsius() == 0) return oven;
  const std::string dial = view.units().dial(step.setpoint_celsius());
  if (recipe == 0 || dial == view.units().dial(recipe)) return absl::StrCat(oven, " at ", dial);
  return absl::StrCat(oven, " at ", view.units().dialNumber(step.setpoint_celsius()), " instead of ",
                      view.units().dial(recipe));
}

std::string rackWords(const std::vector<int>& positions) {
  if (positions.empty()) return "";
  return absl::StrCat(positions.size() == 1 ? "rack " : "racks ", absl::StrJoin(positions, " and "),
                      " from below");
}

// Work that leaves a hand free, so that a cook knows what else may go on.
std::string attentionWords(const v1::PlannedStep& step) {
  if (step.cook_member_id().empty() || step.attention_percent() >= 75) return "";
  return step.attention_percent() <= 30 ? "look in now and then" : "stay near";
}

std::string weighingWords(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> parts;
  for (const v1::Weighing& weighing : step.weighings()) {
    parts.push_back(absl::StrCat(view.units().mass(weighing.mass_g()), " ", plainLine(weighing.name())));
  }
  return parts.empty() ? "" : absl::StrCat("Weigh: ", absl::StrJoin(parts, ", "));
}

}  // namespace

std::string whereText(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> parts;
  // Dough under an oven's light has both: the place says it all.
  if (!step.oven_id().empty() && step.place_id().empty()) parts.push_back(ovenWords(view, step));
  if (!step.place_id().empty()) parts.push_back(view.names().place(step.place_id()));
  parts.push_back(rackWords(view.rackPositions(step.id())));
  if (step.burner_count() > 0) parts.push_back(counted(step.burner_count(), "burner", "burners"));
  std::vector<std::string> things;
  for (const std::string& id : step.equipment_ids()) things.push_back(view.names().equipment(id));
  if (!things.empty()) parts.push_back(absl::StrCat("with ", joinWords(things)));
  if (step.has_check_from_time() && step.check_from_time().seconds() < step.end_time().seconds()) {
    parts.push_back(absl::StrCat(
        "look from ", view.clock().hourSeenFrom(toTime(step.start_time()), toTime(step.check_from_time()))));
  }
  parts.push_back(attentionWords(step));
  parts.erase(std::remove(parts.begin(), parts.end(), ""), parts.end());
  return absl::StrJoin(parts, ", ");
}

std::string slackText(const v1::PlannedStep& step) {
  const absl::Duration slack = toDuration(step.slack_duration());
  return slack >= absl::Minutes(1) ? absl::StrCat("slack ", durationText(slack)) : "no slack";
}

std::string mixingLiquid(const v1::PlannedStep& step) {
  const auto isWater = [](const v1::Weighing& weighing) {
    return absl::AsciiStrToLower(weighing.name()).find("water") != std::string::npos;
  };
  const bool water =
      step.weighings_size() == 0 || std::any_of(step.weighings().begin(), step.weighings().end(), isWater);
  return water ? "water" : "liquid";
}

std::vector<std::string> stepNotes(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> notes;
  const std::string weighing = weighingWords(view, step);
  if (!weighing.empty()) notes.push_back(weighing);
  if (step.has_water_celsius()) {
    notes.push_back(
        absl::StrCat(capitalised(mixingLiquid(step)), " at ", view.units().degrees(step.water_celsius())));
  }
  if (!step.levain_ratio().empty() && step.kind() != v1::STEP_KIND_FERMENT) {
    notes.push_back(absl::StrCat("Starter : flour : water ", plainLine(step.levain_ratio()), " by weight"));
  }
  std::vector<std::string> cautions;
  for (const int caution : step.cautions())
    cautions.push_back(cautionWords(static_cast<v1::Caution>(caution)));
  if (!cautions.empty()) notes.push_back(absl::StrCat("Take care: ", absl::StrJoin(cautions, "; ")));
  return notes;
}

}  // namespace suppertide::terminal
