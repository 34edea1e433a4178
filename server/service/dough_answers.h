// Doughs outside any plan: forecasts, ways to have one ready, formulas worked out.
//
// The requests must be without violations (validate_doughs.h). Pure: no clock, no documents.
#pragma once

#include <functional>

#include "absl/status/statusor.h"
#include "suppertide/v1/bread_service.pb.h"

namespace suppertide::compose {

// Asked now and then; true ends the work with CANCELLED.
using StopAsked = std::function<bool()>;

// A bulk or proof is of a dough whose levain, fed as asked (the formula's first ratio where it
// isn't said), and whose preferments were used at their best at the dough's temperature; a proof is of one
// that was shaped at the best moment of its bulk. Never ready in these places: no window, no error.
// About a millisecond.
absl::StatusOr<v1::ForecastDoughResponse> forecastDough(const v1::ForecastDoughRequest& request,
                                                        const StopAsked& stop = nullptr);

// Up to about a second. No way: `nearest`, or neither where nothing comes near.
absl::StatusOr<v1::FitDoughResponse> fitDough(const v1::FitDoughRequest& request,
                                              const StopAsked& stop = nullptr);

// The edits one after the other, then the amount. InvalidArgument, naming the edit's line and why, when
// one makes no formula of it.
absl::StatusOr<v1::WorkOutDoughResponse> workOutDough(const v1::WorkOutDoughRequest& request,
                                                      const StopAsked& stop = nullptr);

// The table of published checks.
v1::CheckModelResponse checkModel();

}  // namespace suppertide::compose
