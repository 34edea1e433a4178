// A place's temperature, one for all hours or one each, the oven whose light warms it, and what doughs taught
// of it.
#pragma once

#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/kitchen/draft.h"

namespace suppertide {

class PlaceHours : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY changed REQUIRED FINAL)
  Q_PROPERTY(QString path MEMBER path_ NOTIFY changed REQUIRED FINAL)
  Q_PROPERTY(int count READ count NOTIFY changed FINAL)
  // A sentence; empty: nothing yet.
  Q_PROPERTY(QString learned READ learned NOTIFY changed FINAL)
  // The kitchen's ovens, and which is meant; -1: none.
  Q_PROPERTY(QList<QString> ovens READ ovens NOTIFY changed FINAL)
  Q_PROPERTY(int oven READ oven NOTIFY changed FINAL)
 public:
  using QObject::QObject;

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  int count() const;
  QString learned() const;
  QStringList ovens() const;
  int oven() const;

  // Into 24 hours that are all alike, or back to their mean.
  Q_INVOKABLE void spread(bool byHour);
  Q_INVOKABLE void setOven(int index);

 Q_SIGNALS:
  void changed();

 private:
  const v1::Kitchen* kitchen() const;
  const v1::Place* place() const;
  void editPlace(const std::function<void(v1::Place&)>& change);

  QPointer<Draft> draft_;
  QString path_;
};

}  // namespace suppertide
