// The window with everything behind it: session, timeline, QML, clock.
#pragma once

#include <QtCore/qtimer.h>
#include <QtCore/qtranslator.h>
#include <QtQml/qqmlapplicationengine.h>
#include <QtQuick/qquickwindow.h>

#include <future>
#include <memory>

#include "client/household/household_controller.h"
#include "client/planning/planning.h"
#include "client/session/chime.h"
#include "client/session/household_session.h"
#include "client/session/notifier.h"
#include "client/session/preferences.h"
#include "client/session/reminders.h"
#include "client/shell/first_run.h"
#include "client/shell/options.h"
#include "client/timeline/timeline.h"
#include "client/translations/languages.h"

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
  Planning& planning() { return planning_; }
  Preferences& preferences() { return preferences_; }
  HouseholdController& household() { return household_; }
  FirstRun& firstRun() { return firstRun_; }
  Reminders& reminders() { return reminders_; }

  // Calls `done` once the window shows what it can: the plan, or that there is
  // none, or after 15 seconds that there is no connection.
  void whenShown(std::function<void()> done);
  // The window as it stands, every pending layout done.
  QImage picture();

  // Follows the desktop's change between light and dark.
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  using Server = std::unique_ptr<EmbeddedServer>;

  void showEvent();
  void showPreview();
  void place();
  void openDocument();
  bool settled() const;
  void begin();
  void serveHere();
  void letOthersIn(bool in);
  // Any thread.
  Server restart(link::KnownServer known);
  void keepKnown(const link::KnownServer& known);
  void afterJoining();
  void planTheSample();
  void leave();
  void speak();

  WindowOptions options_;
  Preferences preferences_;
  Languages languages_;
  // Of a household on this computer alone; outlives the session, so that what
  // is being sent arrives.
  std::future<Server> starting_;
  Server server_;
  HouseholdSession session_;
  FirstRun firstRun_;
  HouseholdController household_;
  Notifier notifier_;
  Chime chime_;
  Reminders reminders_;
  Timeline timeline_;
  Planning planning_;
  QTimer ticks_;
  QQmlApplicationEngine engine_;  // goes before what it shows
};

}  // namespace suppertide
