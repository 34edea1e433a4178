// What the answers about doughs read alike.
#pragma once

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "server/compose/axis.h"
#include "server/compose/bread_recipe.h"
#include "server/service/dough_answers.h"

namespace suppertide::compose {

inline absl::StatusOr<absl::TimeZone> zoneOf(const std::string& name) {
  absl::TimeZone zone;
  if (!absl::LoadTimeZone(name, &zone))
    return absl::InvalidArgumentError(absl::StrCat("time zone ", name, " is not known"));
  return zone;
}

}  // namespace suppertide::compose
