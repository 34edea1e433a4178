#include "client/shell/window_app.h"

#include <QtCore/qcoreapplication.h>
#include <QtGui/qguiapplication.h>
#include <QtGui/qpalette.h>
#include <QtQml/qqmlextensionplugin.h>

#include <memory>

Q_IMPORT_QML_PLUGIN(Suppertide_UiPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_WordsPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_SessionPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_TimelinePlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_ShellPlugin)

namespace suppertide {
namespace {

constexpr int kTickMs = 1000;
constexpr int kPatienceMs = 15'000;

HouseholdSession::Clock clockOf(const WindowOptions& options) {
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
                                {QStringLiteral("timeline"), QVariant::fromValue(&timeline_)},
                                {QStringLiteral("screen"), options.screen},
                                {QStringLiteral("dark"), isDark(options.scheme)},
                                {QStringLiteral("mirrored"), QGuiApplication::isRightToLeft()},
                                {QStringLiteral("width"), options.size.width()},
                                {QStringLiteral("height"), options.size.height()}});
  engine_.load(QUrl(QStringLiteral("qrc:/qt/qml/Suppertide/Shell/Main.qml")));
  connect(&timeline_, &Timeline::pictureChanged, this, &WindowApp::place);
  connect(&session_, &HouseholdSession::householdChanged, this, &WindowApp::showEvent);
  connect(&session_, &HouseholdSession::eventIdChanged, this, &WindowApp::showEvent);
  connect(&session_, &HouseholdSession::nowChanged, this, [this] { timeline_.setNow(session_.now()); });
  timeline_.setNow(session_.now());
  connect(&ticks_, &QTimer::timeout, &session_, &HouseholdSession::tick);
  ticks_.start(kTickMs);
  session_.start(options.link, options.eventId);
}

WindowApp::~WindowApp() = default;

QQuickWindow* WindowApp::window() const {
  return engine_.rootObjects().isEmpty() ? nullptr
                                         : qobject_cast<QQuickWindow*>(engine_.rootObjects().first());
}

void WindowApp::showEvent() {
  if (session_.replica() == nullptr) return;
  timeline_.show(session_.replica(), session_.eventId().toStdString(), session_.changedBy());
}

// Once, when the first plan is there.
void WindowApp::place() {
  if (!timeline_.hasPlan()) return;
  disconnect(&timeline_, &Timeline::pictureChanged, this, &WindowApp::place);
  if (options_.view == WindowOptions::View::kAll) timeline_.fitAll();
  if (options_.view == WindowOptions::View::kNow) timeline_.showNow();
  if (options_.view == WindowOptions::View::kServing) timeline_.showServing();
  if (!options_.step.isEmpty()) timeline_.choose(options_.step);
}

bool WindowApp::settled() const {
  return session_.state() == HouseholdSession::Live || session_.state() == HouseholdSession::Refused;
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
  connect(&session_, &HouseholdSession::stateChanged, patience, [this, patience] {
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
