#include "server/compose/seen_doughs.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/base/index.h"
#include "server/bread/calibration.h"
#include "server/compose/bread_model.h"

namespace suppertide::compose {
namespace {

using Kind = planning::StepState::Kind;

constexpr double kMostLogPace = 0.9163;  // ln 2.5, as the bread engine's own limit
// By how much a kelvin changes a dough's pace; common practice, no source.
constexpr double kLogPaceOfKelvin = 0.1;
// A temperature taken later tells of the place, no longer of the mixing.
constexpr double kLeastTrace = 0.3;

// The most credible value within +-kMostLogPace: golden section over a badness with one low.
double leastBad(const std::function<double(double)>& badness) {
  constexpr double kGolden = 0.6180339887;
  double low = -kMostLogPace;
  double high = kMostLogPace;
  while (high - low > 1e-3) {
    const double left = high - kGolden * (high - low);
    const double right = low + kGolden * (high - low);
    if (badness(left) < badness(right))
      high = right;
    else
      low = left;
  }
  return (low + high) / 2;
}

// What a look or a finger says; nothing for other reports. Done is ready, and who wants more
// time for a dough sees it short of that.
std::optional<bread::Poke> pokeOf(const v1::Report& report) {
  if (report.what_case() == v1::Report::kDone) return bread::Poke::kRecedesSlowly;
  if (report.what_case() == v1::Report::kNeedsMoreDuration) return bread::Poke::kSpringsBack;
  if (report.what_case() != v1::Report::kDentTest) return std::nullopt;
  if (report.dent_test() == v1::DENT_TEST_SPRINGS_BACK) return bread::Poke::kSpringsBack;
  return report.dent_test() == v1::DENT_TEST_STAYS ? bread::Poke::kCollapses : bread::Poke::kRecedesSlowly;
}

struct Reading {
  int step = -1;
  double hours = 0;  // after the step began
  const v1::Report* report = nullptr;
};

// One dough's way through the true times of a running plan.
class DoughPath {
 public:
  DoughPath(const Composition& composition, const planning::Running& running, int dish)
      : composition_(composition),
        running_(running),
        bread_(*composition.dishes[at(dish)].bread),
        model_(composition, composition.dishes[at(dish)], bread_) {}

  const BreadModel& model() const { return model_; }
  const BreadInfo& bread() const { return bread_; }
  bool hasBegun(int step) const {
    const Kind kind = running_.states[at(step)].kind;
    return kind == Kind::kStarted || kind == Kind::kFinished;
  }
  planning::Minute startOf(int step) const {
    return hasBegun(step) ? running_.states[at(step)].start : running_.plan.steps[at(step)].start;
  }
  int placeOf(int step) const { return meaning(step).place; }
  double clock() const { return composition_.axis.clockAtZero() / 60.0; }

  bread::DoughKind kindOf(int step, double logPace) const {
    bread::DoughKind kind = step == bread_.levainStep ? model_.recipe().levainKind() : model_.recipe().kind();
    if (step != bread_.levainStep) kind.gasFactor *= std::exp(logPace);
    return kind;
  }

  // The dough (or levain) when `step` begins; nothing where the formula cannot be mixed.
  std::optional<bread::DoughState> stateAt(int step, double logVigour, double logPace, double warmer) const {
    if (step == bread_.levainStep) return fed(logVigour);
    auto state = mixed(logVigour, warmer);
    int before = -1;
    for (const int next : bread_.doughSteps) {
      if (!state) return state;
      if (before >= 0) {
        *state = after(before, *state, logPace);
        *state = model_.handled(*state, next, std::max(0.0, hours(startOf(next) - endOf(before))));
      }
      if (next == step) return state;
      before = next;
    }
    return std::nullopt;
  }

 private:
  static double hours(int minutes) { return minutes / 60.0; }
  const ModeInfo& meaning(int step) const {
    return composition_.steps[at(step)].modes[at(running_.plan.steps[at(step)].mode)];
  }
  planning::Minute endOf(int step) const {
    const planning::StepState& state = running_.states[at(step)];
    if (state.kind == Kind::kFinished) return state.end;
    const planning::Placement& planned = running_.plan.steps[at(step)];
    return startOf(step) + planned.end - planned.start;
  }

  bread::DoughState after(int step, const bread::DoughState& state, double logPace) const {
    return bread::stateAfter(kindOf(step, logPace), state, hours(startOf(step)), model_.stays(placeOf(step)),
                             hours(endOf(step) - startOf(step)), clock());
  }

  std::optional<bread::DoughState> fed(double logVigour) const {
    const auto state = model_.fedLevain(meaning(bread_.levainStep).flourPerStarter);
    if (!state.ok()) return std::nullopt;
    return bread::shifted(*state, {logVigour, 0, 0});
  }

  std::optional<bread::DoughState> mixed(double logVigour, double warmer) const {
    bread::Culture culture{0, bread::kPeakLevainLag, 1};
    if (bread_.levainStep >= 0) {
      const auto levain = fed(logVigour);
      if (!levain) return levain;
      culture = bread::cultureOf(after(bread_.levainStep, *levain, 0));
    }
    std::vector<double> grown;
    for (int p = 0; p < model_.recipe().prefermentCount(); ++p) grown.push_back(grownBy(p));
    auto state = model_.mixedDough(culture, grown);
    if (!state.ok()) return std::nullopt;
    state->celsius += warmer;
    return *state;
  }

  double grownBy(int preferment) const {
    const int step = bread_.preferments[at(preferment)].step;
    const auto start = model_.mixedPreferment(preferment);
    if (step < 0 || !start.ok()) return model_.recipe().likelyGrowth(preferment);
    return bread::stateAfter(model_.recipe().prefermentKind(preferment), *start, hours(startOf(step)),
                             model_.stays(placeOf(step)), hours(endOf(step) - startOf(step)), clock())
        .yeastFactor;
  }

  const Composition& composition_;
  const planning::Running& running_;
  const BreadInfo& bread_;
  BreadModel model_;
};

// What one dish's reports say of its dough.
class Lesson {
 public:
  Lesson(const Composition& composition, const planning::Running& running, int dish)
      : composition_(composition), running_(running), dish_(dish), path_(composition, running, dish) {}

  void add(const v1::Report& report) {
    for (const int step : composition_.dishes[at(dish_)].steps) {
      if (composition_.stepId(step) != absl::StrCat(report.dish_id(), "/", report.step_id())) continue;
      const planning::Minute when =
          report.has_happen_time() ? composition_.axis.minuteOf(report.happen_time()) : running_.now;
      const double hours = (std::min(when, running_.now) - path_.startOf(step)) / 60.0;
      if (path_.hasBegun(step)) readings_.push_back({step, hours, &report});
    }
  }

  // Whether anything was learned.
  bool run() {
    learnWarmth();
    const int levain = path_.bread().levainStep;
    if (levain >= 0) logVigour_ = fitted([&](int step) { return step == levain; }, levain, true);
    const auto& steps = path_.bread().doughSteps;
    if (!steps.empty())
      logPace_ = fitted([&](int step) { return std::count(steps.begin(), steps.end(), step) > 0; },
                        steps.front(), false);
    return warmer_ || logVigour_ || logPace_;
  }

  std::optional<double> warmer() const { return warmer_; }
  std::optional<double> logVigour() const { return logVigour_; }
  std::optional<double> logPace() const { return logPace_; }
  double wantedCelsius() const { return path_.model().recipe().doughCelsius(); }

 private:
  // The last temperature that still tells of the mixing.
  void learnWarmth() {
    const auto& steps = path_.bread().doughSteps;
    for (const Reading& reading : readings_) {
      if (reading.report->what_case() != v1::Report::kDoughCelsius) continue;
      const double seen = reading.report->dough_celsius();
      if (reading.step == path_.bread().mixStep) warmer_ = seen - wantedCelsius();
      if (steps.empty() || reading.step != steps.front()) continue;
      const auto cool = celsiusThen(reading, 0);
      const auto warm = celsiusThen(reading, 1);
      if (cool && warm && *warm - *cool >= kLeastTrace) warmer_ = (seen - *cool) / (*warm - *cool);
    }
    if (warmer_) warmer_ = std::clamp(*warmer_, -15.0, 15.0);
  }

  std::optional<double> celsiusThen(const Reading& reading, double warmer) const {
    const auto start = path_.stateAt(reading.step, 0, 0, warmer);
    if (!start) return std::nullopt;
    return bread::stateAfter(path_.kindOf(reading.step, 0), *start, path_.startOf(reading.step) / 60.0,
                             path_.model().stays(path_.placeOf(reading.step)), std::max(0.0, reading.hours),
                             path_.clock())
        .celsius;
  }

  template <typename Counts>
  std::optional<double> fitted(Counts counts, int first, bool isLevain) const {
    std::vector<Reading> own;
    for (const Reading& reading : readings_)
      if (counts(reading.step) && reading.hours > 0 &&
          (reading.report->what_case() == v1::Report::kRise || pokeOf(*reading.report)))
        own.push_back(reading);
    if (own.empty()) return std::nullopt;
    const bread::Uncertainty unsure = path_.model().uncertainty(first, path_.placeOf(first));
    const double sigma = std::hypot(unsure.logVigour, kLogPaceOfKelvin * unsure.placeKelvin);
    return leastBad([&](double x) {
      double badness = x * x / (sigma * sigma);
      for (const Reading& reading : own) {
        const double miss = isLevain ? missOf(reading, x, 0) : missOf(reading, logVigour_.value_or(0), x);
        badness += miss * miss;
      }
      return badness;
    });
  }

  double missOf(const Reading& reading, double logVigour, double logPace) const {
    const auto start = path_.stateAt(reading.step, logVigour, logPace, warmer_.value_or(0));
    if (!start) return 0;
    const int place = path_.placeOf(reading.step);
    bread::Observation seen;
    seen.kind = path_.kindOf(reading.step, logPace);
    seen.start = *start;
    seen.startHour = path_.startOf(reading.step) / 60.0;
    seen.stays = path_.model().stays(place);
    seen.hourOfDayAtZero = path_.clock();
    seen.hours = reading.hours;
    seen.value = reading.report->rise();
    if (const auto poke = pokeOf(*reading.report))
      seen = bread::poked(seen, *poke, path_.model().stage(reading.step, place));
    return bread::missOf(seen, {});
  }

  const Composition& composition_;
  const planning::Running& running_;
  const int dish_;
  DoughPath path_;
  std::vector<Reading> readings_;
  std::optional<double> warmer_;
  std::optional<double> logVigour_;
  std::optional<double> logPace_;
};

double mean(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

void faster(v1::LearnedEffect& effect, double byLog) {
  effect.set_value((effect.value() > 0 ? effect.value() : 1) * std::exp(byLog));
}

// Of all doughs, by what they share.
struct Lessons {
  std::map<std::string, std::vector<double>> vigour;  // starter id
  std::map<std::string, std::vector<double>> pace;    // recipe id
  std::map<std::string, double> celsius;              // recipe id

  void writeTo(Documents& documents) const {
    for (v1::Starter& starter : documents.starters)
      if (const auto found = vigour.find(starter.id()); found != vigour.end())
        faster(*starter.mutable_learned_vigour(), mean(found->second));
    for (v1::Recipe& recipe : documents.recipes) {
      if (const auto found = pace.find(recipe.id()); found != pace.end())
        faster(*recipe.mutable_formula()->mutable_learned_pace(), mean(found->second));
      if (const auto found = celsius.find(recipe.id()); found != celsius.end())
        recipe.mutable_formula()->set_dough_celsius(found->second);
    }
  }
};

}  // namespace

std::vector<const v1::Report*> standingReports(const v1::Progress& progress) {
  std::set<std::string> undone;
  for (const v1::Report& report : progress.reports())
    if (report.what_case() == v1::Report::kUndoneReportId) undone.insert(report.undone_report_id());
  std::vector<const v1::Report*> standing;
  std::set<std::string> told;
  for (const v1::Report& report : progress.reports()) {
    if (report.what_case() == v1::Report::kUndoneReportId || undone.count(report.id()) > 0) continue;
    if (told.count(report.agrees_with_report_id()) > 0) continue;
    told.insert(report.id());
    standing.push_back(&report);
  }
  return standing;
}

std::vector<int> learnToday(const Composition& composition, const planning::Running& running,
                            const v1::Progress& progress, Documents& documents) {
  const auto standing = standingReports(progress);
  std::vector<int> seen;
  Lessons lessons;
  for (std::size_t d = 0; d < composition.dishes.size(); ++d) {
    const DishInfo& dish = composition.dishes[d];
    if (!dish.bread || running.plan.unserved[d]) continue;
    Lesson lesson(composition, running, static_cast<int>(d));
    for (const v1::Report* report : standing)
      if (report->dish_id() == dish.dish->id()) lesson.add(*report);
    if (!lesson.run()) continue;
    seen.push_back(static_cast<int>(d));
    const std::string& recipe = dish.recipe->id();
    if (const auto vigour = lesson.logVigour(); vigour && dish.bread->starter != nullptr)
      lessons.vigour[dish.bread->starter->id()].push_back(*vigour);
    if (const auto pace = lesson.logPace()) lessons.pace[recipe].push_back(*pace);
    if (const auto warmer = lesson.warmer())
      lessons.celsius[recipe] = std::clamp(lesson.wantedCelsius() + *warmer, 1.0, 45.0);
  }
  lessons.writeTo(documents);
  return seen;
}

void setWindowsUnderWay(Composition& composition, const planning::Running& running,
                        const std::vector<int>& dishes) {
  for (const int dish : dishes) {
    if (!composition.dishes[at(dish)].bread) continue;
    const DoughPath path(composition, running, dish);
    std::vector<int> ferments = path.bread().doughSteps;
    if (path.bread().levainStep >= 0) ferments.push_back(path.bread().levainStep);
    for (const int step : ferments) {
      if (running.states[at(step)].kind != Kind::kStarted) continue;
      const auto start = path.stateAt(step, 0, 0, 0);
      if (!start) continue;
      const int place = path.placeOf(step);
      const double from = path.startOf(step) / 60.0;
      const auto found =
          bread::forecast(path.kindOf(step, 0), *start, from, path.model().stays(place),
                          path.model().stage(step, place), {path.clock(), bread::kSearchHours, 0});
      if (!found.window) continue;
      const auto minutes = [&](double hour) { return (hour - from) * 60; };
      const int least = static_cast<int>(std::ceil(minutes(found.window->hours.start)));
      const int most = std::max(least, static_cast<int>(std::floor(minutes(found.window->hours.limit))));
      const int best = std::clamp(static_cast<int>(std::lround(minutes(found.window->best))), least, most);
      composition.problem.steps[at(step)].modes[at(running.plan.steps[at(step)].mode)].length =
          planning::LengthTable::range(least, best, most);
    }
  }
}

}  // namespace suppertide::compose
