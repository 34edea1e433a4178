#include "client/words/amount_words.h"

#include <QtCore/qlocale.h>

#include <cmath>
#include <utility>

namespace suppertide {
namespace {

constexpr double kPerThousand = 1000;
constexpr double kFine = 10;
// By definition (avoirdupois ounce, US liquid measure); a spoon is a sixteenth of a cup.
constexpr double kGramsPerOunce = 28.349523125;
constexpr double kMillilitresPerCup = 236.5882365;
constexpr double kSpoonsPerCup = 16;
constexpr double kTeaspoonsPerSpoon = 3;
constexpr long kOuncesPerPound = 16;
constexpr double kLeastCups = 0.24;
constexpr double kLeastSpoons = 0.95;

// At most so many places, none that is not needed.
QString number(double value, int places) {
  const QLocale locale;
  for (int digits = 0; digits < places; ++digits) {
    const double unit = std::pow(10, digits);
    if (std::abs(std::round(value * unit) / unit - value) < 0.5 / std::pow(10, places))
      return locale.toString(value, 'f', digits);
  }
  return locale.toString(value, 'f', places);
}

// Whole ones and the part that measuring cups and spoons come in.
QString mixed(double value) {
  static constexpr std::pair<double, char16_t> kParts[] = {{0, 0},          {0.125, u'⅛'}, {0.25, u'¼'},
                                                           {1.0 / 3, u'⅓'}, {0.5, u'½'},   {2.0 / 3, u'⅔'},
                                                           {0.75, u'¾'},    {1, 0}};
  double whole = std::floor(value);
  const double rest = value - whole;
  std::pair<double, char16_t> best = kParts[0];
  for (const auto& part : kParts)
    if (std::abs(part.first - rest) < std::abs(best.first - rest) - 1e-12) best = part;
  if (best.first == 1) ++whole;
  if (whole == 0 && best.second == 0) best = kParts[1];
  const QString part = best.second == 0 ? QString() : QString(QChar(best.second));
  return whole == 0 ? part : QLocale().toString(whole, 'f', 0) + part;
}

// Common practice, no source.
double asShopsSell(double amount) {
  const double step = amount < 10 ? 1 : amount < 100 ? 5 : amount < kPerThousand ? 10 : 50;
  return std::ceil(amount / step - 1e-6) * step;
}

}  // namespace

QString AmountWords::mass(double grams, v1::MeasureSystem system) {
  if (system != v1::MEASURE_SYSTEM_US)
    return grams < kPerThousand ? tr("%1 g").arg(number(grams, grams < kFine ? 1 : 0))
                                : tr("%1 kg").arg(number(grams / kPerThousand, 2));
  const double ounces = grams / kGramsPerOunce;
  if (ounces < kOuncesPerPound) return tr("%1 oz").arg(mixed(ounces));
  const long whole = std::lround(ounces);
  const QString pounds = tr("%1 lb").arg(whole / kOuncesPerPound);
  return whole % kOuncesPerPound == 0 ? pounds : tr("%1 %2 oz").arg(pounds).arg(whole % kOuncesPerPound);
}

QString AmountWords::volume(double millilitres, v1::MeasureSystem system) {
  if (system != v1::MEASURE_SYSTEM_US)
    return millilitres < kPerThousand ? tr("%1 ml").arg(number(millilitres, millilitres < kFine ? 1 : 0))
                                      : tr("%1 l").arg(number(millilitres / kPerThousand, 2));
  const double cups = millilitres / kMillilitresPerCup;
  if (cups >= kLeastCups)
    return cups > 1.0625 ? tr("%1 cups").arg(mixed(cups)) : tr("%1 cup").arg(mixed(cups));
  const double spoons = cups * kSpoonsPerCup;
  return spoons >= kLeastSpoons ? tr("%1 tbsp").arg(mixed(spoons))
                                : tr("%1 tsp").arg(mixed(spoons * kTeaspoonsPerSpoon));
}

QString AmountWords::count(double pieces) {
  return mixed(pieces);
}

QString AmountWords::text(const v1::Amount& amount, v1::MeasureSystem system) {
  switch (amount.kind_case()) {
    case v1::Amount::kMassG:
      return mass(amount.mass_g(), system);
    case v1::Amount::kVolumeMl:
      return volume(amount.volume_ml(), system);
    case v1::Amount::kCount:
      return count(amount.count());
    default:
      return {};
  }
}

QString AmountWords::toBuy(const v1::Amount& amount, v1::MeasureSystem system) {
  v1::Amount bought = amount;
  if (amount.has_mass_g()) bought.set_mass_g(asShopsSell(amount.mass_g()));
  if (amount.has_volume_ml()) bought.set_volume_ml(asShopsSell(amount.volume_ml()));
  return text(bought, system);
}

}  // namespace suppertide
