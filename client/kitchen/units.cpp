#include "client/kitchen/units.h"

#include <QtCore/qlocale.h>

#include <cmath>

namespace suppertide {
namespace {

constexpr double kFahrenheitPerKelvin = 1.8;
constexpr double kFahrenheitAtFreezing = 32;
constexpr double kPerThousand = 1000;

}  // namespace

QString numberText(double number) {
  const double hundredths = std::round(number * 100) / 100;
  int digits = 0;
  while (digits < 2 &&
         std::abs(hundredths * std::pow(10, digits) - std::round(hundredths * std::pow(10, digits))) > 1e-6)
    ++digits;
  return QLocale().toString(hundredths, 'f', digits);
}

QString degreesText(double celsius, bool fahrenheit) {
  return fahrenheit ? QStringLiteral("%1 °F").arg(
                          std::lround(celsius * kFahrenheitPerKelvin + kFahrenheitAtFreezing))
                    : QStringLiteral("%1 °C").arg(numberText(std::round(celsius * 10) / 10));
}

QString massText(double grams) {
  if (grams >= kPerThousand) return QStringLiteral("%1 kg").arg(numberText(grams / kPerThousand));
  return QStringLiteral("%1 g").arg(numberText(grams < 10 ? std::round(grams * 10) / 10 : std::round(grams)));
}

void HouseholdUnits::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr)
    connect(session_, &HouseholdSession::householdChanged, this, &HouseholdUnits::unitsChanged);
  Q_EMIT sessionChanged();
  Q_EMIT unitsChanged();
}

bool HouseholdUnits::fahrenheit() const {
  return session_ != nullptr && session_->replica() != nullptr &&
         session_->replica()->household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT;
}

QString HouseholdUnits::degreeUnit() const {
  return fahrenheit() ? QStringLiteral("°F") : QStringLiteral("°C");
}

double HouseholdUnits::shown(double celsius) const {
  return fahrenheit() ? celsius * kFahrenheitPerKelvin + kFahrenheitAtFreezing : celsius;
}

double HouseholdUnits::celsius(double shown) const {
  return fahrenheit() ? (shown - kFahrenheitAtFreezing) / kFahrenheitPerKelvin : shown;
}

}  // namespace suppertide
