#include "client/shell/window_app.h"

#include <QtCore/qcoreapplication.h>
#include <QtGui/qguiapplication.h>
#include <QtGui/qpalette.h>
#include <QtQml/qqmlextensionplugin.h>

#include <chrono>
#include <memory>
#include <system_error>

#include "absl/strings/str_cat.h"
#include "client/kitchen/kitchen_desk.h"
#include "client/link/private_file.h"
#include "client/link/request_id.h"

Q_IMPORT_QML_PLUGIN(Suppertide_UiPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_WordsPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_SessionPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_KitchenPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_ShoppingPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_PlanningPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_TimelinePlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_EventPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_OvensPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_DoughsPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_TasksPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_HouseholdPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_PrintingPlugin)
Q_IMPORT_QML_PLUGIN(Suppertide_ShellPlugin)

namespace suppertide {
namespace {

constexpr int kTickMs = 1000;
constexpr int kPatienceMs = 15'000;
constexpr int kStillMs = 150;
constexpr int kStillTurns = 3;
constexpr int kSamplePlanSeconds = 20;

HouseholdSession::Clock clockOf(const WindowOptions& options) {
  if (options.at) return [at = *options.at] { return at; };
  return [] { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); };
}

FirstRun::Places places() {
  return {.credentials = link::credentialsPath(),
          .data = link::ownFolder("XDG_DATA_HOME", ".local/share") / "here"};
}

bool isDarkDesktop() {
  return QGuiApplication::palette().color(QPalette::Window).lightness() < 128;
}

}  // namespace

WindowApp::WindowApp(const WindowOptions& options, QObject* parent)
    : QObject(parent),
      options_(options),
      preferences_(options.settings),
      session_(clockOf(options)),
      firstRun_(places(), clockOf(options)),
      household_(&session_),
      reminders_(session_, notifier_),
      planning_(session_) {
  speak();
  if (options.scheme == WindowOptions::Scheme::kLight) preferences_.setForNow(Preferences::Light);
  if (options.scheme == WindowOptions::Scheme::kDark) preferences_.setForNow(Preferences::Dark);
  firstRun_.setOpen(options.firstRun);
  engine_.addImportPath(QStringLiteral("qrc:/qt/qml"));
  engine_.setInitialProperties({{QStringLiteral("session"), QVariant::fromValue(&session_)},
                                {QStringLiteral("timeline"), QVariant::fromValue(&timeline_)},
                                {QStringLiteral("planning"), QVariant::fromValue(&planning_)},
                                {QStringLiteral("firstRun"), QVariant::fromValue(&firstRun_)},
                                {QStringLiteral("household"), QVariant::fromValue(&household_)},
                                {QStringLiteral("preferences"), QVariant::fromValue(&preferences_)},
                                {QStringLiteral("notifier"), QVariant::fromValue(&notifier_)},
                                {QStringLiteral("reminders"), QVariant::fromValue(&reminders_)},
                                {QStringLiteral("screen"), options.screen},
                                {QStringLiteral("darkDesktop"), isDarkDesktop()},
                                {QStringLiteral("mirrored"), QGuiApplication::isRightToLeft()},
                                {QStringLiteral("width"), options.size.width()},
                                {QStringLiteral("height"), options.size.height()}});
  engine_.load(QUrl(QStringLiteral("qrc:/qt/qml/Suppertide/Shell/Main.qml")));
  connect(&timeline_, &Timeline::pictureChanged, this, &WindowApp::place);
  connect(&timeline_, &Timeline::scaleChanged, this, &WindowApp::place);
  connect(&session_, &HouseholdSession::householdChanged, this, &WindowApp::showEvent);
  connect(&session_, &HouseholdSession::eventIdChanged, this, &WindowApp::showEvent);
  // After the household itself is shown, so that nothing flickers where a
  // preview becomes the plan.
  connect(&planning_, &Planning::previewChanged, this, &WindowApp::showPreview, Qt::QueuedConnection);
  connect(&session_, &HouseholdSession::nowChanged, this, [this] { timeline_.setNow(session_.now()); });
  timeline_.setNow(session_.now());
  connect(&ticks_, &QTimer::timeout, &session_, &HouseholdSession::tick);
  connect(&ticks_, &QTimer::timeout, this, &WindowApp::openDocument);
  ticks_.start(kTickMs);
  connect(&firstRun_, &FirstRun::joined, this, &WindowApp::afterJoining);
  connect(&household_, &HouseholdController::left, this, &WindowApp::leave);
  connect(&household_, &HouseholdController::othersWanted, this, &WindowApp::letOthersIn);
  connect(&notifier_, &Notifier::ringsHere, &chime_, &Chime::ring);
  const auto units = [this] {
    session_.setUnits(preferences_.temperatureUnit(), preferences_.measureSystem());
  };
  const auto sound = [this] { notifier_.setSound(preferences_.sound()); };
  units();
  sound();
  connect(&preferences_, &Preferences::unitsChanged, this, units);
  connect(&preferences_, &Preferences::changed, this, sound);
  connect(&preferences_, &Preferences::languageChanged, this, [this] {
    options_.language.clear();
    speak();
    engine_.retranslate();
    session_.tellAnew();
  });
  qGuiApp->installEventFilter(this);
  if (!options.firstRun) begin();
}

bool WindowApp::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ApplicationPaletteChange && window() != nullptr)
    window()->setProperty("darkDesktop", isDarkDesktop());
  return QObject::eventFilter(watched, event);
}

WindowApp::~WindowApp() {
  // It may still have something to say to the session.
  if (starting_.valid()) server_ = starting_.get();
}

void WindowApp::speak() {
  const QString& forNow = options_.language;
  const QString language = forNow.isEmpty() ? preferences_.language() : forNow;
  if (!forNow.isEmpty()) return languages_.use(language, Preferences::localeOf(forNow));
  // Without a person whose preferences they are, the program's own locale
  // stays.
  languages_.use(language,
                 options_.settings.isEmpty() && language.isEmpty() ? QLocale() : preferences_.locale());
}

void WindowApp::begin() {
  session_.setMemberId(options_.known.memberId);
  household_.setKnown(options_.known);
  if (!options_.known.dataFile.empty() && server_ == nullptr) serveHere();
  session_.start(options_.link, options_.eventId, options_.store);
  reminders_.start(options_.link, options_.store);
}

// Beside the thread of the user interface: the link comes as soon as the server
// is there.
void WindowApp::serveHere() {
  starting_ = std::async(std::launch::async, [this, known = options_.known]() mutable -> Server {
    auto server = serve(known);
    if (server.ok()) return *std::move(server);
    if (!known.network.empty()) return restart(known);
    session_.post([this, why = QString::fromStdString(std::string(server.status().message()))] {
      Q_EMIT session_.failed(tr("This computer's household can't be served: %1").arg(why));
    });
    return nullptr;
  });
}

// The household's server is started anew, beside the thread of the user
// interface; the link finds it again.
void WindowApp::letOthersIn(bool in) {
  if (starting_.valid()) server_ = starting_.get();
  if (server_ == nullptr) {
    Q_EMIT session_.failed(tr("Another window on this computer serves this household. Do it there."));
    household_.setKnown(options_.known);
    return;
  }
  link::KnownServer known = options_.known;
  known.network = in ? options_.network : std::string();
  starting_ = std::async(std::launch::async, [this, known, running = std::move(server_)]() mutable -> Server {
    running.reset();
    return restart(known);
  });
}

// Where it can't be open to others as wanted, it is served for this computer
// alone.
WindowApp::Server WindowApp::restart(link::KnownServer known) {
  auto server = serve(known);
  if (!server.ok() && !known.network.empty()) {
    // The usual port is taken: any other is as good, and kept from then on.
    link::KnownServer other = known;
    other.network = known.network.substr(0, known.network.rfind(':')) + ":0";
    server = serve(other);
  }
  QString why;
  if (!server.ok()) {
    why = QString::fromStdString(std::string(server.status().message()));
    known.network.clear();
    server = serve(known);
  }
  if (server.ok() && *server != nullptr && !known.network.empty())
    known.network =
        absl::StrCat(known.network.substr(0, known.network.rfind(':')), ":", (*server)->networkPort());
  session_.post([this, known, why] {
    keepKnown(known);
    if (!why.isEmpty()) Q_EMIT session_.failed(tr("Others can't be let in: %1").arg(why));
  });
  return server.ok() ? *std::move(server) : nullptr;
}

void WindowApp::keepKnown(const link::KnownServer& known) {
  options_.known = known;
  household_.setKnown(known);
  auto saved = link::loadCredentials(link::credentialsPath());
  absl::Status status = saved.status();
  if (saved.ok()) {
    saved->put(known);
    status = link::saveCredentials(link::credentialsPath(), *saved);
  }
  if (!status.ok()) Q_EMIT session_.failed(QString::fromStdString(std::string(status.message())));
}

void WindowApp::afterJoining() {
  server_ = firstRun_.takeServer();
  const bool sample = server_ != nullptr;
  useSaved(firstRun_.known(), options_);
  options_.eventId.clear();
  begin();
  if (sample) planTheSample();
}

void WindowApp::planTheSample() {
  connect(
      &session_, &HouseholdSession::householdChanged, this,
      [this] {
        v1::MakePlanRequest request;
        request.set_household_id(options_.link.householdId);
        request.set_event_id(session_.eventId().toStdString());
        request.mutable_time_limit()->set_seconds(kSamplePlanSeconds);
        request.set_request_id(link::newRequestId());
        session_.ask<v1::MakePlanResponse>(
            this, [request](link::Session& server) { return server.makePlan(request, nullptr); },
            [this](absl::StatusOr<v1::MakePlanResponse> answer) {
              if (!answer.ok())
                Q_EMIT session_.failed(QString::fromStdString(std::string(answer.status().message())));
            });
      },
      Qt::SingleShotConnection);
}

void WindowApp::leave() {
  reminders_.stop();
  session_.stop();
  if (starting_.valid()) server_ = starting_.get();
  server_.reset();
  auto saved = link::loadCredentials(link::credentialsPath());
  absl::Status status = saved.status();
  if (saved.ok() && !options_.known.name.empty()) {
    saved->remove(options_.known.name);
    status = link::saveCredentials(link::credentialsPath(), *saved);
  }
  if (status.ok() && !options_.store.empty()) {
    std::error_code error;
    std::filesystem::remove_all(options_.store, error);
  }
  options_.known = {};
  options_.link = {};
  options_.store.clear();
  if (!status.ok()) Q_EMIT session_.failed(QString::fromStdString(std::string(status.message())));
  firstRun_.setOpen(true);
}

QQuickWindow* WindowApp::window() const {
  return engine_.rootObjects().isEmpty() ? nullptr
                                         : qobject_cast<QQuickWindow*>(engine_.rootObjects().first());
}

void WindowApp::showEvent() {
  if (session_.replica() == nullptr) return;
  timeline_.show(session_.replica(), session_.eventId().toStdString(), session_.changedBy());
}

// Once, when its page and it are there.
void WindowApp::openDocument() {
  if (options_.document.isEmpty() || window() == nullptr) return;
  auto* desk = window()->findChild<KitchenDesk*>();
  if (desk != nullptr && desk->find(options_.document)) options_.document.clear();
}

void WindowApp::showPreview() {
  timeline_.preview(planning_.preview(), planning_.comparing());
}

// Once, when the first plan is there and the view is laid out.
void WindowApp::place() {
  if (!timeline_.hasPlan() || timeline_.viewWidth() <= 0) return;
  disconnect(&timeline_, nullptr, this, nullptr);
  if (options_.view == WindowOptions::View::kAll) timeline_.fitAll();
  if (options_.view == WindowOptions::View::kNow) timeline_.showNow();
  if (options_.view == WindowOptions::View::kServing) timeline_.showServing();
  if (!options_.step.isEmpty()) timeline_.choose(options_.step);
}

bool WindowApp::settled() const {
  if (firstRun_.isOpen() || session_.state() == HouseholdSession::Refused) return true;
  return session_.state() == HouseholdSession::Live && session_.asking() == 0 && options_.document.isEmpty();
}

void WindowApp::whenShown(std::function<void()> done) {
  // What a page asks the server for is asked soon after it is shown, and
  // answered in several turns.
  auto* look = new QTimer(this);
  look->start(kStillMs);
  connect(look, &QTimer::timeout, this,
          [this, look, done = std::move(done), still = 0, waited = 0]() mutable {
            waited += kStillMs;
            still = settled() ? still + 1 : 0;
            if (still < kStillTurns && waited < kPatienceMs) return;
            look->deleteLater();
            look->stop();
            done();
          });
}

QImage WindowApp::picture() {
  // The first grab lays out what came in; what that makes new is in the second.
  window()->grabWindow();
  QCoreApplication::processEvents();
  return window()->grabWindow();
}

}  // namespace suppertide
