#include "client/terminal/words.h"

#include "absl/strings/str_cat.h"

#include "suppertide/v1/household.pb.h"

namespace suppertide::terminal {

std::string stageWords(v1::FermentStage stage) {
  switch (stage) {
    case v1::FERMENT_STAGE_LEVAIN:
      return "levain";
    case v1::FERMENT_STAGE_BULK:
      return "bulk fermentation";
    case v1::FERMENT_STAGE_PROOF:
      return "proof";
    case v1::FERMENT_STAGE_PREFERMENT:
      return "preferment";
    default:
      return "ferment";
  }
}

std::string prefermentWords(const v1::Preferment& preferment) {
  if (!preferment.name().empty()) return preferment.name();
  switch (preferment.kind()) {
    case v1::PREFERMENT_KIND_POOLISH:
      return "poolish";
    case v1::PREFERMENT_KIND_BIGA:
      return "biga";
    case v1::PREFERMENT_KIND_SPONGE:
      return "sponge";
    case v1::PREFERMENT_KIND_OLD_DOUGH:
      return "old dough";
    default:
      return "preferment";
  }
}

std::string cautionWords(v1::Caution caution) {
  switch (caution) {
    case v1::CAUTION_RAW_FLOUR:
      return "raw flour";
    case v1::CAUTION_RAW_EGG:
      return "raw egg";
    case v1::CAUTION_HOT_OVEN:
      return "hot oven";
    case v1::CAUTION_HOT_STEAM:
      return "hot steam";
    case v1::CAUTION_RAW_MEAT:
      return "raw meat or fish";
    case v1::CAUTION_CORE_TEMPERATURE:
      return "measure the core";
    case v1::CAUTION_ROOM_TEMPERATURE_LIMIT:
      return "not long at room temperature";
    case v1::CAUTION_THAW_IN_FRIDGE:
      return "thaw in the fridge";
    case v1::CAUTION_COOL_QUICKLY:
      return "cool quickly";
    case v1::CAUTION_ALLERGEN_CONTACT:
      return "allergen, keep it apart";
    case v1::CAUTION_HOT_FAT:
      return "hot fat";
    case v1::CAUTION_REHEAT_THROUGH:
      return "reheat right through";
    default:
      return "take care";
  }
}

std::string cautionSentence(v1::Caution caution) {
  switch (caution) {
    case v1::CAUTION_RAW_FLOUR:
      return "Don't taste raw dough or batter, and wash your hands and the bench after handling flour.";
    case v1::CAUTION_RAW_EGG:
      return "Keep raw egg cold until it is used, don't taste it, and wash what it touched.";
    case v1::CAUTION_HOT_OVEN:
      return "Use dry oven gloves, and say so before you open the oven.";
    case v1::CAUTION_HOT_STEAM:
      return "Stand back when steam comes out: it burns before you see it.";
    case v1::CAUTION_RAW_MEAT:
      return "Keep it away from food that is ready to eat, and wash hands, board and knife before anything "
             "else.";
    case v1::CAUTION_CORE_TEMPERATURE:
      return "The clock doesn't prove that it is done: put a thermometer into the thickest part.";
    case v1::CAUTION_ROOM_TEMPERATURE_LIMIT:
      return "Don't leave it standing out longer than the plan says; put it back in the fridge when in "
             "doubt.";
    case v1::CAUTION_THAW_IN_FRIDGE:
      return "Thaw it in the fridge on a tray, not on the counter.";
    case v1::CAUTION_COOL_QUICKLY:
      return "Spread it in shallow dishes so that it gets cold fast, then put it in the fridge.";
    case v1::CAUTION_ALLERGEN_CONTACT:
      return "A guest must not have what is in this: use clean boards, knives and pans, and keep it apart.";
    case v1::CAUTION_HOT_FAT:
      return "Stay with it, and never put water on burning fat: cover it.";
    case v1::CAUTION_REHEAT_THROUGH:
      return "Heat it until it steams in the middle, once, and don't keep it after.";
    default:
      return "Read the recipe's own caution.";
  }
}

std::string safetyLimitWords(v1::SafetyLimitKind kind) {
  switch (kind) {
    case v1::SAFETY_LIMIT_KIND_END_TEMPERATURE:
      return "for the heat in its middle";
    case v1::SAFETY_LIMIT_KIND_REST:
      return "for its rest";
    case v1::SAFETY_LIMIT_KIND_ROOM_TIME:
      return "for the time out of fridge and heat";
    case v1::SAFETY_LIMIT_KIND_HOT_HOLD:
      return "for keeping it hot";
    case v1::SAFETY_LIMIT_KIND_COLD_HOLD:
      return "for keeping it cold";
    case v1::SAFETY_LIMIT_KIND_THAW:
      return "for thawing";
    case v1::SAFETY_LIMIT_KIND_THAWED:
      return "for the time from thawed to cooking";
    case v1::SAFETY_LIMIT_KIND_RAW_FRIDGE:
    case v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE:
      return "for the time in the fridge";
    case v1::SAFETY_LIMIT_KIND_FIRST_COOLING:
    case v1::SAFETY_LIMIT_KIND_COOLING:
      return "for cooling";
    case v1::SAFETY_LIMIT_KIND_REHEAT:
      return "for reheating";
    case v1::SAFETY_LIMIT_KIND_ROASTING_OVEN:
      return "for the heat of its oven";
    default:
      return "";
  }
}

std::string safetyLimitNamed(const std::string& thingId) {
  v1::SafetyLimitKind kind = v1::SAFETY_LIMIT_KIND_UNSPECIFIED;
  v1::SafetyLimitKind_Parse(thingId, &kind);
  const std::string which = safetyLimitWords(kind);
  return which.empty() ? "a food-safety limit" : absl::StrCat("the food-safety limit ", which);
}

std::string impossibleWords(v1::Cause cause) {
  switch (cause) {
    case v1::CAUSE_READINESS:
      return "its dough is never ready at an hour that fits";
    case v1::CAUSE_OVEN_FULL:
    case v1::CAUSE_OVEN_SETPOINT:
      return "no oven is large and hot enough for it";
    case v1::CAUSE_THING_BUSY:
      return "the kitchen has too little of something that it needs";
    case v1::CAUSE_COOK_BUSY:
    case v1::CAUSE_COOK_AWAY:
      return "no cook who can do it is there and awake long enough";
    case v1::CAUSE_FOOD_SAFETY:
      return "a food-safety limit leaves its steps too little time";
    case v1::CAUSE_KEPT_APART:
      return "it cannot be kept apart from what a guest may not have even traces of";
    case v1::CAUSE_PINNED:
      return "a time that somebody fixed by hand leaves no room";
    case v1::CAUSE_SERVING:
    case v1::CAUSE_FOLLOWS:
    case v1::CAUSE_MUST_FOLLOW:
      return "its steps take longer than there is time before it is served";
    default:
      return "";
  }
}

std::string mayFitWords() {
  return "may fit: try it with the cold pans first";
}

std::string roleWords(int role) {
  switch (role) {
    case v1::ROLE_READER:
      return "reader";
    case v1::ROLE_COOK:
      return "cook";
    case v1::ROLE_HOST:
      return "host";
    default:
      return "member";
  }
}

std::string safetyNotice() {
  return "Your local food-safety code and licensed practice come before this plan. Ask every guest about "
         "allergies "
         "and read the labels: the plan knows only what it was told.";
}

}  // namespace suppertide::terminal
