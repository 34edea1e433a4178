#include "server/compose/day/told_steps.h"

#include "absl/strings/str_cat.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::compose {

std::map<std::string, Told> toldOf(const v1::Progress& progress) {
  std::map<std::string, Told> told;
  for (const v1::Report* report : standingReports(progress)) {
    const v1::Report::WhatCase what = report->what_case();
    if (what != v1::Report::kStarted && what != v1::Report::kFinished && what != v1::Report::kSkipped)
      continue;
    Told& step = told[absl::StrCat(report->dish_id(), "/", report->step_id())];
    step.member = report->member_id();
    if (what == v1::Report::kStarted) step.start = report->happen_time().seconds();
    if (what == v1::Report::kFinished) step.end = report->happen_time().seconds();
    step.skipped = what == v1::Report::kSkipped;
  }
  return told;
}

google::protobuf::Timestamp stampOf(std::int64_t seconds) {
  google::protobuf::Timestamp time;
  time.set_seconds(seconds);
  return time;
}

const google::protobuf::Timestamp& firstStart(const v1::PlannedStep& step) {
  return step.has_first_start_time() ? step.first_start_time() : step.start_time();
}
const google::protobuf::Timestamp& firstEnd(const v1::PlannedStep& step) {
  return step.has_first_end_time() ? step.first_end_time() : step.end_time();
}

const v1::Recipe* recipeOf(const Documents& documents, const std::string& dishId) {
  for (const v1::Dish& dish : documents.event.dishes())
    if (dish.id() == dishId)
      for (const v1::Recipe& recipe : documents.recipes)
        if (recipe.id() == dish.recipe_id()) return &recipe;
  return nullptr;
}

}  // namespace suppertide::compose
