#include "client/words/remedy_words.h"

#include <QtCore/qlocale.h>

#include <algorithm>
#include <cmath>

#include "client/words/joined.h"

namespace suppertide {
namespace {

// Of 100: nobody needs to know what makes the others late.
constexpr int kSureEvenings = 95;
constexpr double kMillimetresInInch = 25.4;

}  // namespace

QString RemedyWords::sentence(const google::protobuf::RepeatedPtrField<v1::Remedy>& changes) const {
  QStringList parts;
  for (const v1::Remedy& what : changes) parts << one(what);
  return tr("%1.").arg(Joined::capitalised(Joined::words(parts)));
}

QString RemedyWords::one(const v1::Remedy& what) const {
  const QString dish = view_.names().dish(what.dish_id());
  const QString step = what.step_id().empty() ? QString() : view_.quoted(what.step_id());
  switch (what.kind()) {
    case v1::REMEDY_KIND_SHARE_TEMPERATURE:
      return tr("let %1 be anywhere from %2 to %3")
          .arg(step, view_.dial(what.min_celsius()), view_.dial(what.max_celsius()));
    case v1::REMEDY_KIND_OTHER_OVEN:
      return tr("let %1 go into another oven than %2").arg(step, view_.names().oven(what.thing_id()));
    case v1::REMEDY_KIND_BAKE_EARLIER:
      return earlier(what);
    case v1::REMEDY_KIND_RETARD:
      return tr("let %1 slow down in the fridge").arg(step);
    case v1::REMEDY_KIND_LEVAIN_RATIO:
      return levain(what);
    case v1::REMEDY_KIND_OTHER_COOK:
      return tr("ask %1 to cook, too").arg(view_.names().cook(what.thing_id()));
    case v1::REMEDY_KIND_LATER_COURSE:
      return later(what);
    case v1::REMEDY_KIND_BORROW:
      return borrowed(what);
    case v1::REMEDY_KIND_DROP_DISH:
      return tr("leave out %1").arg(dish);
    case v1::REMEDY_KIND_HOURS:
      return tr("ask %1 for up to %2 more at either end of their hours")
          .arg(view_.names().cook(what.thing_id()), view_.words().length(toMinutes(what.duration())));
    case v1::REMEDY_KIND_UNPIN:
      return tr("leave %1 to the planner").arg(step);
    case v1::REMEDY_KIND_OTHER_PAN:
      return otherPan(what);
    default:
      return tr("a change this program has no words for");
  }
}

QString RemedyWords::earlier(const v1::Remedy& what) const {
  const QString dish = view_.names().dish(what.dish_id());
  if (what.step_id().empty())
    return tr("let %1 be ready earlier and wait up to %2")
        .arg(dish, view_.words().length(toMinutes(what.duration())));
  return tr("bake %1 hours ahead and warm it through before serving").arg(dish);
}

QString RemedyWords::levain(const v1::Remedy& what) const {
  const QString dish = view_.names().dish(what.dish_id());
  for (const v1::DoughForecast& dough : plan_.doughs()) {
    if (dough.dish_id() == what.dish_id())
      return tr("build the levain of %1 at %2").arg(dish, QString::fromStdString(dough.levain_ratio()));
  }
  return tr("build the levain of %1 at another ratio").arg(dish);
}

QString RemedyWords::later(const v1::Remedy& what) const {
  const QString course = view_.names().course(what.course_id());
  const QString length = view_.words().length(toMinutes(what.duration()));
  for (const v1::Course& changed : event_.courses()) {
    if (changed.id() == what.course_id())
      return tr("serve %1 %2 later, at %3")
          .arg(course, length, view_.words().clock(toInstant(changed.serving_time())));
  }
  return tr("serve %1 %2 later").arg(course, length);
}

QString RemedyWords::borrowed(const v1::Remedy& what) const {
  const std::string& id = what.thing_id();
  if (id == "burners")
    return what.count() == 1 ? tr("borrow a burner") : tr("borrow %1 burners").arg(what.count());
  if (view_.names().isPlace(id))
    return tr("find %1 l more room like %2").arg(what.count()).arg(view_.names().place(id));
  return tr("borrow another %1").arg(view_.names().thing(id));
}

QString RemedyWords::otherPan(const v1::Remedy& what) const {
  const QString dish = view_.names().dish(what.dish_id());
  const QString oven = view_.names().oven(what.thing_id());
  const QStringList others = besideInOven(what);
  const QString beside = others.isEmpty() ? tr("the others") : Joined::words(others);
  const int count = what.pan().count();
  if (count > 1)
    return tr("bake %1 in %2 pans of at most %3, about %4 high and filled deeper, for longer: then they "
              "stand "
              "beside %5 in the oven “%6”")
        .arg(dish, QString::number(count), sizeOf(what.pan()), heightOf(what.pan()), beside, oven);
  return tr("bake %1 in a pan of at most %2, about %3 high and filled deeper, for longer: then it stands "
            "beside "
            "%4 in the oven “%5”")
      .arg(dish, sizeOf(what.pan()), heightOf(what.pan()), beside, oven);
}

bool RemedyWords::inInches() const {
  return view_.replica().household.measure_system() == v1::MEASURE_SYSTEM_US;
}

// Never more than it is: whole centimetres, or quarters of an inch.
QString RemedyWords::sizeOf(const v1::Pan& pan) const {
  if (!inInches()) return tr("%1 x %2 cm").arg(pan.width_mm() / 10).arg(pan.depth_mm() / 10);
  const auto inches = [](int length) { return std::floor(4 * length / kMillimetresInInch) / 4; };
  return tr("%1 x %2 in")
      .arg(QLocale().toString(inches(pan.width_mm()), 'g', 4),
           QLocale().toString(inches(pan.depth_mm()), 'g', 4));
}

// To the nearest half.
QString RemedyWords::heightOf(const v1::Pan& pan) const {
  const double length = pan.height_mm() / (inInches() ? kMillimetresInInch : 10.0);
  const QString number = QLocale().toString(std::round(2 * length) / 2, 'g', 4);
  return inInches() ? tr("%1 in").arg(number) : tr("%1 cm").arg(number);
}

// The dishes with which it is in that oven, as the plan has it.
QStringList RemedyWords::besideInOven(const v1::Remedy& what) const {
  const auto& steps = plan_.steps();
  const auto own = std::find_if(steps.begin(), steps.end(),
                                [&](const v1::PlannedStep& step) { return step.id() == what.step_id(); });
  QStringList dishes;
  if (own == steps.end() || own->oven_id() != what.thing_id()) return dishes;
  for (const v1::PlannedStep& other : steps) {
    if (other.oven_id() != own->oven_id() || other.dish_id() == own->dish_id()) continue;
    if (toInstant(other.start_time()) >= toInstant(own->end_time()) ||
        toInstant(own->start_time()) >= toInstant(other.end_time()))
      continue;
    const QString name = view_.names().dish(other.dish_id());
    if (!dishes.contains(name)) dishes << name;
  }
  return dishes;
}

QString RemedyWords::cost() const {
  const v1::TierCosts& costs = plan_.quality().costs();
  const auto length = [&](std::int64_t minutes) {
    return view_.words().length(static_cast<double>(minutes));
  };
  QStringList parts;
  if (costs.lateness() > 0) parts << tr("%1 late").arg(length(costs.lateness()));
  if (costs.quality() > 0) parts << tr("%1 waiting or off its best").arg(length(costs.quality()));
  if (costs.people() > 0)
    parts << tr("%1 at unsocial hours or beyond a fair share").arg(length(costs.people()));
  if (costs.ovens() > 0) parts << tr("%1 of empty oven").arg(length(costs.ovens()));
  QString words = parts.isEmpty() ? tr("Nothing waits and nobody is asked at a bad hour.")
                                  : tr("%1.").arg(Joined::capitalised(Joined::words(parts)));
  const v1::PlannedCourse* course = leastSure();
  if (course == nullptr) return words;
  const int evenings = static_cast<int>(std::floor(course->on_time_chance() * 100));
  if (evenings >= kSureEvenings || course->late_step_id().empty())
    return tr("%1 In time in %2 of 100 evenings.").arg(words).arg(evenings);
  return tr("%1 In time in %2 of 100 evenings; when it is late, mostly because %3 takes longer.")
      .arg(words)
      .arg(evenings)
      .arg(view_.quoted(course->late_step_id()));
}

// Null while nothing was simulated.
const v1::PlannedCourse* RemedyWords::leastSure() const {
  const v1::PlannedCourse* least = nullptr;
  for (const v1::PlannedCourse& course : plan_.courses())
    if (course.has_on_time_chance() &&
        (least == nullptr || course.on_time_chance() < least->on_time_chance()))
      least = &course;
  return least;
}

}  // namespace suppertide
