// Who can eat what, and what to look to, in words: facts of the server's check of a menu.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>

#include "client/words/plan_names.h"
#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/menu.pb.h"

namespace suppertide {

class MenuWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::MenuWords)
 public:
  // Of the event that was checked; both outlive it.
  MenuWords(const v1::Event& event, const PlanNames& names) : event_(event), names_(names) {}

  // "Gluten, not even traces"; empty where there is no need.
  static QString needs(const v1::Guest& guest);
  static QString severity(v1::NeedSeverity severity);
  QString guest(const std::string& guestId) const;

  // "Helme can't: wheat flour (gluten)"; empty where the dish suits.
  QString collision(const v1::DishForGuest& dish, const std::string& guestId) const;
  // A sentence; empty for a kind that is not known.
  QString warning(const v1::MenuWarning& warning) const;
  // Whether it is about what a guest cannot eat, not about amounts.
  static bool isGrave(const v1::MenuWarning& warning);

 private:
  QString reasons(const v1::DishForGuest& dish) const;
  QString amount(const v1::MenuWarning& warning) const;
  QString course(const std::string& courseId) const;

  const v1::Event& event_;
  const PlanNames& names_;
};

}  // namespace suppertide
