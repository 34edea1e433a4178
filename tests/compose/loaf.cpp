#include "tests/compose/loaf.h"

#include <google/protobuf/util/json_util.h>

#include <stdexcept>
#include <string>

#include "tests/compose/small_dinner.h"

namespace suppertide::compose {
namespace {

constexpr const char* kLoaf = R"json(
 {"id": "rolls", "displayName": "Seeded loaf", "servingCount": 8,
  "formula": {"doughClass": "DOUGH_CLASS_LEAN", "pieceCount": 1, "pieceMassG": 900, "doughCelsius": 25,
   "lines": [
    {"name": "strong flour", "role": "FORMULA_ROLE_FLOUR", "percent": 80},
    {"name": "wholemeal rye", "role": "FORMULA_ROLE_FLOUR", "percent": 20, "wholeGrainPercent": 100},
    {"name": "water", "role": "FORMULA_ROLE_WATER", "percent": 74},
    {"name": "salt", "role": "FORMULA_ROLE_SALT", "percent": 2},
    {"name": "fresh yeast", "role": "FORMULA_ROLE_FRESH_YEAST", "percent": 0.5},
    {"name": "linseed", "role": "FORMULA_ROLE_OTHER", "percent": 8}],
   "levain": {"starterId": "s", "doughSharePercent": 8, "hydrationPercent": 100, "wholeGrainPercent": 100},
   "preferments": [{"id": "poolish", "kind": "PREFERMENT_KIND_POOLISH", "flourPercent": 25, "yeastPercent": 0.2}],
   "soakers": [{"id": "seeds", "name": "linseed soaker", "parts": [{"lineName": "linseed"}], "waterPercent": 12}]},
  "steps": [
   {"id": "feed", "title": "Feed the levain", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "600s"}, "startsFree": true},
   {"id": "levain", "title": "Levain ripens", "kind": "STEP_KIND_FERMENT", "ferment": {"stage": "FERMENT_STAGE_LEVAIN"}},
   {"id": "stir", "title": "Stir the poolish", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "300s"}, "startsFree": true},
   {"id": "poolish", "title": "Poolish ripens", "kind": "STEP_KIND_FERMENT",
    "ferment": {"stage": "FERMENT_STAGE_PREFERMENT", "prefermentId": "poolish"}},
   {"id": "soak", "title": "Soak the linseed", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "300s"},
    "startsFree": true, "soakerId": "seeds"},
   {"id": "swell", "title": "Linseed swells", "kind": "STEP_KIND_WAIT", "duration": {"likely": "7200s"},
    "longestDuration": "43200s", "after": [{"stepId": "soak"}]},
   {"id": "mix", "title": "Mix the dough", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "1200s"},
    "after": [{"stepId": "levain"}, {"stepId": "poolish"}, {"stepId": "swell"}]},
   {"id": "bulk", "title": "Bulk", "kind": "STEP_KIND_FERMENT", "ferment": {"stage": "FERMENT_STAGE_BULK"}},
   {"id": "shape", "title": "Shape the loaf", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "900s"},
    "after": [{"stepId": "bulk"}]},
   {"id": "proof", "title": "Proof", "kind": "STEP_KIND_FERMENT", "ferment": {"stage": "FERMENT_STAGE_PROOF"}},
   {"id": "bake", "title": "Bake the loaf", "kind": "STEP_KIND_OVEN",
    "oven": {"setpointCelsius": 230, "duration": {"least": "2400s", "likely": "2700s", "most": "3000s"},
     "foodClass": "FOOD_CLASS_BREAD", "startCoreCelsius": 25, "endCoreCelsius": 97, "thicknessMm": 95,
     "steam": true, "lidDuration": "1500s",
     "pan": {"name": "pot", "widthMm": 300, "depthMm": 300, "heightMm": 110, "count": 1}}},
   {"id": "cool", "title": "Cool the loaf", "kind": "STEP_KIND_REST", "duration": {"likely": "3600s"},
    "longestDuration": "14400s", "after": [{"stepId": "bake", "mostGap": "300s"}]}],
  "holding": {"kind": "HOLDING_KIND_ROOM", "longest": "14400s"}}
)json";

}  // namespace

v1::Bundle dinnerWithLoaf() {
  v1::Bundle bundle = smallDinner();
  v1::Recipe loaf;
  const auto status = google::protobuf::util::JsonStringToMessage(kLoaf, &loaf);
  if (!status.ok()) throw std::runtime_error(std::string(status.message()));
  for (v1::Recipe& recipe : *bundle.mutable_recipes())
    if (recipe.id() == loaf.id()) recipe = loaf;
  return bundle;
}

}  // namespace suppertide::compose
