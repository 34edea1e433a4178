#include "client/words/wish_words.h"

#include "client/words/joined.h"

namespace suppertide {

QString WishWords::due(const v1::Wish& wish) const {
  return view_.words().dayClock(toInstant(wish.time()));
}

QString WishWords::setpoint(const v1::Wish& wish) const {
  if (wish.min_celsius() == wish.max_celsius() || wish.max_celsius() == 0) return view_.dial(wish.celsius());
  return tr("%1 to %2").arg(view_.dial(wish.min_celsius()), view_.dial(wish.max_celsius()));
}

QString WishWords::served(const v1::Wish& wish, const v1::Clash& clash) const {
  QStringList bakes;
  QString kept;
  for (const v1::Wish& one : clash.wishes()) {
    if (one.dish_id() != wish.dish_id()) continue;
    if (one.kind() == v1::WISH_KIND_SETPOINT) bakes << setpoint(one);
    if (one.kind() == v1::WISH_KIND_FRESH)
      kept = tr(", kept at most %1").arg(view_.words().length(toMinutes(one.duration())));
  }
  const QString dish = view_.names().dish(wish.dish_id());
  if (bakes.isEmpty()) return tr("%1 ready by %2%3").arg(dish, due(wish), kept);
  return tr("%1 at %2, ready by %3%4").arg(dish, Joined::words(bakes), due(wish), kept);
}

QString WishWords::count(const v1::Wish& wish) const {
  const std::string& id = wish.thing_id();
  if (id == "burners")
    return wish.count() == 1 ? tr("only one burner") : tr("no more than %1 burners").arg(wish.count());
  if (view_.names().isPlace(id))
    return tr("no more than %1 l of room in %2").arg(wish.count()).arg(view_.names().place(id));
  if (wish.count() == 1) return tr("only one %1").arg(view_.names().thing(id));
  return tr("only %1 of %2").arg(wish.count()).arg(view_.names().thing(id));
}

QString WishWords::hours(const v1::Wish& wish) const {
  const QString cook = view_.names().cook(wish.thing_id());
  if (!wish.has_time()) return tr("%1 not asked outside their hours").arg(cook);
  return tr("%1 here only %2")
      .arg(cook, view_.words().span(toInstant(wish.time()), toInstant(wish.until_time())));
}

QString WishWords::pin(const v1::Wish& wish) const {
  const QString step = view_.quoted(wish.step_id());
  const QString cook = wish.thing_id().empty() ? QString() : view_.names().cook(wish.thing_id());
  if (wish.has_time() && cook.isEmpty()) return tr("%1 fixed at %2").arg(step, due(wish));
  if (wish.has_time()) return tr("%1 fixed at %2 by %3").arg(step, due(wish), cook);
  return cook.isEmpty() ? tr("%1 where it was fixed").arg(step) : tr("%1 kept to %2").arg(step, cook);
}

// Empty for what is told with its dish.
QString WishWords::other(const v1::Wish& wish) const {
  switch (wish.kind()) {
    case v1::WISH_KIND_COUNT:
      return count(wish);
    case v1::WISH_KIND_HANDS:
      return wish.count() == 1 ? tr("only one cook") : tr("no more than %1 cooks").arg(wish.count());
    case v1::WISH_KIND_HOURS:
      return hours(wish);
    case v1::WISH_KIND_PINNED:
      return pin(wish);
    default:
      return {};
  }
}

QStringList WishWords::wishes(const v1::Clash& clash) const {
  QStringList words;
  for (const v1::Wish& wish : clash.wishes()) {
    if (wish.kind() == v1::WISH_KIND_SERVED) words << served(wish, clash);
    const QString rest = other(wish);
    if (!rest.isEmpty()) words << rest;
  }
  return words;
}

QString WishWords::sentence(const v1::Clash& clash) const {
  if (clash.wishes_size() == 1 && clash.wishes(0).kind() == v1::WISH_KIND_SERVED) {
    return tr("%1 cannot be ready by %2, whatever else is given up.")
        .arg(view_.names().dish(clash.wishes(0).dish_id()), due(clash.wishes(0)));
  }
  return tr("These cannot all be had: %1.").arg(wishes(clash).join(tr("; ")));
}

QStringList WishWords::keptRules(const v1::Clash& clash) const {
  QStringList words;
  for (const v1::KeptRule& kept : clash.kept_rules()) words << rule(kept);
  return words;
}

QString WishWords::rule(const v1::KeptRule& kept) const {
  const QString dish = view_.names().dish(kept.dish_id());
  if (kept.rule() != v1::HARD_RULE_ALLERGEN)
    return tr("%1 also has %2 to keep, and that is never given up.")
        .arg(dish, safetyLimitNamed(kept.thing_id()));
  return tr("%1 must stay free of what a guest must not have and %2 holds. Both use %3, so never at once.")
      .arg(dish, view_.names().dish(kept.other_dish_id()), view_.names().thing(kept.thing_id()));
}

QString WishWords::unserved(const v1::Unserved& left, bool proven) const {
  const QString dish =
      tr("%1 (%2)").arg(view_.names().dish(left.dish_id()), view_.names().courseOfDish(left.dish_id()));
  if (!left.impossible_alone()) {
    if (const QString words = lost(dish, left.cause()); !words.isEmpty()) return words;
    return proven
               ? tr("%1 does not fit beside the other dishes.").arg(dish)
               : tr("%1 was not fitted in before the search ended; a longer one may still do it.").arg(dish);
  }
  QString words = tr("%1 cannot be made even with the whole kitchen to itself").arg(dish);
  if (!left.step_id().empty()) {
    const bool whole = left.step_id().find('/') != std::string::npos;
    const std::string step = whole ? left.step_id() : left.dish_id() + "/" + left.step_id();
    words = tr("%1: nothing works for %2").arg(words, view_.quoted(step, left.dish_id()));
  }
  const QString because = cause(left.cause());
  return because.isEmpty() ? tr("%1.").arg(words) : tr("%1, because %2.").arg(words, because);
}

// On the day: what it has lost, and what to do instead.
QString WishWords::lost(const QString& dish, v1::Cause cause) const {
  switch (cause) {
    case v1::CAUSE_FOOD_SAFETY:
      return tr("%1 cannot be served any more: it would be past a food-safety limit. Put something else in "
                "its "
                "place; what has stood out too long is thrown away.")
          .arg(dish);
    case v1::CAUSE_SERVING:
      return tr("%1 cannot be ready any more by the latest that its course allows. Let the course be later, "
                "or "
                "put something else in its place.")
          .arg(dish);
    case v1::CAUSE_MUST_FOLLOW:
      return tr("%1 has waited too long between two of its steps to get good. Put something else in its "
                "place.")
          .arg(dish);
    case v1::CAUSE_THING_BUSY:
      return tr("%1 has no oven, cook or place left that it could use. Find one, or put something else in "
                "its "
                "place.")
          .arg(dish);
    default:
      return {};
  }
}

QString WishWords::cause(v1::Cause cause) const {
  switch (cause) {
    case v1::CAUSE_READINESS:
      return tr("its dough is never ready at an hour that fits");
    case v1::CAUSE_OVEN_FULL:
    case v1::CAUSE_OVEN_SETPOINT:
      return tr("no oven is large and hot enough for it");
    case v1::CAUSE_THING_BUSY:
      return tr("the kitchen has too little of something that it needs");
    case v1::CAUSE_COOK_BUSY:
    case v1::CAUSE_COOK_AWAY:
      return tr("no cook who can do it is there and awake long enough");
    case v1::CAUSE_FOOD_SAFETY:
      return tr("a food-safety limit leaves its steps too little time");
    case v1::CAUSE_KEPT_APART:
      return tr("it cannot be kept apart from what a guest must not have even traces of");
    case v1::CAUSE_PINNED:
      return tr("a time that somebody fixed by hand leaves no room");
    case v1::CAUSE_SERVING:
    case v1::CAUSE_FOLLOWS:
    case v1::CAUSE_MUST_FOLLOW:
      return tr("its steps take longer than there is time before it is served");
    default:
      return {};
  }
}

namespace {

struct Limits {
  Q_DECLARE_TR_FUNCTIONS(suppertide::SafetyLimits)
 public:
  static QString named(v1::SafetyLimitKind kind) {
    switch (kind) {
      case v1::SAFETY_LIMIT_KIND_END_TEMPERATURE:
        return tr("the food-safety limit for the heat in its middle");
      case v1::SAFETY_LIMIT_KIND_REST:
        return tr("the food-safety limit for its rest");
      case v1::SAFETY_LIMIT_KIND_ROOM_TIME:
        return tr("the food-safety limit for the time out of fridge and heat");
      case v1::SAFETY_LIMIT_KIND_HOT_HOLD:
        return tr("the food-safety limit for keeping it hot");
      case v1::SAFETY_LIMIT_KIND_COLD_HOLD:
        return tr("the food-safety limit for keeping it cold");
      case v1::SAFETY_LIMIT_KIND_THAW:
        return tr("the food-safety limit for thawing");
      case v1::SAFETY_LIMIT_KIND_THAWED:
        return tr("the food-safety limit for the time from thawed to cooking");
      case v1::SAFETY_LIMIT_KIND_RAW_FRIDGE:
      case v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE:
        return tr("the food-safety limit for the time in the fridge");
      case v1::SAFETY_LIMIT_KIND_FIRST_COOLING:
      case v1::SAFETY_LIMIT_KIND_COOLING:
        return tr("the food-safety limit for cooling");
      case v1::SAFETY_LIMIT_KIND_REHEAT:
        return tr("the food-safety limit for reheating");
      case v1::SAFETY_LIMIT_KIND_ROASTING_OVEN:
        return tr("the food-safety limit for the heat of its oven");
      default:
        return tr("a food-safety limit");
    }
  }
};

}  // namespace

QString safetyLimitNamed(const std::string& limit) {
  v1::SafetyLimitKind kind = v1::SAFETY_LIMIT_KIND_UNSPECIFIED;
  v1::SafetyLimitKind_Parse(limit, &kind);
  return Limits::named(kind);
}

}  // namespace suppertide
