#include "client/shell/window_app.h"

#include <QtCore/qcoreapplication.h>
#include <QtGui/qguiapplication.h>
#include <QtGui/qpalette.h>
#include <QtQml/qqmlextensionplugin.h>

#include <memory>

Q_IMPORT_QML_PLUGIN(Suppertide_UiPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_TimelinePlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_ShellPlugin)

namespace suppertide {
namespace {

constexpr int kTickMs = 1000;
constexpr int kPatienceMs = 15'000;

SessionController::Clock clockOf(const WindowOptions& options) {
  if (options.at) return [at = *options.at] { return at; };
  return [] { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); };
}

bool isDark(WindowOptions::Scheme scheme) {
  if (scheme != WindowOptions::Scheme::kSystem) return scheme == WindowOptions::Scheme::kDark;
  return QGuiApplication::palette().color(QPalette::Window).lightness() < 128;
}

}  // namespace

WindowApp::WindowApp(const WindowOptions& options, QObject* parent)
    : QObject(parent), options_(options), session_(clockOf(options)) {
  engine_.addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine_.setInitialProperties({{QStringLiteral("session"), QVariant::fromValue(&session_)},
                                {QStringLiteral("dark"), isDark(options.scheme)},
                                {QStringLiteral("mirrored"), QGuiApplication::isRightToLeft()},
                                {QStringLiteral("width"), options.size.width()},
                                {QStringLiteral("height"), options.size.height()}});
  engine_.load(QUrl(QStringLiteral("qrc:/qt/qml/Suppertide/Shell/Main.qml")));
  connect(session_.timeline(), &Timeline::pictureChanged, this, &WindowApp::place);
  connect(&ticks_, &QTimer::timeout, &session_, &SessionController::tick);
  ticks_.start(kTickMs);
  session_.start(options.link, options.eventId);
}

WindowApp::~WindowApp() = default;

QQuickWindow* WindowApp::window() const {
  return engine_.rootObjects().isEmpty() ? nullptr
                                         : qobject_cast<QQuickWindow*>(engine_.rootObjects().first());
}

// Once, when the first plan is there.
void WindowApp::place() {
  Timeline& timeline = *session_.timeline();
  if (!timeline.hasPlan()) return;
  disconnect(&timeline, &Timeline::pictureChanged, this, &WindowApp::place);
  if (options_.view == WindowOptions::View::kAll) timeline.fitAll();
  if (options_.view == WindowOptions::View::kNow) timeline.showNow();
  if (options_.view == WindowOptions::View::kServing) timeline.showServing();
  if (!options_.step.isEmpty()) timeline.choose(options_.step);
}

bool WindowApp::settled() const {
  return session_.state() == SessionController::Live || session_.state() == SessionController::Refused;
}

void WindowApp::whenShown(std::function<void()> done) {
  auto* patience = new QTimer(this);
  patience->setSingleShot(true);
  const auto finish = [this, patience, done = std::move(done)] {
    session_.disconnect(patience);
    patience->deleteLater();
    done();
  };
  connect(patience, &QTimer::timeout, this, finish);
  connect(&session_, &SessionController::stateChanged, patience, [this, patience] {
    if (settled()) patience->start(0);
  });
  patience->start(settled() ? 0 : kPatienceMs);
}

QImage WindowApp::picture() {
  // The first grab lays out what came in; what that makes new is in the second.
  window()->grabWindow();
  QCoreApplication::processEvents();
  return window()->grabWindow();
}

}  // namespace suppertide
