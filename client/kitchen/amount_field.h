// An ingredient's amount: a number in one of several measures, or none.
#pragma once

#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/kitchen/draft.h"

namespace suppertide {

class AmountField : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY changed REQUIRED FINAL)
  // "ingredients[2]".
  Q_PROPERTY(QString path MEMBER path_ NOTIFY changed REQUIRED FINAL)
  // To taste, g, ml, pieces. Changing it keeps the number.
  Q_PROPERTY(int unit READ unit WRITE setUnit NOTIFY changed FINAL)
  Q_PROPERTY(double number READ number WRITE setNumber NOTIFY changed FINAL)
  Q_PROPERTY(QString problem READ problem NOTIFY changed FINAL)
 public:
  using QObject::QObject;
  enum Unit { ToTaste, Grams, Millilitres, Pieces };

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  int unit() const;
  void setUnit(int unit);
  double number() const;
  void setNumber(double number);
  QString problem() const;

 Q_SIGNALS:
  void changed();

 private:
  QPointer<Draft> draft_;
  QString path_;
};

}  // namespace suppertide
