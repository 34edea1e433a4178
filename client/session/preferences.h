// What this device's person likes: language, looks, units, sound. Kept in a file of settings.
#pragma once

#include <QtCore/qlocale.h>
#include <QtCore/qobject.h>
#include <QtCore/qsettings.h>
#include <QtCore/qvariant.h>
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <optional>

#include "client/link/replica.h"

namespace suppertide {

class Preferences : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  // "en" or "de"; empty: as the desktop.
  Q_PROPERTY(QString language READ language WRITE setLanguage NOTIFY languageChanged FINAL)
  Q_PROPERTY(suppertide::Preferences::Scheme scheme READ scheme WRITE setScheme NOTIFY changed FINAL)
  // Of text, against its usual size: 0.8 to 1.8.
  Q_PROPERTY(double textScale READ textScale WRITE setTextScale NOTIFY changed FINAL)
  Q_PROPERTY(suppertide::Preferences::Degrees degrees READ degrees WRITE setDegrees NOTIFY unitsChanged FINAL)
  Q_PROPERTY(
      suppertide::Preferences::Measures measures READ measures WRITE setMeasures NOTIFY unitsChanged FINAL)
  // Whether reminders make a sound.
  Q_PROPERTY(bool sound READ sound WRITE setSound NOTIFY changed FINAL)
 public:
  enum Scheme { AsDesktop, Light, Dark };
  Q_ENUM(Scheme)
  enum Degrees { HouseholdDegrees, Celsius, Fahrenheit };
  Q_ENUM(Degrees)
  enum Measures { HouseholdMeasures, Metric, UnitedStates };
  Q_ENUM(Measures)

  // `file`: where they are kept; empty: nowhere.
  explicit Preferences(const QString& file = {}, QObject* parent = nullptr);

  QString language() const;
  void setLanguage(const QString& language);
  // In which times and numbers are written: the chosen language's, or the desktop's.
  QLocale locale() const;
  static QLocale localeOf(const QString& language);
  Scheme scheme() const { return forNow_.value_or(static_cast<Scheme>(number(kScheme, Dark))); }
  void setScheme(Scheme scheme);
  // Not kept; until another one is chosen.
  void setForNow(Scheme scheme);
  double textScale() const;
  void setTextScale(double scale);
  Degrees degrees() const { return static_cast<Degrees>(number(kDegrees, Fahrenheit)); }
  void setDegrees(Degrees degrees) { set(kDegrees, degrees, &Preferences::unitsChanged); }
  Measures measures() const { return static_cast<Measures>(number(kMeasures, UnitedStates)); }
  void setMeasures(Measures measures) { set(kMeasures, measures, &Preferences::unitsChanged); }
  bool sound() const { return value(kSound, true).toBool(); }
  void setSound(bool sound) { set(kSound, sound, &Preferences::changed); }

  // The units to read in; absent: the household's.
  std::optional<v1::TemperatureUnit> temperatureUnit() const;
  std::optional<v1::MeasureSystem> measureSystem() const;

 Q_SIGNALS:
  void changed();
  void languageChanged();
  void unitsChanged();

 private:
  static constexpr char kLanguage[] = "language";
  static constexpr char kScheme[] = "scheme";
  static constexpr char kTextScale[] = "textScale";
  static constexpr char kDegrees[] = "degrees";
  static constexpr char kMeasures[] = "measures";
  static constexpr char kSound[] = "sound";

  QVariant value(const char* key, const QVariant& otherwise) const;
  // 0 when it is none of 0 to `most`.
  int number(const char* key, int most) const;
  void set(const char* key, const QVariant& value, void (Preferences::*told)());

  std::unique_ptr<QSettings> settings_;
  QVariantMap kept_;  // without a file
  std::optional<Scheme> forNow_;
};

}  // namespace suppertide
