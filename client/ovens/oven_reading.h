// The ovens of a plan: what each does at a moment, and its day as lines on a chart.
#pragma once

#include <QtCore/qdatetime.h>
#include <QtCore/qlist.h>
#include <QtCore/qpoint.h>

#include <optional>
#include <string>
#include <vector>

#include "client/words/plan_view.h"

namespace suppertide {

// What the charts of all ovens span: [start, limit) to the right, from 0 to `top` degrees Celsius.
struct HeatAxis {
  Instant start{};
  Instant limit{};
  double top = 250;

  double x(Instant time) const;
  Instant at(double x) const;  // to five minutes
  double y(double celsius) const;
};

// A local day on which some oven is in use, and the stretch of it.
struct OvenDay {
  QDate date;
  Instant start{};
  Instant limit{};
};

// One dish in an oven at a moment.
struct RackDish {
  const v1::PlannedStep* step = nullptr;
  std::vector<int> positions;  // 1 is the lowest; empty: left to the cook
  bool mayFit = false;         // whether all that is in this oven has a place is not sure
};

struct OvenAt {
  const v1::OvenSegment* segment = nullptr;  // null: off
  std::optional<double> celsius;             // estimated
  std::vector<RackDish> dishes;
};

// By date. A use over midnight counts to the day it begins on.
std::vector<OvenDay> ovenDays(const PlanView& view);
// The axis of one day, a little wider than its uses, for every oven alike.
HeatAxis heatAxis(const PlanView& view, const OvenDay& day);

OvenAt ovenAt(const PlanView& view, const v1::OvenProgram& program, Instant time);
// The estimated temperature in stretches: a line breaks where the oven is off and cold.
std::vector<QList<QPointF>> temperatureLines(const v1::OvenProgram& program, const HeatAxis& axis);
// When anything changes in any oven: segments begin or end, dishes go in or come out. By time, each once.
std::vector<Instant> ovenChanges(const PlanView& view);
// How many rack positions it has; where the kitchen does not say, the highest that the plan uses.
int rackCount(const PlanView& view, const v1::OvenProgram& program);

}  // namespace suppertide
