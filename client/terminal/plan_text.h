// A whole plan as text, or the parts of it that were asked for.
#pragma once

#include <string>

#include "client/terminal/plan_view.h"

namespace suppertide::terminal {

struct PlanTextOptions {
  std::string cookId;         // only this cook's work
  bool instructions = false;  // the recipes' words in the run sheet
  // Only these parts; none: headline, first things, run sheet, ovens, breads, clashes, cautions.
  bool ovens = false;
  bool breads = false;
  bool clashes = false;
  bool firstActions = false;
};

std::string planText(const PlanView& view, const PlanTextOptions& options);

}  // namespace suppertide::terminal
