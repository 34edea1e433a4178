#include "client/words/amount_words.h"

#include <QtCore/qlocale.h>

namespace suppertide {
namespace {

constexpr double kLarge = 1000;
constexpr double kFine = 10;

QString number(double value) {
  const QLocale locale;
  const QString exact = locale.toString(value, 'f', value < kFine ? 1 : 0);
  const QString whole = locale.toString(value, 'f', 0);
  return exact.startsWith(whole) && exact.endsWith(QLatin1Char('0')) && value < kFine ? whole : exact;
}

}  // namespace

QString AmountWords::text(const v1::Amount& amount) {
  switch (amount.kind_case()) {
    case v1::Amount::kMassG:
      return amount.mass_g() < kLarge ? tr("%1 g").arg(number(amount.mass_g()))
                                      : tr("%1 kg").arg(number(amount.mass_g() / kLarge));
    case v1::Amount::kVolumeMl:
      return amount.volume_ml() < kLarge ? tr("%1 ml").arg(number(amount.volume_ml()))
                                         : tr("%1 l").arg(number(amount.volume_ml() / kLarge));
    case v1::Amount::kCount:
      return number(amount.count());
    default:
      return {};
  }
}

}  // namespace suppertide
