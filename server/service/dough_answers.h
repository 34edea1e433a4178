// A dough outside any plan: its forecast through places, and the ways to have it ready.
//
// The requests must be without violations (validate_doughs.h). Pure: no clock, no documents.
#pragma once

#include "absl/status/statusor.h"
#include "suppertide/v1/bread_service.pb.h"

namespace suppertide::compose {

// A bulk or proof is of a dough whose levain, fed as asked (the formula's first ratio where it
// isn't said), was used at its best at the dough's temperature; a proof is of one that was
// shaped at the best moment of its bulk. Never ready in these places: no window, no error.
// About a millisecond.
absl::StatusOr<v1::ForecastDoughResponse> forecastDough(const v1::ForecastDoughRequest& request);

// Up to about a second. No way: `nearest`, or neither where nothing comes near.
absl::StatusOr<v1::FitDoughResponse> fitDough(const v1::FitDoughRequest& request);

// The table of published checks.
v1::CheckModelResponse checkModel();

}  // namespace suppertide::compose
