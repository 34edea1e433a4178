// What moved between two plans, why a step lies where it does, and what that costs.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::terminal {

// "follows Proof", "Large oven is taken by Roast": completes "because ...". May be empty.
std::string moveCauseText(const PlanView& view, const v1::MovedStep& moved);
// A table of old and new times with what else changed and why; empty when nothing moved.
std::string movedText(const PlanView& view, const google::protobuf::RepeatedPtrField<v1::MovedStep>& moved);
// "Large oven is at another temperature (Roast)".
std::string reasonText(const PlanView& view, const v1::Reason& reason);
// "10 min late, 12 points of quality"; "nothing" when all are 0.
std::string costsText(const v1::TierCosts& costs);
// The news of a replan: whether anything moves, what is late or not served any more, the table.
std::string replanText(const PlanView& view, const v1::MakePlanResponse& answer);
// An explained step, with its shift where one was asked for.
std::string whyText(const PlanView& view, const v1::ExplainStepResponse& answer, int shiftMinutes);

}  // namespace suppertide::terminal
