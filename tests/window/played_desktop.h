// The desktop's notification service, as far as tests need one.
#pragma once

#include <QtCore/qlist.h>
#include <QtCore/qobject.h>
#include <QtCore/qstringlist.h>
#include <QtCore/qvariant.h>

namespace suppertide::testing {

class PlayedDesktop : public QObject {
  Q_OBJECT
  Q_CLASSINFO("D-Bus Interface", "org.freedesktop.Notifications")
 public:
  struct Shown {
    uint replaces;
    QString title, text;
    QVariantMap hints;
  };
  QList<Shown> shown;
  QList<uint> closed;

 public Q_SLOTS:
  uint Notify(const QString&, uint replaces, const QString&, const QString& title, const QString& text,
              const QStringList&, const QVariantMap& hints, int) {
    shown.append({replaces, title, text, hints});
    return 1;
  }
  void CloseNotification(uint number) { closed.append(number); }

 Q_SIGNALS:
  void ActionInvoked(uint number, const QString& action);
  void NotificationClosed(uint number, uint reason);
};

}  // namespace suppertide::testing
