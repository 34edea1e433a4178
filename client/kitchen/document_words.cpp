#include "client/kitchen/document_words.h"

#include <google/protobuf/descriptor.h>

#include <cmath>

#include "client/kitchen/field_path.h"
#include "client/kitchen/kitchen_choices.h"
#include "client/kitchen/units.h"
#include "client/ui/symbol.h"
#include "client/words/amount_words.h"
#include "client/words/step_words.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

QString choiceAt(const QStringList& names, int index) {
  return index >= 0 && index < names.size() ? names[index] : QString();
}

}  // namespace

MemberWords::MemberWords(const HouseholdSession* session) {
  if (session == nullptr || session->replica() == nullptr) return;
  const v1::Household& household = session->replica()->household;
  fahrenheit_ = household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT;
  measures_ = household.measure_system();
  times_ = TimeWords(household.time_zone());
}

QString MemberWords::degrees(double celsius) const {
  return degreesText(celsius, fahrenheit_);
}

QString MemberWords::length(const google::protobuf::Duration& length) const {
  return times_.length(toMinutes(length));
}

MemberText MemberWords::of(const Message& member, const Message& document) const {
  if (const auto* ingredient = dynamic_cast<const v1::Ingredient*>(&member)) return ofIngredient(*ingredient);
  if (const auto* step = dynamic_cast<const v1::Step*>(&member)) return ofStep(*step);
  if (const auto* oven = dynamic_cast<const v1::Oven*>(&member)) return ofOven(*oven);
  if (const auto* place = dynamic_cast<const v1::Place*>(&member)) return ofPlace(*place);
  if (const auto* reading = dynamic_cast<const v1::HeatReading*>(&member)) return ofReading(*reading);
  if (const auto* seen = dynamic_cast<const v1::StarterObservation*>(&member)) return ofObservation(*seen);
  if (const auto* thing = dynamic_cast<const v1::Equipment*>(&member))
    return {text(thing->display_name()), tr("%n of them", "", thing->count()), Symbol::Cover};
  if (const auto* line = dynamic_cast<const v1::FormulaLine*>(&member))
    return {text(line->name()), QStringLiteral("%1 %").arg(numberText(line->percent())), Symbol::Nothing};
  if (const auto* after = dynamic_cast<const v1::After*>(&member)) {
    QString title = text(after->step_id());
    if (const auto* recipe = dynamic_cast<const v1::Recipe*>(&document)) {
      for (const v1::Step& step : recipe->steps())
        if (step.id() == after->step_id()) title = text(step.title());
    }
    return {title, {}, Symbol::Hourglass};
  }
  if (const auto* phase = dynamic_cast<const v1::OvenPhase*>(&member))
    return {degrees(phase->setpoint_celsius()), length(phase->duration()), Symbol::Oven};
  return {};
}

MemberText MemberWords::ofIngredient(const v1::Ingredient& one) const {
  QStringList parts;
  if (one.has_mass_g()) parts += AmountWords::mass(one.mass_g(), measures_);
  if (one.has_volume_ml()) parts += AmountWords::volume(one.volume_ml(), measures_);
  if (one.has_count()) parts += numberText(one.count());
  if (!one.note().empty()) parts += text(one.note());
  QStringList contents;
  for (const std::string& content : one.contains()) contents += text(content);
  if (!contents.isEmpty()) parts += tr("holds %1").arg(contents.join(tr(", ")));
  if (!one.known_contents()) parts += tr("contents not known");
  return {text(one.name()), parts.join(tr(" · ")), Symbol::Nothing};
}

MemberText MemberWords::ofStep(const v1::Step& step) const {
  QStringList parts = {StepWords::kind(step.kind())};
  if (step.has_oven()) {
    parts += degrees(step.oven().setpoint_celsius());
    double minutes = toMinutes(step.oven().duration().likely());
    for (const v1::OvenPhase& phase : step.oven().later_phases()) minutes += toMinutes(phase.duration());
    parts += times_.length(minutes);
  } else if (step.has_ferment()) {
    parts += choiceAt(KitchenChoices::fermentStages(), step.ferment().stage() - 1);
  } else if (step.duration().has_likely()) {
    parts += length(step.duration().likely());
  } else if (step.mass_g() > 0) {
    parts += AmountWords::mass(step.mass_g(), measures_);
  }
  if (step.may_be_left_out()) parts += tr("may be left out");
  return {text(step.title()), parts.join(tr(" · ")), StepWords::symbol(step.kind())};
}

MemberText MemberWords::ofOven(const v1::Oven& oven) const {
  QStringList parts = {
      tr("%1 to %2").arg(degrees(oven.min_setpoint_celsius()), degrees(oven.max_setpoint_celsius())),
      tr("%n racks", "", oven.rack_clear_height_mm_size())};
  const v1::HeatCurve& curve = oven.heat_curve();
  const int readings =
      curve.heating_size() + curve.cooling_size() + curve.cooling_ajar_size() + curve.rises_size();
  if (readings > 0) parts += tr("%n readings", "", readings);
  return {text(oven.display_name()), parts.join(tr(" · ")), Symbol::Oven};
}

MemberText MemberWords::ofPlace(const v1::Place& place) const {
  QStringList parts = {choiceAt(KitchenChoices::placeKinds(), place.kind() - 1)};
  const auto& celsius = place.temperature().celsius();
  if (!celsius.empty()) {
    const auto [least, most] = std::minmax_element(celsius.begin(), celsius.end());
    parts += *least == *most ? degrees(*least) : tr("%1 to %2").arg(degrees(*least), degrees(*most));
  }
  if (place.has_volume_l()) parts += tr("%1 l").arg(numberText(place.volume_l()));
  const bool cold = place.kind() == v1::PLACE_KIND_FRIDGE || place.kind() == v1::PLACE_KIND_FREEZER;
  return {place.display_name().empty() ? parts.first() : text(place.display_name()), parts.join(tr(" · ")),
          cold ? Symbol::Snowflake : Symbol::Shelf};
}

MemberText MemberWords::ofReading(const v1::HeatReading& reading) const {
  return {length(reading.after()), degrees(reading.celsius()), Symbol::Nothing};
}

MemberText MemberWords::ofObservation(const v1::StarterObservation& seen) const {
  const Instant fed = toInstant(seen.feed_time());
  const QString title = seen.recipe_id().empty()
                            ? tr("Fed %1, 1:%2:%3")
                                  .arg(times_.dayClock(fed), numberText(seen.flour_per_starter()),
                                       numberText(seen.water_per_starter()))
                            : tr("Dough of %1").arg(times_.dayClock(fed));
  const double minutes =
      static_cast<double>(seen.observe_time().seconds() - seen.feed_time().seconds()) / 60.0;
  QStringList parts = {tr("after %1").arg(times_.length(minutes))};
  switch (seen.seen()) {
    case v1::SEEN_KIND_DOUGH_CELSIUS:
      parts += degrees(seen.dough_celsius());
      break;
    case v1::SEEN_KIND_PEAK:
      parts += tr("stood highest");
      break;
    case v1::SEEN_KIND_SPRINGS_BACK:
      parts += tr("a dent springs back");
      break;
    case v1::SEEN_KIND_RECEDES_SLOWLY:
      parts += tr("a dent fills slowly");
      break;
    case v1::SEEN_KIND_COLLAPSES:
      parts += tr("a dent stays");
      break;
    case v1::SEEN_KIND_READY:
      parts += tr("called ready");
      break;
    default:
      parts += tr("%1 times as high").arg(numberText(seen.rise()));
  }
  if (seen.place_id().empty()) parts += degrees(seen.celsius());
  return {title, parts.join(tr(" · ")), Symbol::Jar};
}

QString MemberWords::wholeField(const Message& document, const QString& field) const {
  const FieldDescriptor* type = document.GetDescriptor()->FindFieldByName(field.toStdString());
  if (type == nullptr) return {};
  const auto name = QString::fromStdString(type->json_name());
  const FieldPath at = FieldPath::in(document, name);
  if (type->is_repeated()) {
    QStringList lines;
    for (int i = 0; i < at.count(); ++i) {
      const MemberText member = of(*at.member(i), document);
      lines += member.detail.isEmpty() ? member.title : tr("%1 (%2)").arg(member.title, member.detail);
    }
    return lines.join(QLatin1Char('\n'));
  }
  if (field == QStringLiteral("formula")) {
    const auto& recipe = static_cast<const v1::Recipe&>(document);
    QStringList lines;
    for (const v1::FormulaLine& line : recipe.formula().lines())
      lines += tr("%1 % %2").arg(numberText(line.percent()), text(line.name()));
    return lines.join(QLatin1Char('\n'));
  }
  if (field == QStringLiteral("holding")) {
    const v1::Holding& holding = static_cast<const v1::Recipe&>(document).holding();
    return tr("%1, at most %2")
        .arg(choiceAt(KitchenChoices::holdings(), holding.kind() - 1), length(holding.longest()));
  }
  if (field == QStringLiteral("safety_class")) return choiceAt(KitchenChoices::safetyClasses(), at.choice());
  if (field == QStringLiteral("condition")) return choiceAt(KitchenChoices::conditions(), at.choice() - 1);
  if (field == QStringLiteral("last_fed_time"))
    return times_.dayClock(Instant(std::chrono::seconds(std::llround(at.number()))));
  if (type->cpp_type() == FieldDescriptor::CPPTYPE_STRING) return at.text();
  return numberText(at.number());
}

QString LearnedWords::sentence(const v1::LearnedEffect& effect) {
  QString what;
  switch (effect.kind()) {
    case v1::EFFECT_KIND_VIGOUR:
      what = tr("Grows %1 times as fast as stated").arg(numberText(effect.value()));
      break;
    case v1::EFFECT_KIND_WAKING:
      what = tr("Takes %1 times as long to wake").arg(numberText(effect.value()));
      break;
    case v1::EFFECT_KIND_WARMTH:
      what = effect.value() < 0 ? tr("%1 K colder than stated").arg(numberText(-effect.value()))
                                : tr("%1 K warmer than stated").arg(numberText(effect.value()));
      break;
    case v1::EFFECT_KIND_PACE:
      what = tr("Rises %1 times as fast as its composition says").arg(numberText(effect.value()));
      break;
    default:
      return {};
  }
  switch (effect.telling()) {
    case v1::EFFECT_TELLING_TOLD:
      return tr("%1.").arg(what);
    case v1::EFFECT_TELLING_TIED:
      return tr("%1, unless something else is behind it: what was seen does not tell them apart.").arg(what);
    default:
      return tr("%1, but what was seen says little of it.").arg(what);
  }
}

}  // namespace suppertide
