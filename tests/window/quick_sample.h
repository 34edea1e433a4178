// What the QML tests show: a timeline of the sample dinner, at a fixed now.
#pragma once

#include <QtQml/qqmlregistration.h>

#include "client/timeline/timeline.h"

namespace suppertide {

class SampleTimeline : public Timeline {
  Q_OBJECT
 public:
  explicit SampleTimeline(QObject* parent = nullptr);

  // As when another client changes the plan.
  Q_INVOKABLE void moveStep(const QString& stepId, int minutes);
};

}  // namespace suppertide
