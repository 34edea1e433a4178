// Which key moves the view how: the keyboard's twin of every gesture.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include "client/timeline/timeline.h"

namespace suppertide {

class TimelineKeys : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Timeline* timeline MEMBER timeline_ NOTIFY timelineChanged REQUIRED)
 public:
  explicit TimelineKeys(QObject* parent = nullptr) : QObject(parent) {}

  // With a step chosen, Control with left and right moves it by five minutes (with Shift by half an
  // hour), Return asks what that would mean, Control with Return makes it so, Escape leaves it.
  // Else plus and minus zoom, 0 fits all, left and right pan (with Shift a long way),
  // the page keys turn a page, Home goes to now, End to the serving, Escape closes
  // the details. False when the key is none of these.
  Q_INVOKABLE bool press(int key, int modifiers);

 Q_SIGNALS:
  void timelineChanged();

 private:
  bool pressMove(int key, int modifiers);

  Timeline* timeline_ = nullptr;
};

}  // namespace suppertide
