#include "server/compose/menu/amounts.h"

#include <cmath>

#include "server/kitchen/ingredients/shown_amount.h"

namespace suppertide::compose {
namespace {

using kitchen::AmountKind;

// Common practice, no source.
double boughtAmount(double amount) {
  const double step = amount < 10 ? 1 : amount < 100 ? 5 : amount < 1000 ? 10 : 50;
  return std::ceil(amount / step - 1e-6) * step;
}

}  // namespace

v1::Amount amountOf(const kitchen::Amount& from) {
  v1::Amount amount;
  if (from.kind == AmountKind::kGrams) amount.set_mass_g(from.value);
  if (from.kind == AmountKind::kMillilitres) amount.set_volume_ml(from.value);
  if (from.kind == AmountKind::kPieces) amount.set_count(from.value);
  return amount;
}

kitchen::Amount amountOf(const v1::Amount& from) {
  switch (from.kind_case()) {
    case v1::Amount::kMassG:
      return {AmountKind::kGrams, from.mass_g()};
    case v1::Amount::kVolumeMl:
      return {AmountKind::kMillilitres, from.volume_ml()};
    case v1::Amount::kCount:
      return {AmountKind::kPieces, from.count()};
    case v1::Amount::KIND_NOT_SET:
      break;
  }
  return {};
}

std::string shownAmount(const kitchen::Amount& amount, kitchen::Measures measures) {
  switch (amount.kind) {
    case AmountKind::kGrams:
      return kitchen::shownMass(amount.value, measures);
    case AmountKind::kMillilitres:
      return kitchen::shownVolume(amount.value, measures);
    case AmountKind::kPieces:
      return kitchen::shownCount(amount.value);
    case AmountKind::kSome:
      break;
  }
  return "some";
}

kitchen::Amount asBought(const kitchen::Amount& amount) {
  const bool measured = amount.kind == AmountKind::kGrams || amount.kind == AmountKind::kMillilitres;
  return {amount.kind, measured ? boughtAmount(amount.value) : amount.value};
}

std::string shownToBuy(const kitchen::Amount& amount, kitchen::Measures measures) {
  return shownAmount(asBought(amount), measures);
}

}  // namespace suppertide::compose
