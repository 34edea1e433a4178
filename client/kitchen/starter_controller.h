// A starter's feeding in words, and what observations taught of it.
#pragma once

#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/kitchen/draft.h"

namespace suppertide {

class StarterController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY changed REQUIRED FINAL)
  // "Sat 20:00"; empty: never, as far as is known.
  Q_PROPERTY(QString lastFed READ lastFed NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> learned READ learned NOTIFY changed FINAL)
 public:
  using QObject::QObject;

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  QString lastFed() const;
  QStringList learned() const;

  Q_INVOKABLE void fedAgo(int minutes);
  // Than is noted.
  Q_INVOKABLE void fedEarlier(int minutes);

 Q_SIGNALS:
  void changed();

 private:
  const v1::Starter* starter() const;
  void setFed(std::int64_t seconds);

  QPointer<Draft> draft_;
};

}  // namespace suppertide
