// The QML tests of quick/: components in a window without a display.
#include <QtCore/qlocale.h>
#include <QtQml/qqmlengine.h>
#include <QtQml/qqmlextensionplugin.h>
#include <QtQuickTest/quicktest.h>

#include "client/planning/plan_difference.h"
#include "tests/window/kitchen_sample.h"
#include "tests/window/quick_sample.h"
#include "tests/window/sample.h"

namespace suppertide {

SampleTimeline::SampleTimeline(QObject* parent) : Timeline(parent) {
  setNow(Instant(std::chrono::seconds(testing::secondsAt("2026-06-20T15:20:00+01:00"))));
  show(testing::sampleReplica(), testing::kSampleEvent);
}

void SampleTimeline::moveStep(const QString& stepId, int minutes) {
  show(testing::sampleWithStepLater(stepId.toStdString(), minutes), testing::kSampleEvent);
}

SampleSession::SampleSession(QObject* parent)
    : SampleSession(
          std::make_shared<Instant>(std::chrono::seconds(testing::secondsAt("2026-06-20T15:20:00+01:00"))),
          parent) {}

SampleSession::SampleSession(std::shared_ptr<Instant> now, QObject* parent)
    : HouseholdSession([now] { return *now; }, parent), now_(std::move(now)) {
  adopt(testing::sampleReplica());
  setMemberId("ines");
}

void SampleSession::setClock(const QString& rfc3339) {
  *now_ = Instant(std::chrono::seconds(testing::secondsAt(rfc3339.toStdString())));
  tick();
}

KitchenSession::KitchenSession(QObject* parent)
    : HouseholdSession([] { return testing::sampleNow(); }, parent) {
  adopt(std::make_shared<link::Replica>(testing::sampleWithSteps()));
  setMemberId("ines");
}

SamplePlanning::SamplePlanning(QObject* parent)
    : QObject(parent),
      session_([] { return Instant(std::chrono::seconds(testing::secondsAt("2026-06-20T15:20:00+01:00"))); }),
      planning_(session_) {
  session_.setMemberId("ines");
  session_.adopt(testing::sampleReplica());
  timeline_.setNow(session_.now());
  timeline_.show(session_.replica(), testing::kSampleEvent);
  connect(&planning_, &Planning::previewChanged, this,
          [this] { timeline_.preview(planning_.preview(), planning_.comparing()); });
}

void SamplePlanning::answer() {
  WhatIf& whatIf = *planning_.whatIf();
  v1::MakePlanResponse answer;
  *answer.mutable_plan() =
      testing::sampleWithStepLater(whatIf.stepId().toStdString(), 5)->plans.at(testing::kSampleEvent);
  *answer.mutable_plan()->mutable_moved_steps() =
      movedBetween(session_.replica()->plans.at(testing::kSampleEvent), answer.plan());
  whatIf.take(whatIf.number(), answer);
}

void SamplePlanning::clash() {
  planning_.remedies()->begin();
  v1::FindRemediesResponse found;
  v1::Clash& clash = *found.add_clashes();
  for (const char* dish : {"chicken", "gratin"}) {
    v1::Wish& wish = *clash.add_wishes();
    wish.set_kind(v1::WISH_KIND_SERVED);
    wish.set_dish_id(dish);
    *wish.mutable_time() = session_.view()->event().courses(1).serving_time();
  }
  found.set_number(1);
  found.mutable_remedy()->set_kind(v1::REMEDY_KIND_LATER_COURSE);
  found.mutable_remedy()->set_course_id("main");
  found.mutable_remedy()->mutable_duration()->set_seconds(1200);
  *found.mutable_event() = session_.view()->event();
  *found.mutable_plan() = testing::sampleWithStepLater("rolls/shape", 20)->plans.at(testing::kSampleEvent);
  planning_.remedies()->take(found);
}

class Setup : public QObject {
  Q_OBJECT
 public Q_SLOTS:
  void applicationAvailable() { QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom)); }
  void qmlEngineAvailable(QQmlEngine* engine) {
    engine->addImportPath(QStringLiteral("qrc:/qt/qml"));
    qmlRegisterType<SampleTimeline>("Sample", 1, 0, "SampleTimeline");
    qmlRegisterType<SampleSession>("Sample", 1, 0, "SampleSession");
    qmlRegisterType<KitchenSession>("Sample", 1, 0, "KitchenSession");
    qmlRegisterType<SamplePlanning>("Sample", 1, 0, "SamplePlanning");
  }
};

}  // namespace suppertide

using suppertide::Setup;
QUICK_TEST_MAIN_WITH_SETUP(window, Setup)

#include "quick_main.moc"
