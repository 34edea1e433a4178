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
        std::pair{"salt share", ingredient.saltShare}, std::pair{"sugar share", ingredient.sugarShare}}) {
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

double flourShareOf(const Ingredient& ingredient) {
  if (ingredient.role == Role::kFlour) return 1;
  return ingredient.role == Role::kLevain ? 1 / (1 + ingredient.hydration) : 0;
}

double waterShareOf(const Ingredient& ingredient) {
  return ingredient.role == Role::kLevain ? 1 - flourShareOf(ingredient) : ingredient.waterShare;
}

double yeastFactor(YeastForm form) {
  if (form == YeastForm::kActiveDry) return kCompressedPerActiveDry;
  return form == YeastForm::kInstant ? kCompressedPerInstant : 1;
}

// Sum over ingredients of percent times `shareOf`.
template <typename ShareOf>
double sumPercent(const std::vector<Ingredient>& ingredients, ShareOf shareOf) {
  double sum = 0;
  for (const Ingredient& ingredient : ingredients) sum += ingredient.percent * shareOf(ingredient);
  return sum;
}

// Takes `percent` out of `ingredient`; InvalidArgument when there is less.
absl::Status takeOut(Ingredient& ingredient, double percent) {
  if (ingredient.percent + 1e-9 < percent) {
    return refusal(ingredient, absl::StrFormat("%.2f %% is less than the %.2f %% that the levain needs",
                                               ingredient.percent, percent));
  }
  ingredient.percent = std::max(0.0, ingredient.percent - percent);
  return absl::OkStatus();
}

absl::Status takeFlour(std::vector<Ingredient>& overall, double percent, bool wholeGrain) {
  const auto suits = [&](const Ingredient& i) {
    return i.role == Role::kFlour && (i.wholeGrainShare >= 0.5) == wholeGrain;
  };
  auto flour = std::find_if(overall.begin(), overall.end(), suits);
  if (flour == overall.end()) {
    flour = std::find_if(overall.begin(), overall.end(),
                         [](const Ingredient& i) { return i.role == Role::kFlour; });
  }
  if (flour == overall.end()) return absl::InvalidArgumentError("formula: there is no flour");
  return takeOut(*flour, percent);
}

absl::Status takeWater(std::vector<Ingredient>& overall, double percent) {
  const auto wettest =
      std::max_element(overall.begin(), overall.end(), [](const Ingredient& a, const Ingredient& b) {
        return (a.role == Role::kLiquid ? a.waterShare : -1) < (b.role == Role::kLiquid ? b.waterShare : -1);
      });
  if (wettest == overall.end() || wettest->role != Role::kLiquid) {
    return absl::InvalidArgumentError("formula: there is no liquid to take the levain's water from");
  }
  return takeOut(*wettest, percent);
}

}  // namespace

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
    return absl::InvalidArgumentError(
        absl::StrFormat("formula: flours and the levain's flour add up to %.2f %%, %.2f %% too %s", flour,
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
  return sumPercent(ingredients_,
                    [](const Ingredient& i) { return i.role == Role::kLevain ? flourShareOf(i) : 0.0; }) /
         sumPercent(ingredients_, flourShareOf);
}

double Formula::levainShare() const {
  return sumPercent(ingredients_, [](const Ingredient& i) { return i.role == Role::kLevain ? 1.0 : 0.0; }) /
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
  return sumPercent(ingredients_, [](const Ingredient& i) {
    return i.role == Role::kYeast ? yeastFactor(i.yeastForm) : 0.0;
  });
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

absl::StatusOr<Formula> splitLevain(std::vector<Ingredient> overall, const Ingredient& levain,
                                    double levainShareOfDough) {
  Ingredient part = levain;
  part.role = Role::kLevain;
  if (!(levainShareOfDough >= 0 && levainShareOfDough < 1)) {
    return refusal(part, absl::StrCat("share of the dough ", levainShareOfDough, " is not in [0, 1)"));
  }
  part.percent = levainShareOfDough * sumPercent(overall, [](const Ingredient&) { return 1.0; });
  if (absl::Status status = checkAlone(part); !status.ok()) return status;
  const double flour = part.percent * flourShareOf(part);
  for (bool wholeGrain : {true, false}) {
    const double share = wholeGrain ? part.wholeGrainShare : 1 - part.wholeGrainShare;
    if (share <= 0) continue;
    if (absl::Status status = takeFlour(overall, flour * share, wholeGrain); !status.ok()) return status;
  }
  if (absl::Status status = takeWater(overall, part.percent - flour); !status.ok()) return status;
  overall.push_back(std::move(part));
  return Formula::fromPercents(std::move(overall));
}

}  // namespace suppertide::bread
