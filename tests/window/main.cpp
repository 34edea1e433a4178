// Runs GoogleTest inside a Qt application, in one language and time zone on every machine.
#include <gtest/gtest.h>

#include <QtCore/qlocale.h>
#include <QtGui/qguiapplication.h>

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_QUICK_BACKEND", "software");
  qputenv("TZ", "UTC");
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
  QGuiApplication application(argc, argv);
  ::testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
