// What the window costs: start, frames while a crowded timeline scrolls and zooms, another's change, memory.
//
// Without a display: offscreen and painted in software, so a frame's painting is dearer than on a
// graphics card. What the targets are about, models and geometry, is told apart from it.
#include <google/protobuf/util/json_util.h>

#include <QtCore/qcommandlineparser.h>
#include <QtCore/qelapsedtimer.h>
#include <QtCore/qeventloop.h>
#include <QtCore/qfile.h>
#include <QtCore/qlocale.h>
#include <QtCore/qprocess.h>
#include <QtCore/qtemporarydir.h>
#include <QtGui/qguiapplication.h>
#include <QtQml/qqmlcomponent.h>
#include <QtQml/qqmlengine.h>
#include <QtQuick/qquickitem.h>
#include <QtQuick/qquickrendercontrol.h>
#include <QtQuick/qquickrendertarget.h>
#include <QtQuick/qquickwindow.h>

#include <sys/resource.h>
#include <time.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <memory>
#include <thread>
#include <utility>
#include <vector>

#include "client/link/replica_file.h"
#include "client/link/request_id.h"
#include "client/link/session.h"
#include "client/shell/window_app.h"
#include "server/base/clock.h"
#include "server/embedded.h"
#include "server/storage/store.h"
#include "tests/bench/cpu_time.h"
#include "tests/bench/window_bench/crowded.h"

namespace suppertide::bench {
namespace {

constexpr int kBars = 1000;
constexpr int kStarts = 5;
constexpr int kChanges = 20;
constexpr QSize kSize{1280, 800};

double kilobytes(const char* field) {
  QFile file(QStringLiteral("/proc/self/status"));
  if (!file.open(QIODevice::ReadOnly)) return 0;
  for (const QByteArray& line : file.readAll().split('\n'))
    if (line.startsWith(field)) return line.simplified().split(' ').value(1).toDouble();
  return 0;
}

// Of this thread's own work: what else the machine does does not count.
double threadMilliseconds() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

// Of all programs started from here that have ended.
double childrenMilliseconds() {
  rusage use{};
  getrusage(RUSAGE_CHILDREN, &use);
  const auto of = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
  };
  return of(use.ru_utime) + of(use.ru_stime);
}

struct Times {
  std::vector<double> milliseconds;
  double at(double part) {
    std::sort(milliseconds.begin(), milliseconds.end());
    return milliseconds[static_cast<std::size_t>(part * static_cast<double>(milliseconds.size() - 1))];
  }
};

// Milliseconds of this thread's processor time, by what they are for.
struct Frame {
  double models = 0;    // the timeline's rows and every binding that follows them or the scale
  double polish = 0;    // items laid out once before they are drawn
  double geometry = 0;  // the scene graph's nodes brought up to date
  double painting = 0;  // of them in software
  double update() const { return models + polish + geometry; }
};

void print(const char* what, Times& times, double target) {
  std::printf("%-46s %7.2f %7.2f %7.2f   %s\n", what, times.at(0.5), times.at(0.95), times.at(1),
              target <= 0               ? ""
              : times.at(0.95) < target ? "met"
                                        : "MISSED");
}

struct FrameTimes {
  void add(const Frame& frame) {
    update.milliseconds.push_back(frame.update());
    models.milliseconds.push_back(frame.models);
    polish.milliseconds.push_back(frame.polish);
    geometry.milliseconds.push_back(frame.geometry);
    painting.milliseconds.push_back(frame.painting);
  }
  void print(const char* what, double target) {
    bench::print(what, update, target);
    bench::print("  of it models and bindings", models, 0);
    bench::print("  of it polishing", polish, 0);
    bench::print("  of it geometry of the scene", geometry, 0);
    bench::print("  beside it, painting in software", painting, 0);
  }
  Times update, models, polish, geometry, painting;
};

// A timeline view in a window that is drawn when we say so, each part of a frame timed.
class Stage {
 public:
  explicit Stage(int bars) : image_(kSize, QImage::Format_ARGB32_Premultiplied) {
    household_ = crowdedHousehold(bars);
    window_ = std::make_unique<QQuickWindow>(&control_);
    engine_.addImportPath(QStringLiteral("qrc:/qt/qml"));
    timeline_.show(household_, kCrowdedEvent);
    QQmlComponent component(&engine_);
    component.setData("import QtQuick\nimport Suppertide.Timeline\nTimelineView { id: view }", QUrl());
    std::unique_ptr<QObject> object(component.createWithInitialProperties(
        {{QStringLiteral("timeline"), QVariant::fromValue(&timeline_)}}));
    if (object == nullptr) {
      std::fprintf(stderr, "%s\n", qPrintable(component.errorString()));
      std::exit(1);
    }
    view_.reset(qobject_cast<QQuickItem*>(object.release()));
    view_->setParentItem(window_->contentItem());
    view_->setSize(kSize);
    window_->resize(kSize);
    control_.initialize();
    window_->setRenderTarget(QQuickRenderTarget::fromPaintDevice(&image_));
    timeline_.fitAll();
    for (int i = 0; i < 3; ++i) frame([] {});
  }
  ~Stage() { view_.reset(); }

  // The four parts of a frame, one after the other.
  Frame frame(const std::function<void()>& change) {
    Frame frame;
    auto timed = [before = threadMilliseconds()]() mutable {
      const double begin = std::exchange(before, threadMilliseconds());
      return before - begin;
    };
    change();
    QCoreApplication::processEvents();
    frame.models = timed();
    control_.polishItems();
    frame.polish = timed();
    control_.sync();
    frame.geometry = timed();
    control_.render();
    frame.painting = timed();
    return frame;
  }
  Timeline& timeline() { return timeline_; }
  const link::Replica& household() const { return *household_; }

 private:
  std::shared_ptr<const link::Replica> household_;
  Timeline timeline_;
  QImage image_;
  QQuickRenderControl control_;
  std::unique_ptr<QQuickWindow> window_;
  QQmlEngine engine_;
  std::unique_ptr<QQuickItem> view_;
};

void measureFrames(int bars, int frames) {
  Stage stage(bars);
  std::printf(
      "\n%d bars, %dx%d                                    median     95%%     most   (ms of CPU a frame)\n",
      bars, kSize.width(), kSize.height());
  const auto run = [&](const char* what, const std::function<void(int)>& step) {
    FrameTimes times;
    for (int i = 0; i < frames; ++i) times.add(stage.frame([&] { step(i); }));
    times.print(what, 8);
  };
  Timeline& timeline = stage.timeline();
  const auto across = [&](int i) { timeline.panBy(i / 50 % 2 == 0 ? 12 : -12); };
  run("scrolling, the whole plan in view", across);
  timeline.showServing();
  run("scrolling, at a kitchen's closeness", across);
  timeline.fitAll();
  run("zooming in and out", [&](int i) { timeline.zoomBy(i / 40 % 2 == 0 ? 1.06 : 1 / 1.06, 640); });
  timeline.fitAll();
  std::vector<std::shared_ptr<const link::Replica>> plans;
  for (int i = 0; i < 30; ++i) plans.push_back(withStepLater(stage.household(), (bars / 2 + i) % bars));
  FrameTimes times;
  for (const auto& plan : plans) times.add(stage.frame([&] { timeline.show(plan, kCrowdedEvent); }));
  times.print("another's change, told to this screen", 100);
}

// In a process of its own: from its start to the first frame that has bars, of a household kept in `folder`
// whose server is away.
int child(const QString& folder) {
  WindowOptions options;
  options.scheme = WindowOptions::Scheme::kLight;
  options.size = kSize;
  options.store = folder.toStdString();
  options.link.target = "unix:" + (options.store / "none.sock").string();
  WindowApp app(options);
  if (app.window() == nullptr || !app.timeline().hasPlan()) return 1;
  QObject::connect(app.window(), &QQuickWindow::frameSwapped, qApp, [] {
    std::printf("frame %.0f %.0f\n", kilobytes("VmRSS:"), kilobytes("VmHWM:"));
    std::fflush(stdout);
    QCoreApplication::quit();
  });
  return QGuiApplication::exec();
}

void measureStart(int bars) {
  Times times;
  double memory = 0;
  const double before = childrenMilliseconds();
  const QTemporaryDir folder;
  const std::filesystem::path kept = folder.path().toStdString();
  if (!link::saveReplica(kept / "replica", *crowdedHousehold(bars)).ok()) return;
  for (int i = 0; i < kStarts; ++i) {
    QElapsedTimer timer;
    timer.start();
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--child"), folder.path()});
    process.waitForReadyRead(30'000);
    times.milliseconds.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    const QList<QByteArray> words = process.readAllStandardOutput().simplified().split(' ');
    memory = std::max(memory, words.value(2).toDouble() / 1024);
    process.waitForFinished(30'000);
  }
  std::printf("\nstart to the first frame, %4d bars stored          %7.0f %7.0f %7.0f ms (target 1000): %s\n",
              bars, times.at(0.5), times.at(0.95), times.at(1), times.at(0.5) < 1000 ? "met" : "MISSED");
  std::printf("  of it CPU, all threads, to the end                %7.0f ms a start\n",
              (childrenMilliseconds() - before) / kStarts);
  std::printf("most memory until then                              %7.0f MB (target 250): %s\n", memory,
              memory < 250 ? "met" : "MISSED");
}

[[noreturn]] void giveUp(const absl::Status& status) {
  std::fprintf(stderr, "%s\n", std::string(status.message()).c_str());
  std::exit(1);
}

template <class Answer>
Answer must(absl::StatusOr<Answer> answer) {
  if (!answer.ok()) giveUp(answer.status());
  return *std::move(answer);
}

v1::Bundle readBundle(const QString& path) {
  QFile file(path);
  v1::Bundle bundle;
  if (!file.open(QIODevice::ReadOnly)) giveUp(absl::NotFoundError(path.toStdString()));
  const auto status = google::protobuf::util::JsonStringToMessage(file.readAll().toStdString(), &bundle);
  if (!status.ok()) giveUp(absl::DataLossError(std::string(status.message())));
  return bundle;
}

// The feast on a server of its own; with a crowded plan in place of one of its own, when `bars` is given.
class Home {
 public:
  explicit Home(int bars) : feast_(readBundle(QStringLiteral(SUPPERTIDE_DEMO))) {
    options_.dataFile = bars == 0 ? std::string() : folder_.filePath(QStringLiteral("data")).toStdString();
    server_ = must(EmbeddedServer::start(options_));
    found();
    if (bars == 0) {
      plan();
      return;
    }
    server_.reset();
    store(crowdedPlan(bars));
    server_ = must(EmbeddedServer::start(options_));
  }
  link::LinkOptions link() const {
    link::LinkOptions link;
    link.target = server_->target();
    link.householdId = householdId_;
    link.deviceToken = token_;
    return link;
  }
  const std::string& eventId() const { return feast_.events(0).id(); }
  std::unique_ptr<link::Session> session() const {
    return std::make_unique<link::Session>(
        link::SessionOptions{.target = server_->target(), .deviceToken = token_, .certificatePem = ""});
  }

 private:
  void found() {
    v1::CreateHouseholdRequest found;
    found.set_host_code(server_->hostCode());
    *found.mutable_household() = feast_.household();
    found.mutable_household()->clear_id();
    found.set_member_id(feast_.household().members(0).id());
    found.set_device_name("bench");
    found.set_request_id(link::newRequestId());
    const auto made = must(session()->createHousehold(found));
    householdId_ = made.household().id();
    token_ = made.device_token();
    v1::ImportBundleRequest import;
    import.set_household_id(householdId_);
    *import.mutable_bundle() = feast_;
    import.set_request_id(link::newRequestId());
    must(session()->importBundle(import));
  }
  void plan() {
    v1::MakePlanRequest plan;
    plan.set_household_id(householdId_);
    plan.set_event_id(eventId());
    plan.mutable_time_limit()->set_seconds(5);
    plan.set_request_id(link::newRequestId());
    must(session()->makePlan(plan, nullptr));
  }
  // Of this household's cooks, dishes and ovens.
  v1::Plan crowdedPlan(int bars) const {
    v1::Plan plan = crowdedHousehold(bars)->plans.at(kCrowdedEvent);
    plan.set_id(eventId());
    const auto which = [](const std::string& id, int count) { return std::atoi(id.data() + 4) % count; };
    const v1::Event& event = feast_.events(0);
    const v1::Kitchen& kitchen = feast_.kitchens(0);
    const auto dish = [&](const std::string& id) {
      return event.dishes(which(id, event.dishes_size())).id();
    };
    const auto oven = [&](const std::string& id) {
      return kitchen.ovens(id == "large" ? 0 : kitchen.ovens_size() - 1).id();
    };
    for (v1::PlannedStep& step : *plan.mutable_steps()) {
      step.set_dish_id(dish(step.dish_id()));
      if (!step.oven_id().empty()) step.set_oven_id(oven(step.oven_id()));
      if (step.cook_member_id().empty()) continue;
      step.set_cook_member_id(event.cooks(which(step.cook_member_id(), event.cooks_size())).member_id());
    }
    for (v1::DoughForecast& dough : *plan.mutable_doughs()) dough.set_dish_id(dish(dough.dish_id()));
    for (v1::OvenProgram& program : *plan.mutable_oven_programs())
      program.set_oven_id(oven(program.oven_id()));
    return plan;
  }
  // Beside the server, which would not take a plan that breaks its rules.
  void store(const v1::Plan& plan) const {
    const SystemClock clock;
    const auto store = must(storage::Store::open(options_.dataFile, {}, clock));
    storage::WriteRequest write;
    write.householdId = householdId_;
    write.memberId = feast_.household().members(0).id();
    storage::Put put;
    put.key = {"plan", plan.id()};
    put.bytes = plan.SerializeAsString();
    write.puts.push_back(std::move(put));
    must(store->write(write));
  }

  v1::Bundle feast_;
  QTemporaryDir folder_;
  EmbeddedServer::Options options_;
  std::unique_ptr<EmbeddedServer> server_;
  std::string householdId_, token_;
};

// From the moment at which another device sends a change to the frame of a window that shows it, through a
// real server. `bars`: of a crowded plan; 0: as the feast is planned.
void measureRemoteChange(int bars) {
  const Home home(bars);
  const auto other = home.session();
  WindowOptions options;
  options.scheme = WindowOptions::Scheme::kLight;
  options.size = kSize;
  options.eventId = home.eventId();
  options.link = home.link();
  WindowApp app(options);
  QEventLoop shown;
  app.whenShown([&] { shown.quit(); });
  shown.exec();
  Times times;
  const CpuWatch work;
  for (int i = 0; i < kChanges; ++i) {
    v1::UpdateEventRequest request;
    *request.mutable_event() = app.session().view()->event();
    request.mutable_event()->set_display_name("Feast no. " + std::to_string(i));
    request.set_household_id(options.link.householdId);
    request.set_request_id(link::newRequestId());
    QEventLoop seen;
    QElapsedTimer timer;
    const auto frame = QObject::connect(app.window(), &QQuickWindow::frameSwapped, &seen, [&] {
      if (app.timeline().title() == QStringLiteral("Feast no. %1").arg(i)) seen.quit();
    });
    timer.start();
    std::thread sender([&] {
      if (const absl::Status status = other->write(request); !status.ok()) giveUp(status);
    });
    seen.exec();
    times.milliseconds.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    QObject::disconnect(frame);
    sender.join();
  }
  std::printf("\n%d steps in the plan\n", app.session().view()->plan()->steps_size());
  print("sent elsewhere to its frame here, real server", times, 100);
  std::printf("  of it CPU, server and painting in it               %7.1f ms a change\n",
              work.seconds() * 1e3 / kChanges);
}

}  // namespace
}  // namespace suppertide::bench

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_QUICK_BACKEND", "software");
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
  QGuiApplication application(argc, argv);
  const QStringList arguments = QCoreApplication::arguments();
  if (arguments.value(1) == QStringLiteral("--child")) return suppertide::bench::child(arguments.value(2));
  const QString only = arguments.value(1);  // "start", "frames", "change"; empty: all
  constexpr int kFrames = 300;
  const int frames = arguments.size() > 2 ? arguments[2].toInt() : kFrames;
  const auto wanted = [&](const char* what) { return only.isEmpty() || only == QLatin1String(what); };
  for (const int bars : {40, 200, suppertide::bench::kBars}) {
    if (wanted("start") && bars != 40) suppertide::bench::measureStart(bars);
    if (wanted("frames")) suppertide::bench::measureFrames(bars, frames);
  }
  for (const int bars : {0, 200, suppertide::bench::kBars})
    if (wanted("change")) suppertide::bench::measureRemoteChange(bars);
  return 0;
}
