#include "server/bread/formula.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace suppertide::bread {
namespace {

constexpr double kSumTolerance = 0.05;

absl::Status refusal(const Ingredient& ingredient, const std::string& why) {
  return absl::InvalidArgumentError(absl::StrCat("formula: ", ingredient.name, ": ", why));
}

absl::Status checkShare(const Ingredient& ingredient, const char* what, double share) {
  if (share >= 0 && share <= 1) return absl::OkStatus();
  return refusal(ingredient, absl::StrCat(what, " ", share, " is not between 0 and 1"));
}

absl::Status checkAlone(const Ingredient& ingredient) {
  if (!(std::isfinite(ingredient.percent) && ingredient.percent >= 0)) {
    return refusal(ingredient, absl::StrCat("amount ", ingredient.percent, " is not 0 or more"));
  }
  for (const auto& [what, share] :
       {std::pair{"water share", ingredient.waterShare},
        std::pair{"whole-grain share", ingredient.wholeGrainShare},
        std::pair{"salt share", ingredient.saltShare}, std::pair{"sugar share", ingredient.sugarShare},
        std::pair{"flour share", ingredient.flourShare}, std::pair{"yeast share", ingredient.yeastShare}}) {
    if (absl::Status status = checkShare(ingredient, what, share); !status.ok()) return status;
  }
  const double dissolved = ingredient.waterShare + ingredient.saltShare + ingredient.sugarShare;
  if (ingredient.role != Role::kLevain && dissolved > 1 + 1e-9) {
    return refusal(ingredient, absl::StrCat("water, salt and sugar are ", dissolved, " of its mass"));
  }
  if (ingredient.role == Role::kLevain &&
      !(std::isfinite(ingredient.hydration) && ingredient.hydration > 0)) {
    return refusal(ingredient, absl::StrCat("hydration ", ingredient.hydration, " is not above 0"));
  }
  return absl::OkStatus();
}

bool isComposite(const Ingredient& ingredient) {
  return ingredient.role == Role::kPreferment || ingredient.role == Role::kSoaker;
}

double flourShareOf(const Ingredient& ingredient) {
  if (ingredient.role == Role::kFlour) return 1;
  if (isComposite(ingredient)) return ingredient.flourShare;
  return ingredient.role == Role::kLevain ? 1 / (1 + ingredient.hydration) : 0;
}

double waterShareOf(const Ingredient& ingredient) {
  return ingredient.role == Role::kLevain ? 1 - flourShareOf(ingredient) : ingredient.waterShare;
}

// Sum over ingredients of percent times `shareOf`.
template <typename ShareOf>
double sumPercent(const std::vector<Ingredient>& ingredients, ShareOf shareOf) {
  double sum = 0;
  for (const Ingredient& ingredient : ingredients) sum += ingredient.percent * shareOf(ingredient);
  return sum;
}

}  // namespace

double yeastFactor(YeastForm form) {
  if (form == YeastForm::kActiveDry) return kCompressedPerActiveDry;
  return form == YeastForm::kInstant ? kCompressedPerInstant : 1;
}

Ingredient usual(std::string name, Role role, double percent) {
  Ingredient ingredient;
  ingredient.name = std::move(name);
  ingredient.role = role;
  ingredient.percent = percent;
  if (role == Role::kLiquid) ingredient.waterShare = 1;
  if (role == Role::kFat) ingredient.waterShare = kButterWaterShare;
  if (role == Role::kEgg) ingredient.waterShare = kEggWaterShare;
  if (role == Role::kSalt) ingredient.saltShare = 1;
  if (role == Role::kSugar) ingredient.sugarShare = 1;
  return ingredient;
}

absl::StatusOr<Formula> Formula::fromPercents(std::vector<Ingredient> ingredients) {
  for (const Ingredient& ingredient : ingredients) {
    if (absl::Status status = checkAlone(ingredient); !status.ok()) return status;
  }
  const double flour = sumPercent(ingredients, flourShareOf);
  if (!(flour > 0)) return absl::InvalidArgumentError("formula: there is no flour");
  if (std::abs(flour - 100) > kSumTolerance) {
    return absl::InvalidArgumentError(absl::StrFormat(
        "formula: flours, with that in levain and preferments, add up to %.2f %%, %.2f %% too %s", flour,
        std::abs(flour - 100), flour < 100 ? "little" : "much"));
  }
  return Formula(std::move(ingredients));
}

absl::StatusOr<Formula> Formula::fromGrams(const std::vector<Weighed>& weighed) {
  std::vector<Ingredient> ingredients;
  for (const Weighed& w : weighed) {
    ingredients.push_back(w.ingredient);
    ingredients.back().percent = w.grams;
    if (absl::Status status = checkAlone(ingredients.back()); !status.ok()) return status;
  }
  const double flourGrams = sumPercent(ingredients, flourShareOf);
  if (!(flourGrams > 0)) return absl::InvalidArgumentError("formula: there is no flour");
  for (Ingredient& ingredient : ingredients) ingredient.percent *= 100 / flourGrams;
  return fromPercents(std::move(ingredients));
}

double Formula::totalPercent() const {
  return sumPercent(ingredients_, [](const Ingredient&) { return 1.0; });
}

double Formula::prefermentedFlourShare() const {
  const auto prefermented = [](const Ingredient& i) {
    return i.role == Role::kLevain || i.role == Role::kPreferment ? flourShareOf(i) : 0.0;
  };
  return sumPercent(ingredients_, prefermented) / sumPercent(ingredients_, flourShareOf);
}

double Formula::levainFlourShare() const {
  return sumPercent(ingredients_,
                    [](const Ingredient& i) { return i.role == Role::kLevain ? flourShareOf(i) : 0.0; }) /
         sumPercent(ingredients_, flourShareOf);
}

double Formula::levainShare() const {
  return sumPercent(ingredients_, [](const Ingredient& i) { return i.role == Role::kLevain ? 1.0 : 0.0; }) /
         totalPercent();
}

double Formula::prefermentShare() const {
  return sumPercent(ingredients_,
                    [](const Ingredient& i) { return i.role == Role::kPreferment ? 1.0 : 0.0; }) /
         totalPercent();
}

double Formula::hydration() const {
  return sumPercent(ingredients_, waterShareOf) / sumPercent(ingredients_, flourShareOf);
}

double Formula::wholeGrainShare() const {
  return sumPercent(ingredients_, [](const Ingredient& i) { return flourShareOf(i) * i.wholeGrainShare; }) /
         sumPercent(ingredients_, flourShareOf);
}

double Formula::saltPercent() const {
  return sumPercent(ingredients_, [](const Ingredient& i) { return i.saltShare; });
}

double Formula::sugarPercent() const {
  return sumPercent(ingredients_, [](const Ingredient& i) { return i.sugarShare; });
}

double Formula::fatPercent() const {
  return sumPercent(ingredients_, [](const Ingredient& i) {
    return i.role == Role::kFat ? 1 - i.waterShare - i.saltShare - i.sugarShare : 0.0;
  });
}

double Formula::compressedYeastPercent() const {
  return addedYeastPercent() + sumPercent(ingredients_, [](const Ingredient& i) {
           return i.role == Role::kPreferment ? i.yeastShare : 0.0;
         });
}

double Formula::addedYeastPercent() const {
  return sumPercent(ingredients_, [](const Ingredient& i) {
    return i.role == Role::kYeast ? yeastFactor(i.yeastForm) : 0.0;
  });
}

double Formula::soakedWaterPercent() const {
  return sumPercent(ingredients_,
                    [](const Ingredient& i) { return i.role == Role::kSoaker ? i.waterShare : 0.0; });
}

absl::StatusOr<std::vector<Weighed>> Formula::gramsForFlour(double totalFlourGrams) const {
  if (!(std::isfinite(totalFlourGrams) && totalFlourGrams > 0)) {
    return absl::InvalidArgumentError(
        absl::StrCat("formula: wanted mass ", totalFlourGrams, " g of flour is not above 0"));
  }
  std::vector<Weighed> weighed;
  for (const Ingredient& ingredient : ingredients_) {
    weighed.push_back({ingredient, ingredient.percent * totalFlourGrams / 100});
  }
  return weighed;
}

absl::StatusOr<std::vector<Weighed>> Formula::gramsForDough(double doughGrams) const {
  return gramsForFlour(doughGrams * 100 / totalPercent());
}

absl::StatusOr<std::vector<Weighed>> Formula::gramsForPieces(int pieces, double pieceGrams,
                                                             double lossShare) const {
  if (pieces <= 0 || !(pieceGrams > 0) || !(lossShare >= 0 && lossShare < 1)) {
    return absl::InvalidArgumentError(absl::StrCat("formula: can't divide into ", pieces, " pieces of ",
                                                   pieceGrams, " g with a loss share of ", lossShare));
  }
  return gramsForDough(pieces * pieceGrams / (1 - lossShare));
}

}  // namespace suppertide::bread
