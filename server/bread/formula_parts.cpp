#include "server/bread/formula_parts.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace suppertide::bread {
namespace {

constexpr double kMostlyWholeGrain = 0.5;

double sumOf(const std::vector<Ingredient>& lines) {
  double sum = 0;
  for (const Ingredient& line : lines) sum += line.percent;
  return sum;
}

// The lines of an overall formula, out of which parts are taken.
class Lines {
 public:
  explicit Lines(std::vector<Ingredient> overall) : left_(std::move(overall)) {}

  std::vector<Ingredient>& left() { return left_; }

  absl::Status takeFlour(PartLines& part, double percent, double wholeGrainShare) {
    for (const bool wholeGrain : {true, false}) {
      const double share = wholeGrain ? wholeGrainShare : 1 - wholeGrainShare;
      if (share <= 0) continue;
      if (absl::Status status = take(part, flour(wholeGrain), "flour", percent * share); !status.ok())
        return status;
    }
    return absl::OkStatus();
  }

  absl::Status takeWater(PartLines& part, double percent) { return take(part, wettest(), "water", percent); }

  absl::Status takeRole(PartLines& part, Role role, const char* what, double percent) {
    return take(part, firstOf([&](const Ingredient& i) { return i.role == role; }), what, percent);
  }

  absl::Status takeNamed(PartLines& part, const std::string& name, double percent) {
    Ingredient* line = firstOf([&](const Ingredient& i) { return i.name == name; });
    return take(part, line, name, percent > 0 || line == nullptr ? percent : line->percent);
  }

 private:
  template <typename Suits>
  Ingredient* firstOf(Suits suits) {
    const auto found = std::find_if(left_.begin(), left_.end(), suits);
    return found == left_.end() ? nullptr : &*found;
  }

  Ingredient* flour(bool wholeGrain) {
    Ingredient* wanted = firstOf([&](const Ingredient& i) {
      return i.role == Role::kFlour && (i.wholeGrainShare >= kMostlyWholeGrain) == wholeGrain;
    });
    return wanted != nullptr ? wanted : firstOf([](const Ingredient& i) { return i.role == Role::kFlour; });
  }

  Ingredient* wettest() {
    Ingredient* found = nullptr;
    for (Ingredient& line : left_)
      if (line.role == Role::kLiquid && (found == nullptr || line.waterShare > found->waterShare))
        found = &line;
    return found;
  }

  static absl::Status take(PartLines& part, Ingredient* line, const std::string& what, double percent) {
    if (!(std::isfinite(percent) && percent >= 0))
      return absl::InvalidArgumentError(
          absl::StrCat("formula: ", part.name, ": ", percent, " % of ", what, " is not 0 or more"));
    if (percent == 0) return absl::OkStatus();
    const double there = line == nullptr ? 0 : line->percent;
    if (there + 1e-9 < percent)
      return absl::InvalidArgumentError(
          absl::StrFormat("formula: %s: %.2f %% is less than the %.2f %% that the %s needs",
                          line == nullptr ? what : line->name, there, percent, part.name));
    line->percent = std::max(0.0, there - percent);
    Ingredient taken = *line;
    taken.percent = percent;
    part.lines.push_back(std::move(taken));
    return absl::OkStatus();
  }

  std::vector<Ingredient> left_;
};

absl::Status takeLevain(Lines& lines, const LevainPart& levain, double wholePercent) {
  if (!(levain.doughShare >= 0 && levain.doughShare < 1))
    return absl::InvalidArgumentError(
        absl::StrCat("formula: levain: share of the dough ", levain.doughShare, " is not in [0, 1)"));
  if (!(std::isfinite(levain.hydration) && levain.hydration > 0))
    return absl::InvalidArgumentError(
        absl::StrCat("formula: levain: hydration ", levain.hydration, " is not above 0"));
  Ingredient part = usual("levain", Role::kLevain, levain.doughShare * wholePercent);
  part.hydration = levain.hydration;
  part.wholeGrainShare = levain.wholeGrainShare;
  const double flour = part.percent / (1 + levain.hydration);
  PartLines told{"levain", {}};
  if (absl::Status status = lines.takeFlour(told, flour, levain.wholeGrainShare); !status.ok()) return status;
  if (absl::Status status = lines.takeWater(told, part.percent - flour); !status.ok()) return status;
  lines.left().push_back(std::move(part));
  return absl::OkStatus();
}

// One ingredient that stands for all in `part`.
Ingredient composite(const PartLines& part, Role role) {
  Ingredient whole;
  whole.name = part.name;
  whole.role = role;
  whole.percent = sumOf(part.lines);
  if (whole.percent <= 0) return whole;
  double flour = 0, grain = 0;
  for (const Ingredient& line : part.lines) {
    const double share = line.percent / whole.percent;
    whole.waterShare += share * line.waterShare;
    whole.saltShare += share * line.saltShare;
    whole.sugarShare += share * line.sugarShare;
    if (line.role == Role::kYeast) whole.yeastShare += share * yeastFactor(line.yeastForm);
    if (line.role != Role::kFlour) continue;
    flour += share;
    grain += share * line.wholeGrainShare;
  }
  whole.flourShare = flour;
  whole.wholeGrainShare = flour > 0 ? grain / flour : 0;
  return whole;
}

absl::Status takePreferment(Lines& lines, const PrefermentPart& wanted, PartLines& part) {
  const double flour = wanted.flourPercent;
  part.name = wanted.name;
  if (absl::Status status = lines.takeFlour(part, flour, wanted.wholeGrainShare); !status.ok()) return status;
  if (absl::Status status = lines.takeWater(part, flour * wanted.hydration); !status.ok()) return status;
  if (absl::Status status =
          lines.takeRole(part, Role::kYeast, "baker's yeast", flour * wanted.yeastPercent / 100);
      !status.ok())
    return status;
  return lines.takeRole(part, Role::kSalt, "salt", flour * wanted.saltPercent / 100);
}

absl::Status takeSoaker(Lines& lines, const SoakerPart& wanted, PartLines& part) {
  part.name = wanted.name;
  for (const SoakerPart::Soaked& soaked : wanted.soaked)
    if (absl::Status status = lines.takeNamed(part, soaked.line, soaked.percent); !status.ok()) return status;
  if (absl::Status status = lines.takeWater(part, wanted.waterPercent); !status.ok()) return status;
  return lines.takeRole(part, Role::kSalt, "salt", wanted.saltPercent);
}

}  // namespace

absl::StatusOr<SplitFormula> splitFormula(std::vector<Ingredient> overall, const FormulaParts& wanted) {
  const double whole = sumOf(overall);
  Lines lines(std::move(overall));
  std::vector<PartLines> parts;
  std::vector<Ingredient> composites;
  if (wanted.levain)
    if (absl::Status status = takeLevain(lines, *wanted.levain, whole); !status.ok()) return status;
  for (const PrefermentPart& preferment : wanted.preferments) {
    if (absl::Status status = takePreferment(lines, preferment, parts.emplace_back()); !status.ok())
      return status;
    composites.push_back(composite(parts.back(), Role::kPreferment));
  }
  for (const SoakerPart& soaker : wanted.soakers) {
    if (absl::Status status = takeSoaker(lines, soaker, parts.emplace_back()); !status.ok()) return status;
    composites.push_back(composite(parts.back(), Role::kSoaker));
  }
  lines.left().insert(lines.left().end(), composites.begin(), composites.end());
  auto mix = Formula::fromPercents(std::move(lines.left()));
  if (!mix.ok()) return mix.status();
  return SplitFormula{*std::move(mix), std::move(parts)};
}

}  // namespace suppertide::bread
