// Plain words for the values of the wire's enums.
#pragma once

#include <string>

#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/recipe.pb.h"

namespace suppertide::terminal {

// "levain", "bulk fermentation", "proof".
std::string stageWords(v1::FermentStage stage);
// Its name, or its kind: "poolish".
std::string prefermentWords(const v1::Preferment& preferment);
// Two or three words at a step: "raw egg", "hot fat".
std::string cautionWords(v1::Caution caution);
// What to do about it, one sentence.
std::string cautionSentence(v1::Caution caution);
// What keeps a dish from being made even alone; completes "because …". May be empty.
std::string impossibleWords(v1::Cause cause);
// "for the time out of fridge and heat"; empty for what has no name.
std::string safetyLimitWords(v1::SafetyLimitKind kind);
// The same of a thing_id, "the food-safety limit for …".
std::string safetyLimitNamed(const std::string& thingId);
// "host", "cook", "reader".
std::string roleWords(int role);
// Of pans whose place in an oven was neither found nor ruled out.
std::string mayFitWords();
// Said once on every run sheet.
std::string safetyNotice();

}  // namespace suppertide::terminal
