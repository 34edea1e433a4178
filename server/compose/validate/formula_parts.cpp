#include "server/compose/validate/formula_parts.h"

#include <algorithm>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace suppertide::compose {
namespace {

constexpr int kMostParts = 4;
constexpr int kMostSoaked = 10;
constexpr int kMostReadings = 50;
constexpr double kWholeGrainFlourPercent = 50;  // a flour counts as whole grain from here

bool checkLevain(const Checker& here, const v1::LevainNeed& levain) {
  here.at("starterId").id(levain.starter_id());
  bool good = here.at("doughSharePercent").aboveZero(levain.dough_share_percent(), 60, "% of the dough");
  good = here.at("hydrationPercent").zeroOrRange(levain.hydration_percent(), 40, 200, "%") && good;
  good = here.at("wholeGrainPercent").range(levain.whole_grain_percent(), 0, 100, "%") && good;
  const auto& builds = levain.flour_per_starter();
  if (!here.at("flourPerStarter").count(builds.size(), 0, 20, "builds")) return good;
  for (int i = 0; i < builds.size(); ++i) here.at("flourPerStarter", i).aboveZero(builds[i], 100, "parts");
  return good;
}

bool checkPreferment(const Checker& here, const v1::Preferment& told) {
  bool good = here.at("id").id(told.id());
  here.at("name").optionalText(told.name(), 60);
  here.at("kind").chosen(told.kind(), "a kind of preferment: poolish, biga, sponge or old dough");
  good = here.at("flourPercent").aboveZero(told.flour_percent(), 80, "% of all flour") && good;
  good = here.at("hydrationPercent").zeroOrRange(told.hydration_percent(), 40, 200, "%") && good;
  good = here.at("wholeGrainPercent").range(told.whole_grain_percent(), 0, 100, "%") && good;
  good = here.at("yeastPercent").aboveZero(told.yeast_percent(), 3, "% of its own flour") && good;
  return here.at("saltPercent").range(told.salt_percent(), 0, 3, "% of its own flour") && good;
}

bool checkSoaker(const Checker& here, const v1::Soaker& told, const v1::BreadFormula& formula) {
  bool good = here.at("id").id(told.id());
  here.at("name").optionalText(told.name(), 60);
  good = here.at("waterPercent").aboveZero(told.water_percent(), 100, "% of all flour") && good;
  good = here.at("saltPercent").range(told.salt_percent(), 0, 3, "% of all flour") && good;
  if (!here.at("parts").count(told.parts_size(), 1, kMostSoaked, "soaked lines")) return false;
  for (int i = 0; i < told.parts_size(); ++i) {
    const Checker part = here.at("parts", i);
    const std::string& name = told.parts(i).line_name();
    good = part.at("percent").range(told.parts(i).percent(), 0, 100, "% of all flour") && good;
    const bool there = std::any_of(formula.lines().begin(), formula.lines().end(), [&](const auto& line) {
      return line.name() == name &&
             (line.role() == v1::FORMULA_ROLE_FLOUR || line.role() == v1::FORMULA_ROLE_OTHER);
    });
    if (there) continue;
    part.at("lineName")
        .wrong(name, "must be the name of a line of flour, or of something else that is soaked");
    good = false;
  }
  return good;
}

double hydrationOf(const v1::Preferment& told) {
  if (told.hydration_percent() > 0) return told.hydration_percent() / 100;
  if (told.kind() == v1::PREFERMENT_KIND_POOLISH) return 1;
  return told.kind() == v1::PREFERMENT_KIND_BIGA ? 0.55 : 0.65;
}

// What is left of each line after planning takes levain, preferments and soakers out of it.
class Taken {
 public:
  Taken(const Checker& here, const v1::BreadFormula& formula) : here_(here), formula_(formula) {
    for (const v1::FormulaLine& line : formula.lines()) left_.push_back(line.percent());
  }

  void levain() {
    const v1::LevainNeed& levain = formula_.levain();
    const double hydration = levain.hydration_percent() > 0 ? levain.hydration_percent() / 100 : 1;
    double whole = 0;
    for (const v1::FormulaLine& line : formula_.lines()) whole += line.percent();
    const double percent = levain.dough_share_percent() / 100 * whole;
    const double flour = percent / (1 + hydration);
    const Asking asking{here_.at("levain").at("doughSharePercent"), percentText(levain.dough_share_percent()),
                        "so much levain"};
    takeFlour(asking, flour, levain.whole_grain_percent() / 100);
    take(asking, wettest(), percent - flour, "water or milk");
  }

  void preferment(int index) {
    const v1::Preferment& told = formula_.preferments(index);
    const Checker here = here_.at("preferments", index);
    const double flour = told.flour_percent();
    const Asking asking{here.at("flourPercent"), percentText(flour), "this preferment"};
    takeFlour(asking, flour, told.whole_grain_percent() / 100);
    take(asking, wettest(), flour * hydrationOf(told), "water or milk");
    const Asking leavening{here.at("yeastPercent"), percentText(told.yeast_percent()), "this preferment"};
    take(leavening, firstYeast(), flour * told.yeast_percent() / 100, "baker's yeast");
    const Asking salting{here.at("saltPercent"), percentText(told.salt_percent()), "this preferment"};
    take(salting, firstOf(v1::FORMULA_ROLE_SALT), flour * told.salt_percent() / 100, "salt");
  }

  void soaker(int index) {
    const v1::Soaker& told = formula_.soakers(index);
    const Checker here = here_.at("soakers", index);
    for (int i = 0; i < told.parts_size(); ++i) {
      const v1::SoakedPart& part = told.parts(i);
      const Asking asking{here.at("parts", i).at("percent"), percentText(part.percent()), "this soaker"};
      if (part.percent() > 0) take(asking, named(part.line_name()), part.percent(), part.line_name());
      if (part.percent() == 0) left_[static_cast<std::size_t>(named(part.line_name()))] = 0;
    }
    const Asking wetting{here.at("waterPercent"), percentText(told.water_percent()), "this soaker"};
    take(wetting, wettest(), told.water_percent(), "water or milk");
    const Asking salting{here.at("saltPercent"), percentText(told.salt_percent()), "this soaker"};
    take(salting, firstOf(v1::FORMULA_ROLE_SALT), told.salt_percent(), "salt");
  }

 private:
  // Whose field is at fault when there is too little, what stands there, and how to call it.
  struct Asking {
    Checker field;
    std::string value;
    std::string what;
  };

  template <typename Suits>
  int firstLine(Suits suits) const {
    for (int i = 0; i < formula_.lines_size(); ++i)
      if (suits(formula_.lines(i))) return i;
    return -1;
  }
  int firstOf(v1::FormulaRole role) const {
    return firstLine([&](const v1::FormulaLine& line) { return line.role() == role; });
  }
  int named(const std::string& name) const {
    return firstLine([&](const v1::FormulaLine& line) { return line.name() == name; });
  }
  int firstYeast() const {
    return firstLine([](const v1::FormulaLine& line) {
      return line.role() == v1::FORMULA_ROLE_FRESH_YEAST || line.role() == v1::FORMULA_ROLE_DRY_YEAST ||
             line.role() == v1::FORMULA_ROLE_INSTANT_YEAST;
    });
  }
  int flourLine(bool wholeGrain) const {
    const int wanted = firstLine([&](const v1::FormulaLine& line) {
      return line.role() == v1::FORMULA_ROLE_FLOUR &&
             (line.whole_grain_percent() >= kWholeGrainFlourPercent) == wholeGrain;
    });
    return wanted >= 0 ? wanted : firstOf(v1::FORMULA_ROLE_FLOUR);
  }
  // As planning has it: the line of most water, the first of these.
  int wettest() const {
    int found = -1;
    double most = -1;
    for (int i = 0; i < formula_.lines_size(); ++i) {
      const v1::FormulaLine& line = formula_.lines(i);
      if (line.role() != v1::FORMULA_ROLE_WATER && line.role() != v1::FORMULA_ROLE_MILK) continue;
      const double usual = line.role() == v1::FORMULA_ROLE_WATER ? 100 : 87;
      const double water = line.has_water_percent() ? line.water_percent() : usual;
      if (water > most) found = i;
      most = std::max(most, water);
    }
    return found;
  }

  void takeFlour(const Asking& asking, double percent, double wholeGrainShare) {
    take(asking, flourLine(true), percent * wholeGrainShare, "flour");
    take(asking, flourLine(false), percent * (1 - wholeGrainShare), "flour");
  }

  void take(const Asking& asking, int line, double percent, const std::string& what) {
    if (percent <= 0) return;
    const double there = line < 0 ? 0 : left_[static_cast<std::size_t>(line)];
    if (there + 1e-9 < percent)
      asking.field.wrong(asking.value, absl::StrCat(asking.what, " needs ", percentText(percent), " of ",
                                                    line < 0 ? what : formula_.lines(line).name(),
                                                    ", but there is only ", percentText(there)));
    if (line >= 0) left_[static_cast<std::size_t>(line)] -= percent;
  }

  Checker here_;
  const v1::BreadFormula& formula_;
  std::vector<double> left_;
};

}  // namespace

bool checkParts(const Checker& here, const v1::BreadFormula& formula) {
  bool good = true;
  Once ids;
  if (formula.has_levain()) good = checkLevain(here.at("levain"), formula.levain());
  if (!here.at("preferments").count(formula.preferments_size(), 0, kMostParts, "preferments")) return false;
  if (!here.at("soakers").count(formula.soakers_size(), 0, kMostParts, "soakers")) return false;
  for (int i = 0; i < formula.preferments_size(); ++i) {
    good = checkPreferment(here.at("preferments", i), formula.preferments(i)) && good;
    ids.add(here.at("preferments", i).at("id"), formula.preferments(i).id());
  }
  for (int i = 0; i < formula.soakers_size(); ++i) {
    good = checkSoaker(here.at("soakers", i), formula.soakers(i), formula) && good;
    ids.add(here.at("soakers", i).at("id"), formula.soakers(i).id());
  }
  return good;
}

void checkPartsTaken(const Checker& here, const v1::BreadFormula& formula) {
  Taken taken(here, formula);
  if (formula.has_levain()) taken.levain();
  for (int i = 0; i < formula.preferments_size(); ++i) taken.preferment(i);
  for (int i = 0; i < formula.soakers_size(); ++i) taken.soaker(i);
}

void checkMixReading(const Checker& here, const v1::MixReading& reading) {
  if (reading.has_time()) here.at("time").time(true, reading.time());
  here.at("roomCelsius").range(reading.room_celsius(), 0, 45, "°C");
  here.at("flourCelsius").range(reading.flour_celsius(), -25, 45, "°C");
  here.at("waterCelsius").range(reading.water_celsius(), 0, 60, "°C");
  if (reading.has_preferment_celsius())
    here.at("prefermentCelsius").range(reading.preferment_celsius(), 0, 45, "°C");
  here.at("doughCelsius").range(reading.dough_celsius(), 5, 45, "°C");
  if (reading.has_dough_mass_g()) here.at("doughMassG").aboveZero(reading.dough_mass_g(), 200'000, "g");
}

void checkMixReadings(const Checker& here, const v1::BreadFormula& formula) {
  if (!here.at("mixReadings").count(formula.mix_readings_size(), 0, kMostReadings, "readings")) return;
  for (int i = 0; i < formula.mix_readings_size(); ++i)
    checkMixReading(here.at("mixReadings", i), formula.mix_readings(i));
}

void checkLearned(const Checker& here, const v1::LearnedEffect& learned, v1::EffectKind kind) {
  if (learned.kind() != kind) here.at("kind").wrong(v1::EffectKind_Name(learned.kind()), "is kept elsewhere");
  const bool warmth = kind == v1::EFFECT_KIND_WARMTH;
  const double least = warmth ? -10 : kind == v1::EFFECT_KIND_WAKING ? 0 : 0.1;
  here.at("value").range(learned.value(), least, 10, warmth ? "K" : "times");
  here.at("spread").range(learned.spread(), 0, 5);
  here.at("spreadShare").range(learned.spread_share(), 0, 1.5);
  here.at("correlation").range(learned.correlation(), -1, 1);
}

}  // namespace suppertide::compose
