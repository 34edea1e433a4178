// What was reported of a plan's steps, for looking back.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "server/compose/planner.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/progress.pb.h"

namespace suppertide::compose {

// What was reported of a step.
struct Told {
  std::optional<std::int64_t> start;
  std::optional<std::int64_t> end;
  bool skipped = false;
  std::string member;
};

// By "dish/step".
std::map<std::string, Told> toldOf(const v1::Progress& progress);

// As planned before the first report.
const google::protobuf::Timestamp& firstStart(const v1::PlannedStep& step);
const google::protobuf::Timestamp& firstEnd(const v1::PlannedStep& step);

google::protobuf::Timestamp stampOf(std::int64_t seconds);

// The recipe that a dish of the event is made by; null for none.
const v1::Recipe* recipeOf(const Documents& documents, const std::string& dishId);

}  // namespace suppertide::compose
