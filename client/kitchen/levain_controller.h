// A formula's levain: whether there is one, and of which of the household's starters.
#pragma once

#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/kitchen/draft.h"

namespace suppertide {

class LevainController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY changed REQUIRED FINAL)
  Q_PROPERTY(bool on READ on WRITE setOn NOTIFY changed FINAL)
  Q_PROPERTY(QList<QString> starters READ starters NOTIFY changed FINAL)
  // -1: one the household does not have.
  Q_PROPERTY(int starter READ starter WRITE setStarter NOTIFY changed FINAL)
 public:
  using QObject::QObject;

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  bool on() const;
  void setOn(bool on);
  QStringList starters() const;
  int starter() const;
  void setStarter(int index);

 Q_SIGNALS:
  void changed();

 private:
  const v1::BreadFormula* formula() const;
  void editFormula(const std::function<void(v1::BreadFormula&)>& change);
  std::vector<const v1::Starter*> all() const;

  QPointer<Draft> draft_;
};

}  // namespace suppertide
