// The QML tests of quick/: components in a window without a display.
#include <QtCore/qlocale.h>
#include <QtQml/qqmlengine.h>
#include <QtQml/qqmlextensionplugin.h>
#include <QtQuickTest/quicktest.h>

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

class Setup : public QObject {
  Q_OBJECT
 public Q_SLOTS:
  void applicationAvailable() { QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom)); }
  void qmlEngineAvailable(QQmlEngine* engine) {
    engine->addImportPath(QStringLiteral("qrc:/qt/qml"));
    qmlRegisterType<SampleTimeline>("Sample", 1, 0, "SampleTimeline");
  }
};

}  // namespace suppertide

using suppertide::Setup;
QUICK_TEST_MAIN_WITH_SETUP(window, Setup)

#include "quick_main.moc"
