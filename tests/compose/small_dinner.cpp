#include "tests/compose/small_dinner.h"

#include <google/protobuf/util/json_util.h>

#include <stdexcept>
#include <string>

namespace suppertide::compose {
namespace {

constexpr const char* kHousehold = R"json(
{"household": {
  "id": "h", "displayName": "Harbour Lane", "timeZone": "Europe/Lisbon",
  "members": [
    {"id": "ana", "displayName": "Ana", "role": "ROLE_HOST", "skills": ["shaping"],
     "awake": {"start": "06:30", "limit": "23:00"}},
    {"id": "rui", "displayName": "Rui", "role": "ROLE_COOK"}]},
 "kitchens": [{
  "id": "k", "displayName": "Harbour Lane kitchen", "burnerCount": 4,
  "ovens": [{"id": "large", "displayName": "Large oven", "minSetpointCelsius": 50, "maxSetpointCelsius": 250,
    "setpointStepCelsius": 5, "rackClearHeightMm": [120, 110, 110, 110], "shelfWidthMm": 450, "shelfDepthMm": 370}],
  "equipment": [{"id": "mixer", "displayName": "Stand mixer", "count": 1}],
  "places": [
    {"id": "counter", "displayName": "Counter", "kind": "PLACE_KIND_COUNTER", "temperature": {"celsius": [22]}},
    {"id": "light", "displayName": "Large oven, light on", "kind": "PLACE_KIND_OVEN_LIGHT",
     "temperature": {"celsius": [27]}, "ovenId": "large"},
    {"id": "fridge", "displayName": "Fridge", "kind": "PLACE_KIND_FRIDGE", "temperature": {"celsius": [4]}, "volumeL": 60}]}],
 "starters": [{"id": "s", "displayName": "Crock", "hydrationPercent": 100, "wholeGrainPercent": 50, "vigour": 1}],
)json";

constexpr const char* kRolls = R"json(
 "recipes": [
 {"id": "rolls", "displayName": "Butter rolls", "servingCount": 8,
  "formula": {"doughClass": "DOUGH_CLASS_ENRICHED", "pieceCount": 16, "pieceMassG": 55, "doughCelsius": 27,
   "lines": [
    {"name": "flour", "role": "FORMULA_ROLE_FLOUR", "percent": 100},
    {"name": "milk", "role": "FORMULA_ROLE_MILK", "percent": 58},
    {"name": "egg", "role": "FORMULA_ROLE_EGG", "percent": 15},
    {"name": "butter", "role": "FORMULA_ROLE_FAT", "percent": 15},
    {"name": "sugar", "role": "FORMULA_ROLE_SUGAR", "percent": 10},
    {"name": "salt", "role": "FORMULA_ROLE_SALT", "percent": 2}],
   "levain": {"starterId": "s", "doughSharePercent": 19, "hydrationPercent": 100, "wholeGrainPercent": 50}},
  "steps": [
   {"id": "feed", "title": "Feed the levain", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "600s"}},
   {"id": "levain", "title": "Levain ripens", "kind": "STEP_KIND_FERMENT", "ferment": {"stage": "FERMENT_STAGE_LEVAIN"}},
   {"id": "mix", "title": "Mix the dough", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "1500s"},
    "equipment": [{"equipmentId": "mixer"}]},
   {"id": "bulk", "title": "Bulk", "kind": "STEP_KIND_FERMENT", "ferment": {"stage": "FERMENT_STAGE_BULK"}},
   {"id": "fold", "title": "Fold", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "300s"},
    "after": [{"stepId": "bulk", "fromStart": true, "leastGap": "1800s", "mostGap": "3600s"}]},
   {"id": "shape", "title": "Shape the rolls", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "1500s"}, "skill": "shaping",
    "after": [{"stepId": "bulk"}]},
   {"id": "proof", "title": "Proof", "kind": "STEP_KIND_FERMENT", "ferment": {"stage": "FERMENT_STAGE_PROOF"}},
   {"id": "bake", "title": "Bake the rolls", "kind": "STEP_KIND_OVEN",
    "oven": {"setpointCelsius": 205, "duration": {"least": "1080s", "likely": "1260s", "most": "1500s"},
     "foodClass": "FOOD_CLASS_BREAD", "startCoreCelsius": 27, "endCoreCelsius": 92, "thicknessMm": 45,
     "pan": {"name": "tray", "widthMm": 400, "depthMm": 300, "heightMm": 70, "count": 1}}},
   {"id": "cool", "title": "Cool a little", "kind": "STEP_KIND_REST", "duration": {"likely": "600s"},
    "after": [{"stepId": "bake", "mostGap": "300s"}]}],
  "holding": {"kind": "HOLDING_KIND_WARM", "longest": "3600s", "bestUntil": "900s"}},
)json";

constexpr const char* kOthers = R"json(
 {"id": "roast", "displayName": "Pork shoulder", "servingCount": 8,
  "steps": [
   {"id": "season", "title": "Season the roast", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "900s"}},
   {"id": "temper", "title": "Let it lose its chill", "kind": "STEP_KIND_WAIT", "duration": {"likely": "1800s"}, "longestDuration": "3600s"},
   {"id": "roast", "title": "Roast", "kind": "STEP_KIND_OVEN",
    "after": [{"stepId": "temper", "mostGap": "900s"}],
    "oven": {"setpointCelsius": 165, "duration": {"least": "6600s", "likely": "7200s", "most": "8400s"},
     "foodClass": "FOOD_CLASS_ROAST", "startCoreCelsius": 12, "endCoreCelsius": 74, "thicknessMm": 110,
     "pan": {"name": "roasting tin", "widthMm": 400, "depthMm": 300, "heightMm": 150, "count": 1}}},
   {"id": "rest", "title": "Rest the roast", "kind": "STEP_KIND_REST", "duration": {"likely": "1200s"}, "longestDuration": "2700s",
    "after": [{"stepId": "roast", "mostGap": "300s"}]},
   {"id": "carve", "title": "Carve", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "900s"},
    "after": [{"stepId": "rest", "mostGap": "600s"}]}],
  "holding": {"kind": "HOLDING_KIND_HOT", "longest": "1200s"}},
 {"id": "gratin", "displayName": "Chard gratin", "servingCount": 8,
  "steps": [
   {"id": "prepare", "title": "Build the gratin", "kind": "STEP_KIND_HANDS_ON", "duration": {"likely": "2400s"}},
   {"id": "chill", "title": "Keep it cold", "kind": "STEP_KIND_CHILL", "duration": {"likely": "0s"}, "longestDuration": "72000s", "volumeL": 4},
   {"id": "bake", "title": "Bake the gratin", "kind": "STEP_KIND_OVEN",
    "after": [{"stepId": "chill", "mostGap": "900s"}],
    "oven": {"setpointCelsius": 185, "duration": {"likely": "2700s"}, "foodClass": "FOOD_CLASS_CASSEROLE",
     "pan": {"name": "dish", "widthMm": 330, "depthMm": 230, "heightMm": 70, "count": 1}}},
   {"id": "stand", "title": "Let it settle", "kind": "STEP_KIND_REST", "duration": {"likely": "600s"},
    "after": [{"stepId": "bake", "mostGap": "300s"}]}],
  "holding": {"kind": "HOLDING_KIND_HOT", "longest": "1800s"}}],
)json";

constexpr const char* kEvent = R"json(
 "events": [{"id": "supper", "displayName": "Sunday supper", "kitchenId": "k",
  "workStartTime": "2027-03-05T08:00:00Z",
  "courses": [{"id": "main", "displayName": "Main", "servingTime": "2027-03-07T18:30:00Z"}],
  "guests": [{"id": "g1", "displayName": "Marta"}, {"id": "g2", "displayName": "Joel"}, {"id": "g3", "displayName": "Dina"},
   {"id": "g4", "displayName": "Otto"}, {"id": "g5", "displayName": "Lia"}, {"id": "g6", "displayName": "Nuno"},
   {"id": "g7", "displayName": "Ester"}, {"id": "g8", "displayName": "Vasco"}],
  "cooks": [{"memberId": "ana"}, {"memberId": "rui"}],
  "dishes": [
   {"id": "rolls", "recipeId": "rolls", "courseId": "main", "cookMemberId": "ana"},
   {"id": "roast", "recipeId": "roast", "courseId": "main"},
   {"id": "gratin", "recipeId": "gratin", "courseId": "main"}]}]}
)json";

}  // namespace

v1::Bundle smallDinner() {
  v1::Bundle bundle;
  const auto status = google::protobuf::util::JsonStringToMessage(
      std::string(kHousehold) + kRolls + kOthers + kEvent, &bundle);
  if (!status.ok()) throw std::runtime_error(std::string(status.message().data(), status.message().size()));
  return bundle;
}

Documents documentsOf(const v1::Bundle& bundle) {
  Documents documents;
  documents.household = bundle.household();
  documents.kitchen = bundle.kitchens(0);
  documents.starters.assign(bundle.starters().begin(), bundle.starters().end());
  documents.recipes.assign(bundle.recipes().begin(), bundle.recipes().end());
  documents.event = bundle.events(0);
  return documents;
}

}  // namespace suppertide::compose
