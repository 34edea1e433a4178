// From the documents of a household to what is drawn.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <map>
#include <set>

#include "client/timeline/picture.h"
#include "client/words/plan_view.h"
#include "client/words/step_words.h"

namespace suppertide {

// Each step of the plan stands in the lanes of its cook, its oven, the burners
// and its dough, as far as it has them; in its place's when nobody is needed; and
// in a last lane when it has none of all. Lanes without a step are left out, but
// for cooks of the event.
class PictureBuilder {
  Q_DECLARE_TR_FUNCTIONS(suppertide::PictureBuilder)
 public:
  // Minutes are counted from `base`.
  PictureBuilder(const PlanView& view, Instant base);

  Picture build();

 private:
  QString subtitle() const;
  QString leftOut() const;
  void addCourses(Picture& picture) const;
  void addCooks(Picture& picture);
  void addOvens(Picture& picture);
  void addDoughs(Picture& picture);
  void addBurnersAndPlaces(Picture& picture);
  void addRest(Picture& picture);
  void addLane(Picture& picture, Lane lane);

  StepRow row(const v1::PlannedStep& step) const;
  // The steps for which `belongs` holds, marked as drawn, by start.
  template <class Predicate>
  std::vector<StepRow> take(Predicate belongs);
  DoughRise riseOf(const v1::FermentForecast& stage) const;
  OvenCurve curveOf(const v1::OvenProgram& program) const;
  QString spokenProgram(const v1::OvenProgram& program) const;
  double minute(const google::protobuf::Timestamp& time) const {
    return minutesBetween(base_, toInstant(time));
  }

  const PlanView& view_;
  Instant base_;
  StepWords words_;
  std::set<std::string> drawn_;    // planned ids
  std::set<std::string> inDough_;  // planned ids of ferments that a dough's lane shows
};

// When the event's line of time begins: midnight two days before its first step or serving.
Instant baseFor(const PlanView& view);

}  // namespace suppertide
