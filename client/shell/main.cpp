// suppertide-window: the client with a window.
#include <QtCore/qtextstream.h>
#include <QtGui/qguiapplication.h>

#include <cstdio>
#include <cstring>

#include "client/shell/window_app.h"

namespace {

// A picture needs no display; the platform must be chosen before the application is made.
void preparePlatform(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    if (std::strncmp(argv[i], "--screenshot", std::strlen("--screenshot")) != 0) continue;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
  }
}

bool wantsNoWindow(int argc, char** argv) {
  for (int i = 1; i < argc; ++i) {
    for (const char* word : {"--help", "-h", "--version", "-v", "--help-all"}) {
      if (std::strcmp(argv[i], word) == 0) return true;
    }
  }
  return false;
}

void say(std::FILE* to, const QString& text) {
  QTextStream stream(to);
  stream << text;
}

int writePicture(suppertide::WindowApp& app, const QString& file) {
  int exitCode = 0;
  app.whenShown([&] {
    if (!app.picture().save(file, "PNG")) {
      say(stderr, QStringLiteral("--screenshot: can't write %1\n").arg(file));
      exitCode = 1;
    } else if (!app.firstRun().isOpen() && app.session().state() != suppertide::HouseholdSession::Live) {
      say(stderr, QStringLiteral("%1: %2\n").arg(app.session().stateText(), app.session().why()));
      exitCode = 1;
    }
    QCoreApplication::exit(exitCode);
  });
  return QGuiApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
  preparePlatform(argc, argv);
  if (wantsNoWindow(argc, argv)) qputenv("QT_QPA_PLATFORM", "offscreen");
  QGuiApplication application(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("suppertide-window"));
  QCoreApplication::setApplicationVersion(QStringLiteral(SUPPERTIDE_VERSION));
  QGuiApplication::setApplicationDisplayName(QStringLiteral("Suppertide"));
  const suppertide::ParsedOptions parsed = suppertide::parseOptions(application.arguments());
  if (parsed.exitCode >= 0) {
    say(parsed.exitCode == 0 ? stdout : stderr, parsed.text);
    return parsed.exitCode;
  }
  suppertide::WindowApp app(parsed.options);
  if (app.window() == nullptr) return 1;
  if (!parsed.options.screenshot.isEmpty()) return writePicture(app, parsed.options.screenshot);
  return QGuiApplication::exec();
}
