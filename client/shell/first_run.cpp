#include "client/link/channel.h"
//
#include "client/shell/first_run.h"

#include <QtCore/qfile.h>

#include <utility>

#include "client/link/join_code.h"
#include "client/link/joining.h"
#include "client/shell/sample_event.h"

namespace suppertide {
namespace {

constexpr char kSample[] = ":/suppertide/feast.json";
constexpr char kUsualPort[] = ":50710";

QByteArray sampleJson() {
  QFile file(QString::fromLatin1(kSample));
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// As typed, with the usual port where none is given.
std::string targetOf(const QString& address) {
  const std::string target = address.trimmed().toStdString();
  const bool bare = target.find(':') == std::string::npos && !target.empty();
  return bare ? target + kUsualPort : target;
}

}  // namespace

FirstRun::FirstRun(Places places, std::function<Instant()> clock, QObject* parent)
    : QObject(parent), places_(std::move(places)), clock_(std::move(clock)) {
  worker_.setMaxThreadCount(1);
}

FirstRun::~FirstRun() {
  worker_.waitForDone();
}

void FirstRun::setOpen(bool open) {
  open_ = open;
  problem_.clear();
  Q_EMIT changed();
}

QString FirstRun::personName() const {
  QString name = qEnvironmentVariable("USER");
  if (name == QLatin1String("root")) name.clear();
  if (!name.isEmpty()) name[0] = name[0].toUpper();
  return name;
}

void FirstRun::stayHere(const QString& name) {
  SampleHome home;
  home.personName = name.trimmed().isEmpty() ? tr("Host").toStdString() : name.trimmed().toStdString();
  home.householdName = tr("Our kitchen").toStdString();
  home.timeZone = link::localZone();
  begin(
      [home, places = places_, now = clock_()]() -> Outcome {
        const auto bundle = sampleEvent(sampleJson(), home, now);
        if (!bundle.ok()) return bundle.status();
        return foundLocally(*bundle, places.data, places.credentials);
      },
      {}, true);
}

void FirstRun::join(const QString& address, const QString& code, const QString& name) {
  link::Joining joining;
  const auto line = link::parseJoinLink(code.toStdString());
  joining.target = line ? line->target : targetOf(address);
  joining.code = line ? line->code : code.trimmed().toStdString();
  joining.memberName = name.trimmed().toStdString();
  if (joining.code.empty())
    return fail(
        tr("Type the invitation code. Somebody who is a host of the household makes one under Household."));
  if (joining.target.empty())
    return fail(
        tr("Type the address of the household's server, such as 192.168.1.4:50710. It stands beside the "
           "invitation code."));
  const auto parsed = link::parseJoinCode(joining.code);
  const bool whole = parsed.ok() && !parsed->fingerprint.empty();
  begin(
      [joining, places = places_]() -> Outcome {
        auto known = link::join(joining, places.credentials);
        if (!known.ok()) return known.status();
        return LocalHousehold{nullptr, *std::move(known)};
      },
      QString::fromStdString(joining.target), whole);
}

void FirstRun::begin(std::function<Outcome()> work, const QString& address, bool codeIsWhole) {
  if (busy_) return;
  busy_ = true;
  problem_.clear();
  Q_EMIT changed();
  worker_.start([=, this, work = std::move(work)] {
    auto outcome = std::make_shared<Outcome>(work());
    QMetaObject::invokeMethod(
        this, [=, this] { finish(std::move(*outcome), address, codeIsWhole); }, Qt::QueuedConnection);
  });
}

void FirstRun::finish(Outcome outcome, const QString& address, bool codeIsWhole) {
  busy_ = false;
  if (!outcome.ok()) return fail(adviceFor(outcome.status(), address, codeIsWhole));
  made_ = *std::move(outcome);
  open_ = false;
  Q_EMIT changed();
  Q_EMIT joined();
}

void FirstRun::fail(const QString& problem) {
  problem_ = problem;
  Q_EMIT changed();
}

QString FirstRun::adviceFor(const absl::Status& status, const QString& address, bool codeIsWhole) {
  const QString said = QString::fromStdString(std::string(status.message()));
  switch (status.code()) {
    case absl::StatusCode::kPermissionDenied:
      return tr(
          "The server does not know this code. It may be mistyped, used already or too old: ask the host for "
          "a new one.");
    case absl::StatusCode::kResourceExhausted:
      return tr("Too many wrong codes were tried. Wait some minutes, then try again.");
    case absl::StatusCode::kUnauthenticated:
      return tr("At %1 answers another server than the one you were invited to. Check the address, and ask "
                "the "
                "host for a new invitation.")
          .arg(address);
    case absl::StatusCode::kUnavailable:
    case absl::StatusCode::kDeadlineExceeded:
      if (said.contains(QLatin1String("another certificate")))
        return adviceFor(absl::UnauthenticatedError(""), address, codeIsWhole);
      if (!codeIsWhole && !link::isLocalTarget(address.toStdString()))
        return tr("No server answers at %1 to this code. If the code has a second part, after a dot, give "
                  "that, "
                  "too. Else: is the server running, and is this device on its network?")
            .arg(address);
      return tr("No server answers at %1. Is it running, is the address right, and is this device on its "
                "network?")
          .arg(address);
    case absl::StatusCode::kInvalidArgument:
      return tr("This code cannot be right: %1.").arg(said);
    default:
      return tr("That did not work: %1. Nothing was changed; you can try again.").arg(said);
  }
}

}  // namespace suppertide
