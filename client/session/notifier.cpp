#include "client/session/notifier.h"

#include <QtCore/qcoreapplication.h>
#include <QtDBus/qdbusmessage.h>
#include <QtDBus/qdbuspendingcall.h>
#include <QtDBus/qdbuspendingreply.h>
#include <QtGui/qguiapplication.h>

namespace suppertide {
namespace {

const QString kService = QStringLiteral("org.freedesktop.Notifications");
const QString kPath = QStringLiteral("/org/freedesktop/Notifications");
const QString kSettle = QStringLiteral("settle");
const QString kSnooze = QStringLiteral("snooze");
constexpr int kPatienceMs = 5'000;
constexpr int kAsTheDesktopLikes = -1;

QDBusMessage callOf(const char* method) {
  return QDBusMessage::createMethodCall(kService, kPath, kService, QString::fromLatin1(method));
}

}  // namespace

Notifier::Notifier(const QDBusConnection& bus, QObject* parent) : QObject(parent), bus_(bus) {
  if (!bus_.isConnected()) return;
  bus_.connect(kService, kPath, kService, QStringLiteral("ActionInvoked"), this,
               SLOT(actionInvoked(uint, QString)));
  bus_.connect(kService, kPath, kService, QStringLiteral("NotificationClosed"), this,
               SLOT(notificationClosed(uint, uint)));
}

void Notifier::tell(const QString& id, const QString& title, const QString& text, bool rings) {
  const bool audible = rings && sound_;
  if (!bus_.isConnected()) {
    showHere(id, title, text, audible);
    return;
  }
  QVariantMap hints{{QStringLiteral("category"), QStringLiteral("x-suppertide.reminder")},
                    {QStringLiteral("desktop-entry"), QStringLiteral("suppertide-window")},
                    {QStringLiteral("suppress-sound"), !audible}};
  if (audible) hints.insert(QStringLiteral("sound-name"), QStringLiteral("message-new-instant"));
  QDBusMessage call = callOf("Notify");
  // The text may hold marks of the desktop's own: none of ours.
  call << QGuiApplication::applicationDisplayName() << numbers_.value(id, 0U) << QString() << title
       << text.toHtmlEscaped()
       << QStringList{QStringLiteral("default"), tr("Show"), kSettle, tr("Seen to"), kSnooze, tr("In 10 min")}
       << hints << kAsTheDesktopLikes;
  auto* watcher = new QDBusPendingCallWatcher(bus_.asyncCall(call, kPatienceMs), this);
  connect(watcher, &QDBusPendingCallWatcher::finished, this,
          [=, this](QDBusPendingCallWatcher* done) { answered(done, id, title, text, audible); });
}

void Notifier::answered(QDBusPendingCallWatcher* call, const QString& id, const QString& title,
                        const QString& text, bool rings) {
  const QDBusPendingReply<uint> reply = *call;
  call->deleteLater();
  if (reply.isError()) {
    showHere(id, title, text, rings);
  } else {
    numbers_.insert(id, reply.value());
  }
}

void Notifier::showHere(const QString& id, const QString& title, const QString& text, bool rings) {
  Q_EMIT shownHere(id, title, text);
  if (rings) Q_EMIT ringsHere();
}

void Notifier::takeBack(const QString& id) {
  Q_EMIT takenBackHere(id);
  const uint number = numbers_.take(id);
  if (number == 0) return;
  QDBusMessage call = callOf("CloseNotification");
  call << number;
  bus_.asyncCall(call, kPatienceMs);
}

void Notifier::actionInvoked(uint number, const QString& action) {
  const QString id = numbers_.key(number);
  if (id.isEmpty()) return;
  if (action == kSettle) return Q_EMIT settled(id);
  if (action == kSnooze) return Q_EMIT snoozed(id);
  Q_EMIT opened(id);
}

void Notifier::notificationClosed(uint number, uint) {
  const QString id = numbers_.key(number);
  if (!id.isEmpty()) numbers_.remove(id);
}

}  // namespace suppertide
