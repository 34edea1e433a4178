// What can be chosen in the editors, in words.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qstringlist.h>
#include <QtQml/qqmlregistration.h>

namespace suppertide {

// Lists for controls, in the order of their enumerations: the index is the value less what is said.
class KitchenChoices : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QList<QString> stepKinds READ stepKinds CONSTANT FINAL)              // value - 1
  Q_PROPERTY(QList<int> stepSymbols READ stepSymbols CONSTANT FINAL)              // value - 1
  Q_PROPERTY(QList<QString> placeKinds READ placeKinds CONSTANT FINAL)            // value - 1
  Q_PROPERTY(QList<QString> safetyClasses READ safetyClasses CONSTANT FINAL)      // value
  Q_PROPERTY(QList<QString> foodClasses READ foodClasses CONSTANT FINAL)          // value
  Q_PROPERTY(QList<QString> holdings READ holdings CONSTANT FINAL)                // value - 1
  Q_PROPERTY(QList<QString> conditions READ conditions CONSTANT FINAL)            // value - 1
  Q_PROPERTY(QList<QString> thawWays READ thawWays CONSTANT FINAL)                // value - 1
  Q_PROPERTY(QList<QString> doughClasses READ doughClasses CONSTANT FINAL)        // value - 1
  Q_PROPERTY(QList<QString> formulaRoles READ formulaRoles CONSTANT FINAL)        // value - 1
  Q_PROPERTY(QList<QString> fermentStages READ fermentStages CONSTANT FINAL)      // value - 1
  Q_PROPERTY(QList<QString> prefermentKinds READ prefermentKinds CONSTANT FINAL)  // value - 1
  Q_PROPERTY(QList<QString> amountUnits READ amountUnits CONSTANT FINAL)          // to taste, g, ml, pieces
 public:
  using QObject::QObject;

  static QStringList stepKinds();
  static QList<int> stepSymbols();
  static QStringList placeKinds();
  static QStringList safetyClasses();
  static QStringList foodClasses();
  static QStringList holdings();
  static QStringList conditions();
  static QStringList thawWays();
  static QStringList doughClasses();
  static QStringList formulaRoles();
  static QStringList fermentStages();
  static QStringList prefermentKinds();
  static QStringList amountUnits();
  // A top-level field of a document: "Steps".
  Q_INVOKABLE static QString fieldName(const QString& field);
};

}  // namespace suppertide
