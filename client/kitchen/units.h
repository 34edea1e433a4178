// Temperatures and amounts as this household reads and types them. Documents keep °C, g and ml.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/session/household_session.h"

namespace suppertide {

QString degreesText(double celsius, bool fahrenheit);
// "250 g", "1.2 kg": bread is weighed in grams everywhere.
QString massText(double grams);
// Up to two decimals, none that is not needed.
QString numberText(double number);

class HouseholdUnits : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged
                 REQUIRED FINAL)
  Q_PROPERTY(bool fahrenheit READ fahrenheit NOTIFY unitsChanged FINAL)
  Q_PROPERTY(QString degreeUnit READ degreeUnit NOTIFY unitsChanged FINAL)
 public:
  using QObject::QObject;

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  bool fahrenheit() const;
  QString degreeUnit() const;
  Q_INVOKABLE double shown(double celsius) const;
  Q_INVOKABLE double celsius(double shown) const;

 Q_SIGNALS:
  void sessionChanged();
  void unitsChanged();

 private:
  QPointer<HouseholdSession> session_;
};

}  // namespace suppertide
