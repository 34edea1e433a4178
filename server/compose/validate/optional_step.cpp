// Steps that may be left out, and bakes in several loads.
#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostLeftOutPoints = 1000;
constexpr char kLoadMark[] = ".load-";   // a later load's id is made of it
constexpr char kFetchMark[] = ".fetch";  // and that of what is taken out before

// Food that is only safe once it was cooked, chilled or heated through.
bool isPerishable(v1::SafetyClass food) {
  return food != v1::SAFETY_CLASS_UNSPECIFIED && food != v1::SAFETY_CLASS_SHELF_STABLE;
}

bool mayBeLeftOut(v1::StepKind kind) {
  switch (kind) {
    case v1::STEP_KIND_HANDS_ON:
    case v1::STEP_KIND_WAIT:
    case v1::STEP_KIND_OVEN:
    case v1::STEP_KIND_BURNER:
    case v1::STEP_KIND_REST:
    case v1::STEP_KIND_FETCH:
      return true;
    default:
      return false;
  }
}

}  // namespace

void checkOptional(const Checker& here, const v1::Step& step, const v1::Recipe& recipe) {
  const Checker points = here.at("leftOutPoints");
  if (!step.may_be_left_out()) {
    if (step.left_out_points() != 0)
      points.wrong(absl::StrCat(step.left_out_points()), "only a step that may be left out has such points");
    return;
  }
  points.range(step.left_out_points(), 0, kMostLeftOutPoints, "points");
  const Checker field = here.at("mayBeLeftOut");
  if (!mayBeLeftOut(step.kind()))
    field.wrong("true", "thawing, chilling, holding and fermenting are never left out");
  const auto food =
      step.safety_class() != v1::SAFETY_CLASS_UNSPECIFIED ? step.safety_class() : recipe.safety_class();
  const bool heats = step.kind() == v1::STEP_KIND_OVEN || step.kind() == v1::STEP_KIND_BURNER;
  if (heats && isPerishable(food))
    field.wrong("true", "heating food that has food-safety limits is never left out");
}

void checkNoMadeId(const Checker& id, const std::string& stepId) {
  if (stepId.find(kLoadMark) != std::string::npos)
    id.wrong(stepId,
             absl::StrCat("must not have ", kLoadMark, " in it: later loads of a bake are called so"));
  if (stepId.find(kFetchMark) != std::string::npos)
    id.wrong(stepId, absl::StrCat("must not have ", kFetchMark,
                                  " in it: steps that take something out are called so"));
}

std::string withoutMark(const std::string& stepId) {
  return stepId.substr(0, std::min(stepId.rfind(kLoadMark), stepId.find(kFetchMark)));
}

}  // namespace suppertide::compose
