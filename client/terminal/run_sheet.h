// The plan by day and time: who does what, where, how far it may slip and why then.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

struct RunSheetOptions {
  std::string cookId;         // only this cook's steps; empty: everyone's and those that need nobody
  bool instructions = false;  // the recipe's own words below each step
};

// From about 100 columns a table, below that a block a step.
std::string runSheetText(const PlanView& view, const RunSheetOptions& options);

// Why a step is neither earlier nor later, in few words without a full stop; may be empty.
std::string reasonText(const PlanView& view, const v1::PlannedStep& step);

}  // namespace suppertide::terminal
