#include "client/session/preferences.h"

namespace suppertide {
namespace {

constexpr double kSmallestText = 0.8;
constexpr double kLargestText = 1.8;

}  // namespace

Preferences::Preferences(const QString& file, QObject* parent)
    : QObject(parent),
      settings_(file.isEmpty() ? nullptr : std::make_unique<QSettings>(file, QSettings::IniFormat)) {}

QString Preferences::language() const {
  const QString language = value(kLanguage, QString()).toString();
  const bool known = language == QLatin1String("en") || language == QLatin1String("de");
  return known ? language : QString();
}

void Preferences::setLanguage(const QString& language) {
  set(kLanguage, language, &Preferences::languageChanged);
}

QLocale Preferences::locale() const {
  const QLocale desktop = QLocale::system();
  const QString wanted = language();
  // The desktop's own ways with hours and numbers stay where the language is the same.
  if (wanted.isEmpty() || desktop.name().startsWith(wanted)) return desktop;
  return localeOf(wanted);
}

QLocale Preferences::localeOf(const QString& language) {
  return language == QLatin1String("de") ? QLocale(QLocale::German, QLocale::Germany)
                                         : QLocale(QLocale::English, QLocale::UnitedKingdom);
}

void Preferences::setScheme(Scheme scheme) {
  forNow_.reset();
  if (static_cast<Scheme>(number(kScheme, Dark)) == scheme) {
    Q_EMIT changed();
  } else {
    set(kScheme, scheme, &Preferences::changed);
  }
}

void Preferences::setForNow(Scheme scheme) {
  forNow_ = scheme;
  Q_EMIT changed();
}

double Preferences::textScale() const {
  return qBound(kSmallestText, value(kTextScale, 1.0).toDouble(), kLargestText);
}

void Preferences::setTextScale(double scale) {
  set(kTextScale, qBound(kSmallestText, scale, kLargestText), &Preferences::changed);
}

std::optional<v1::TemperatureUnit> Preferences::temperatureUnit() const {
  if (degrees() == HouseholdDegrees) return std::nullopt;
  return degrees() == Celsius ? v1::TEMPERATURE_UNIT_CELSIUS : v1::TEMPERATURE_UNIT_FAHRENHEIT;
}

std::optional<v1::MeasureSystem> Preferences::measureSystem() const {
  if (measures() == HouseholdMeasures) return std::nullopt;
  return measures() == Metric ? v1::MEASURE_SYSTEM_METRIC : v1::MEASURE_SYSTEM_US;
}

QVariant Preferences::value(const char* key, const QVariant& otherwise) const {
  const QString name = QString::fromLatin1(key);
  return settings_ != nullptr ? settings_->value(name, otherwise) : kept_.value(name, otherwise);
}

int Preferences::number(const char* key, int most) const {
  const int number = value(key, 0).toInt();
  return number < 0 || number > most ? 0 : number;
}

void Preferences::set(const char* key, const QVariant& next, void (Preferences::*told)()) {
  if (value(key, {}) == next) return;
  if (settings_ != nullptr) {
    settings_->setValue(QString::fromLatin1(key), next);
  } else {
    kept_.insert(QString::fromLatin1(key), next);
  }
  Q_EMIT(this->*told)();
}

}  // namespace suppertide
