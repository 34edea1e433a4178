// What is wrong with reports beside what is planned and was told before, and which of them agree.
#pragma once

#include <functional>
#include <set>
#include <string>

#include "server/base/clock.h"
#include "server/compose/validate.h"
#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/progress_service.pb.h"

namespace suppertide::service {

struct ReportContext {
  const v1::Event& event;
  const v1::Plan* plan = nullptr;  // null: none yet; then only the recipes tell which steps there are
  // The ids of a recipe's steps; asked only for steps that the plan does not have.
  std::function<std::set<std::string>(const std::string& recipeId)> stepsOfRecipe;
  Instant now;
};

// How far a device's clock may run ahead.
inline constexpr std::chrono::minutes kClockAhead{2};

// Appends the reports that `progress` does not know, with what the server adds to them, and counts
// them. Violations by path from the top of the request; then nothing is to be stored.
compose::Violations appendReports(const v1::AddReportsRequest& asked, const std::string& memberId,
                                  const ReportContext& context, v1::Progress& progress, int& added);

}  // namespace suppertide::service
