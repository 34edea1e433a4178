// The window with everything behind it: session, timeline, QML, clock.
#pragma once

#include <QtCore/qtimer.h>
#include <QtQml/qqmlapplicationengine.h>
#include <QtQuick/qquickwindow.h>

#include "client/session/household_session.h"
#include "client/shell/options.h"
#include "client/timeline/timeline.h"

namespace suppertide {

// Needs a QGuiApplication. Makes its window at once and connects.
class WindowApp : public QObject {
  Q_OBJECT
 public:
  explicit WindowApp(const WindowOptions& options, QObject* parent = nullptr);
  ~WindowApp() override;

  // Null when the QML could not be loaded.
  QQuickWindow* window() const;
  HouseholdSession& session() { return session_; }
  Timeline& timeline() { return timeline_; }

  // Calls `done` once the window shows what it can: the plan, or that there is
  // none, or after 15 seconds that there is no connection.
  void whenShown(std::function<void()> done);
  // The window as it stands, every pending layout done.
  QImage picture();

 private:
  void showEvent();
  void place();
  bool settled() const;

  WindowOptions options_;
  HouseholdSession session_;
  Timeline timeline_;
  QTimer ticks_;
  QQmlApplicationEngine engine_;  // goes before what it shows
};

}  // namespace suppertide
