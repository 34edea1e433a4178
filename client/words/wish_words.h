// What cannot all be had, in sentences: a clash of wishes, and a dish that was left out.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>

#include "client/words/plan_view.h"

namespace suppertide {

class WishWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::WishWords)
 public:
  // The view's plan need not be the one that told the clash.
  explicit WishWords(const PlanView& view) : view_(view) {}

  // "These cannot all be had: …". Rules that are never given up are told after it.
  QString sentence(const v1::Clash& clash) const;
  // Each wish by itself, to be listed: "Loaf at 240 °C, ready by Sat 18:00".
  QStringList wishes(const v1::Clash& clash) const;
  QStringList keptRules(const v1::Clash& clash) const;
  // "Lamb (Main) cannot be made even with the whole kitchen to itself, because …".
  QString unserved(const v1::Unserved& unserved, bool proven) const;

 private:
  QString due(const v1::Wish& wish) const;
  QString served(const v1::Wish& wish, const v1::Clash& clash) const;
  QString setpoint(const v1::Wish& wish) const;
  QString count(const v1::Wish& wish) const;
  QString hours(const v1::Wish& wish) const;
  QString pin(const v1::Wish& wish) const;
  QString other(const v1::Wish& wish) const;
  QString rule(const v1::KeptRule& rule) const;
  QString cause(v1::Cause cause) const;
  QString lost(const QString& dish, v1::Cause cause) const;

  const PlanView& view_;
};

// "the food-safety limit for cooling"; `limit` names a v1::SafetyLimitKind or is empty.
QString safetyLimitNamed(const std::string& limit);

}  // namespace suppertide
