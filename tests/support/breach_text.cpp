#include "tests/support/breach_text.h"

#include "absl/strings/str_cat.h"

namespace suppertide::planning {
namespace {

const char* nameOf(Rule rule) {
  switch (rule) {
    case Rule::kGap:
      return "kGap";
    case Rule::kServing:
      return "kServing";
    case Rule::kCook:
      return "kCook";
    case Rule::kCapacity:
      return "kCapacity";
    case Rule::kOvenTemperature:
      return "kOvenTemperature";
    case Rule::kOvenRacks:
      return "kOvenRacks";
    case Rule::kOvenProofing:
      return "kOvenProofing";
    case Rule::kReadiness:
      return "kReadiness";
    case Rule::kFoodSafety:
      return "kFoodSafety";
    case Rule::kAllergen:
      return "kAllergen";
    case Rule::kPinned:
      return "kPinned";
    case Rule::kModeLink:
      return "kModeLink";
  }
  return "?";
}

std::string idOf(const Problem& problem, int step) {
  return step < 0 ? "nothing" : problem.steps[static_cast<std::size_t>(step)].id;
}

}  // namespace

std::string breachText(const Problem& problem, const Breach& breach) {
  std::string text = absl::StrCat(nameOf(breach.rule), ": ", idOf(problem, breach.step));
  if (breach.otherStep >= 0) absl::StrAppend(&text, " (with ", idOf(problem, breach.otherStep), ")");
  absl::StrAppend(&text, " at ", breach.minute, " by ", breach.amount);
  return text;
}

std::vector<std::string> breachTexts(const Problem& problem, const Schedule& schedule) {
  std::vector<std::string> texts;
  for (const Breach& breach : audit(problem, schedule)) texts.push_back(breachText(problem, breach));
  return texts;
}

}  // namespace suppertide::planning
