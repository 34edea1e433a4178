#include "client/event/menu_words.h"

#include "client/words/amount_words.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr int kMostReasons = 3;

}  // namespace

QString MenuWords::severity(v1::NeedSeverity severity) {
  switch (severity) {
    case v1::NEED_SEVERITY_DISLIKE:
      return tr("would rather not");
    case v1::NEED_SEVERITY_NO_TRACES:
      return tr("not even traces");
    default:
      return tr("does not eat it");
  }
}

QString MenuWords::needs(const v1::Guest& guest) {
  QStringList parts;
  for (const v1::Need& need : guest.needs())
    //: A need of a guest and how strictly it is meant: "gluten: not even traces".
    parts << tr("%1: %2").arg(text(need.name()), severity(need.severity()));
  return parts.join(tr("; "));
}

QString MenuWords::guest(const std::string& guestId) const {
  for (const v1::Guest& guest : event_.guests())
    if (guest.id() == guestId) return text(guest.display_name().empty() ? guest.id() : guest.display_name());
  return text(guestId);
}

QString MenuWords::course(const std::string& courseId) const {
  for (const v1::Course& course : event_.courses())
    if (course.id() == courseId)
      return text(course.display_name().empty() ? course.id() : course.display_name());
  return text(courseId);
}

// Each ingredient once; what stands behind its comma is only how it is prepared.
QString MenuWords::reasons(const v1::DishForGuest& dish) const {
  QStringList parts;
  for (const v1::FitReason& reason : dish.reasons()) {
    if (reason.fit() != dish.fit()) continue;
    const QString ingredient = text(reason.ingredient()).section(QLatin1Char(','), 0, 0);
    const QString substance = text(reason.substance());
    const bool named = substance.isEmpty() || ingredient.contains(substance, Qt::CaseInsensitive);
    const QString part = ingredient.isEmpty() ? substance
                         : named              ? ingredient
                                              : tr("%1 (%2)").arg(ingredient, substance);
    if (!part.isEmpty() && !parts.contains(part)) parts << part;
  }
  const int more = static_cast<int>(parts.size()) - kMostReasons;
  if (more <= 0) return parts.join(tr(", "));
  return tr("%1 and %2 more").arg(parts.mid(0, kMostReasons).join(tr(", "))).arg(more);
}

QString MenuWords::collision(const v1::DishForGuest& dish, const std::string& guestId) const {
  const QString who = guest(guestId);
  const QString why = reasons(dish);
  switch (dish.fit()) {
    case v1::DISH_FIT_SUITS:
      return {};
    case v1::DISH_FIT_HOLDS:
      return why.isEmpty() ? tr("Not for %1").arg(who) : tr("Not for %1: %2").arg(who, why);
    case v1::DISH_FIT_DISLIKED:
      return why.isEmpty() ? tr("%1 would rather not").arg(who) : tr("%1 would rather not: %2").arg(who, why);
    case v1::DISH_FIT_ASK:
      return why.isEmpty() ? tr("Ask %1").arg(who) : tr("Ask %1 about %2").arg(who, why);
    default:
      return why.isEmpty() ? tr("Not known whether it suits %1").arg(who)
                           : tr("Not known whether it suits %1: read the label of %2").arg(who, why);
  }
}

bool MenuWords::isGrave(const v1::MenuWarning& warning) {
  return warning.kind() == v1::MENU_WARNING_KIND_NOTHING_TO_EAT ||
         warning.kind() == v1::MENU_WARNING_KIND_CONTENTS_UNKNOWN ||
         warning.kind() == v1::MENU_WARNING_KIND_NO_TRACES;
}

QString MenuWords::amount(const v1::MenuWarning& warning) const {
  const v1::PortionGuide& guide = warning.portion();
  const QString least = AmountWords::text(guide.least());
  const QString most = AmountWords::text(guide.most());
  const QString usual = least == most ? least : tr("%1 to %2").arg(least, most);
  const QString where = warning.dish_id().empty() ? tr("The whole menu") : names_.dish(warning.dish_id());
  const bool little = warning.kind() == v1::MENU_WARNING_KIND_TOO_LITTLE;
  return (little ? tr("%1: %2 of %3 is far less than these guests usually eat (%4).")
                 : tr("%1: %2 of %3 is far more than these guests usually eat (%4)."))
      .arg(where, AmountWords::text(guide.amount()), text(guide.name()), usual);
}

QString MenuWords::warning(const v1::MenuWarning& warning) const {
  const QString who = guest(warning.guest_id());
  const QString where = course(warning.course_id());
  switch (warning.kind()) {
    case v1::MENU_WARNING_KIND_NOTHING_TO_EAT:
      return tr("%1 has nothing to eat at “%2”.").arg(who, where);
    case v1::MENU_WARNING_KIND_CONTENTS_UNKNOWN:
      return tr("Nothing at “%2” is known to suit %1: read the labels and ask.").arg(who, where);
    case v1::MENU_WARNING_KIND_OWN_WORDS:
      return tr("“%1” of %2 was only looked for in the names of ingredients.").arg(text(warning.need()), who);
    case v1::MENU_WARNING_KIND_NO_TRACES:
      return tr("%1: not even traces of %2. Dishes free of it get clean tools and an oven of their own; the "
                "plan keeps them apart.")
          .arg(who, text(warning.need()));
    case v1::MENU_WARNING_KIND_CONTENTS_DIFFER:
      return tr("%1: %2 usually holds %3, and its recipe does not say so.")
          .arg(names_.dish(warning.dish_id()), text(warning.ingredient()), text(warning.substance()));
    case v1::MENU_WARNING_KIND_TOO_LITTLE:
    case v1::MENU_WARNING_KIND_TOO_MUCH:
      return amount(warning);
    default:
      return {};
  }
}

}  // namespace suppertide
