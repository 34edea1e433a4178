// Tells a person something outside of the window, through the desktop's notification
// service (org.freedesktop.Notifications); in the window where there is none.
#pragma once

#include <QtCore/qhash.h>
#include <QtCore/qobject.h>
#include <QtDBus/qdbusconnection.h>
#include <QtQml/qqmlregistration.h>

class QDBusPendingCallWatcher;

namespace suppertide {

class Notifier : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
 public:
  explicit Notifier(const QDBusConnection& bus = QDBusConnection::sessionBus(), QObject* parent = nullptr);

  // Whether reminders may make a sound at all.
  void setSound(bool sound) { sound_ = sound; }

  // `id` names the news, so that it can be replaced or taken back: a reminder's id. `rings`: with a sound.
  // Never waits for the desktop.
  Q_INVOKABLE void tell(const QString& id, const QString& title, const QString& text, bool rings);
  // Takes it off the screen, as when it was settled on another device. Nothing happens when it is gone.
  Q_INVOKABLE void takeBack(const QString& id);

 Q_SIGNALS:
  // The desktop does not show it: the window has to.
  void shownHere(const QString& id, const QString& title, const QString& text);
  void takenBackHere(const QString& id);
  // A sound is wanted that the desktop does not make.
  void ringsHere();
  // The person answered the notification: they want to see what it is about, have seen to it, or want to be
  // told again later.
  void opened(const QString& id);
  void settled(const QString& id);
  void snoozed(const QString& id);

 private Q_SLOTS:
  void actionInvoked(uint number, const QString& action);
  void notificationClosed(uint number, uint reason);

 private:
  void answered(QDBusPendingCallWatcher* call, const QString& id, const QString& title, const QString& text,
                bool rings);
  void showHere(const QString& id, const QString& title, const QString& text, bool rings);

  QDBusConnection bus_;
  bool sound_ = true;
  QHash<QString, uint> numbers_;  // the desktop's, by id
};

}  // namespace suppertide
