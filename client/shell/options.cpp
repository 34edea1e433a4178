#include "client/shell/options.h"

#include <QtCore/qcommandlineparser.h>
#include <QtCore/qcoreapplication.h>
#include <QtCore/qdatetime.h>
#include <QtCore/qfile.h>

#include "client/link/credentials.h"
#include "client/link/private_file.h"

namespace suppertide {
namespace {

constexpr int kMistake = 2;
constexpr int kUnusable = 1;
constexpr int kLeastSide = 200;
constexpr int kMostSide = 8192;

struct Words {
  Q_DECLARE_TR_FUNCTIONS(suppertide::Options)
 public:
  QCommandLineOption server{QStringLiteral("server"),
                            tr("Server to connect to: a saved server's name, HOST:PORT or unix:/PATH. "
                               "Without it: the saved server used last."),
                            QStringLiteral("target")};
  QCommandLineOption household{QStringLiteral("household"), tr("Id of the household, with a target."),
                               QStringLiteral("id")};
  QCommandLineOption tokenFile{QStringLiteral("token-file"),
                               tr("File that holds this device's token, with a target."),
                               QStringLiteral("file")};
  QCommandLineOption certificate{QStringLiteral("certificate"),
                                 tr("File with the certificate to trust for this server."),
                                 QStringLiteral("file")};
  QCommandLineOption event{QStringLiteral("event"), tr("Id of the event to show. Without it: the nearest."),
                           QStringLiteral("id")};
  QCommandLineOption theme{QStringLiteral("theme"), tr("light or dark. Without it: as the system."),
                           QStringLiteral("name")};
  QCommandLineOption language{
      QStringLiteral("language"),
      tr("en or de, for this time. Without it: as chosen under Household, or the system's."),
      QStringLiteral("name")};
  QCommandLineOption size{QStringLiteral("size"), tr("Size of the window, 1280x800 by default."),
                          QStringLiteral("WxH")};
  QCommandLineOption view{QStringLiteral("view"), tr("Where to look first: all, now or serving."),
                          QStringLiteral("place")};
  QCommandLineOption screen{QStringLiteral("screen"), tr("Screen to begin with, timeline by default."),
                            QStringLiteral("name")};
  QCommandLineOption step{QStringLiteral("step"), tr("Open the details of this step (dish/step)."),
                          QStringLiteral("id")};
  QCommandLineOption document{QStringLiteral("open"),
                              tr("Id of a recipe, kitchen or starter to open; with --screen kitchen."),
                              QStringLiteral("id")};
  QCommandLineOption at{QStringLiteral("at"),
                        tr("Show this time as now, in place of the clock's: 2026-06-20T14:05:00+01:00."),
                        QStringLiteral("time")};
  QCommandLineOption screenshot{
      QStringLiteral("screenshot"),
      tr("Write a picture of the window to this PNG file and exit; needs no display."),
      QStringLiteral("file")};

  QString credentialsNote() const {
    return tr(
        "Shows a household's shared timeline, live. The household joined last is used by itself; without one "
        "the window asks.");
  }
};

ParsedOptions failed(int exitCode, const QString& text) {
  ParsedOptions parsed;
  parsed.exitCode = exitCode;
  parsed.text = text + QLatin1Char('\n');
  return parsed;
}

std::optional<std::string> fileText(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
  return file.readAll().trimmed().toStdString();
}

std::optional<QSize> sizeOf(const QString& text) {
  const QStringList parts = text.split(QLatin1Char('x'));
  if (parts.size() != 2) return std::nullopt;
  const QSize size(parts[0].toInt(), parts[1].toInt());
  const auto fits = [](int side) { return side >= kLeastSide && side <= kMostSide; };
  return fits(size.width()) && fits(size.height()) ? std::optional(size) : std::nullopt;
}

// The words that need nothing but themselves. Empty text: all well.
QString readView(const QCommandLineParser& parser, const Words& words, WindowOptions& options) {
  const QString theme = parser.value(words.theme);
  if (!theme.isEmpty() && theme != QLatin1String("light") && theme != QLatin1String("dark"))
    return Words::tr("--theme %1: light or dark is wanted.").arg(theme);
  if (!theme.isEmpty())
    options.scheme =
        theme == QLatin1String("dark") ? WindowOptions::Scheme::kDark : WindowOptions::Scheme::kLight;
  options.language = parser.value(words.language);
  if (!options.language.isEmpty() && options.language != QLatin1String("en") &&
      options.language != QLatin1String("de"))
    return Words::tr("--language %1: en or de is wanted.").arg(options.language);
  const QString view = parser.value(words.view);
  if (view == QLatin1String("all")) options.view = WindowOptions::View::kAll;
  if (view == QLatin1String("now")) options.view = WindowOptions::View::kNow;
  if (view == QLatin1String("serving")) options.view = WindowOptions::View::kServing;
  if (!view.isEmpty() && options.view == WindowOptions::View::kFirst)
    return Words::tr("--view %1: all, now or serving is wanted.").arg(view);
  if (parser.isSet(words.size)) {
    const auto size = sizeOf(parser.value(words.size));
    if (!size)
      return Words::tr("--size %1: a size such as 1280x800 is wanted.").arg(parser.value(words.size));
    options.size = *size;
  }
  if (parser.isSet(words.at)) {
    const QDateTime at = QDateTime::fromString(parser.value(words.at), Qt::ISODate);
    if (!at.isValid())
      return Words::tr("--at %1: a time such as 2026-06-20T14:05:00+01:00 is wanted.")
          .arg(parser.value(words.at));
    options.at = Instant(std::chrono::seconds(at.toSecsSinceEpoch()));
  }
  if (parser.isSet(words.screen)) options.screen = parser.value(words.screen);
  options.step = parser.value(words.step);
  options.document = parser.value(words.document);
  options.screenshot = parser.value(words.screenshot);
  options.eventId = parser.value(words.event).toStdString();
  return {};
}

// A target with household and token, said in full.
ParsedOptions readTarget(const QCommandLineParser& parser, const Words& words, WindowOptions options) {
  if (!parser.isSet(words.household))
    return failed(kMistake, Words::tr("--token-file: --server and --household are wanted with it."));
  options.link.target = parser.value(words.server).toStdString();
  options.link.householdId = parser.value(words.household).toStdString();
  const auto token = fileText(parser.value(words.tokenFile));
  if (!token)
    return failed(kUnusable, Words::tr("--token-file: can't read %1").arg(parser.value(words.tokenFile)));
  options.link.deviceToken = *token;
  if (parser.isSet(words.certificate)) {
    const auto certificate = fileText(parser.value(words.certificate));
    if (!certificate)
      return failed(kUnusable,
                    Words::tr("--certificate: can't read %1").arg(parser.value(words.certificate)));
    options.link.certificatePem = *certificate;
  }
  ParsedOptions parsed;
  parsed.options = std::move(options);
  return parsed;
}

ParsedOptions readSaved(const QString& name, WindowOptions options) {
  const auto saved = link::loadCredentials(link::credentialsPath());
  if (!saved.ok()) return failed(kUnusable, QString::fromStdString(std::string(saved.status().message())));
  const link::KnownServer* server = saved->find(name.toStdString());
  if (server == nullptr && !name.isEmpty())
    return failed(kUnusable, Words::tr("No server is saved under the name %1.").arg(name));
  if (server == nullptr) {
    ParsedOptions parsed;
    parsed.options = std::move(options);
    parsed.options.firstRun = true;
    return parsed;
  }
  useSaved(*server, options);
  ParsedOptions parsed;
  parsed.options = std::move(options);
  return parsed;
}

}  // namespace

void useSaved(const link::KnownServer& server, WindowOptions& options) {
  options.known = server;
  options.store = link::householdFolder(server.householdId);
  options.link.target = server.target;
  options.link.householdId = server.householdId;
  options.link.deviceToken = server.deviceToken;
  options.link.certificatePem = server.certificatePem;
  options.link.fingerprint = server.fingerprint;
}

ParsedOptions parseOptions(const QStringList& arguments) {
  const Words words;
  QCommandLineParser parser;
  parser.setApplicationDescription(words.credentialsNote());
  const QCommandLineOption help = parser.addHelpOption();
  const QCommandLineOption version = parser.addVersionOption();
  parser.addOptions({words.server, words.household, words.tokenFile, words.certificate, words.event,
                     words.view, words.screen, words.step, words.document, words.theme, words.language,
                     words.size, words.at, words.screenshot});
  if (!parser.parse(arguments)) return failed(kMistake, parser.errorText());
  if (parser.isSet(help)) return failed(0, parser.helpText().trimmed());
  if (parser.isSet(version)) {
    return failed(0, QStringLiteral("%1 %2").arg(QCoreApplication::applicationName(),
                                                 QCoreApplication::applicationVersion()));
  }
  if (!parser.positionalArguments().isEmpty())
    return failed(kMistake,
                  Words::tr("%1: not an option (see --help)").arg(parser.positionalArguments().first()));
  WindowOptions options;
  options.settings =
      QString::fromStdString((link::ownFolder("XDG_CONFIG_HOME", ".config") / "window.ini").string());
  const QString mistake = readView(parser, words, options);
  if (!mistake.isEmpty()) return failed(kMistake, mistake);
  if (parser.isSet(words.tokenFile)) return readTarget(parser, words, std::move(options));
  return readSaved(parser.value(words.server), std::move(options));
}

}  // namespace suppertide
