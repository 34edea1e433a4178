#include "server/bread/levain_choice.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <tuple>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {
namespace {

// What both wishes ask of one place and one start state.
struct Search {
  const DoughKind& kind;
  const DoughState& state;
  const FermentPlace& place;
  const Stage& stage;
  Interval<double> ready;
  const std::vector<Interval<double>>& startHours;
  const Uncertainty& uncertainty;
  double hourOfDayAtZero;
  double longestHours;
  int pitchMinutes;
};

struct Found {
  double startHour = 0;
  ReadinessWindow window;
  ChoiceReasons reasons;
};

ReadinessWindow laterBy(ReadinessWindow window, double hours) {
  window.hours.start += hours;
  window.hours.limit += hours;
  window.best += hours;
  return window;
}

double coveredShare(const ReadinessWindow& window, const Interval<double>& ready) {
  const Interval<double> both = window.hours.intersect(ready);
  return both.empty() ? 0 : (both.limit - both.start) / (ready.limit - ready.start);
}

double fromMiddle(const ReadinessWindow& window, const Interval<double>& ready) {
  return window.best - (ready.start + ready.limit) / 2;
}

// Smaller is better. Shares are compared in twentieths, lest a hair of cover beat a
// far better centred option.
std::tuple<int, int, double> rank(const ChoiceReasons& reasons) {
  return {-static_cast<int>(std::lround(20 * reasons.coveredShare)),
          -(static_cast<int>(reasons.readyWhenFast) + static_cast<int>(reasons.readyWhenSlow)),
          std::abs(reasons.bestFromMiddle)};
}

bool isAllowed(const std::vector<Interval<double>>& hours, double hour) {
  return hours.empty() ||
         std::any_of(hours.begin(), hours.end(), [&](const auto& span) { return span.contains(hour); });
}

// The mean temperature around it between two hours.
double meanAir(const std::vector<Stay>& stays, double from, double to, double hourOfDayAtZero) {
  constexpr int kPoints = 240;
  double sum = 0;
  std::size_t stay = 0;
  double stayLimit = from + stays[0].hours;
  for (int i = 0; i < kPoints; ++i) {
    const double hour = from + (to - from) * (i + 0.5) / kPoints;
    while (hour >= stayLimit && stay + 1 < stays.size()) stayLimit += stays[++stay].hours;
    sum += stays[stay].air.at(hour + hourOfDayAtZero);
  }
  return sum / kPoints;
}

ChoiceReasons reasonsOf(const Search& search, const std::vector<Stay>& stays, double startHour,
                        const ReadinessWindow& window) {
  const ForecastBand band =
      forecastBand(search.kind, search.state, startHour, stays, search.stage, search.uncertainty,
                   {search.hourOfDayAtZero, search.longestHours, 0});
  ChoiceReasons reasons;
  reasons.coveredShare = coveredShare(window, search.ready);
  reasons.bestFromMiddle = fromMiddle(window, search.ready);
  reasons.readyBefore = search.ready.start - window.hours.start;
  reasons.readyAfter = window.hours.limit - search.ready.limit;
  reasons.readyWhenFast = band.fast && band.fast->hours.overlaps(search.ready);
  reasons.readyWhenSlow = band.slow && band.slow->hours.overlaps(search.ready);
  reasons.hoursToBest = window.best - startHour;
  reasons.meanAirCelsius = meanAir(stays, startHour, window.best, search.hourOfDayAtZero);
  return reasons;
}

// Starts worth trying: whole pitches of the axis and the first moment of each allowed span.
std::vector<double> candidateStarts(const Search& search) {
  const double pitch = search.pitchMinutes / 60.0;
  const double first = search.ready.start - search.longestHours;
  std::vector<double> starts;
  for (const Interval<double>& span : search.startHours) {
    if (span.start >= first && span.start < search.ready.limit) starts.push_back(span.start);
  }
  for (double k = std::ceil(first / pitch); k * pitch < search.ready.limit; ++k) {
    if (isAllowed(search.startHours, k * pitch)) starts.push_back(k * pitch);
  }
  return starts;
}

// Windows counted from the start, by the start's time of day: places repeat daily.
class WindowsAfterStart {
 public:
  WindowsAfterStart(const Search& search, const std::vector<Stay>& stays)
      : search_(search),
        stays_(stays),
        constant_(std::all_of(stays.begin(), stays.end(), [](const Stay& s) { return s.air.isConstant(); })) {
  }

  std::optional<ReadinessWindow> at(double start) {
    const long long key = constant_ ? 0 : std::llround(std::fmod(start, 24.0) * 1e6);
    auto [known, isNew] = known_.try_emplace(key);
    if (isNew) {
      known->second = forecast(search_.kind, search_.state, start, stays_, search_.stage,
                               {search_.hourOfDayAtZero, search_.longestHours, 0})
                          .window;
      if (known->second) known->second = laterBy(*known->second, -start);
    }
    return known->second ? std::optional(laterBy(*known->second, start)) : std::nullopt;
  }

 private:
  const Search& search_;
  const std::vector<Stay>& stays_;
  bool constant_;
  std::map<long long, std::optional<ReadinessWindow>> known_;
};

// The start that suits best, if any start lets it be ready at some wanted moment.
std::optional<Found> bestStart(const Search& search) {
  std::vector<Stay> stays = search.place.first;
  stays.push_back({kOpenEnded, search.place.air, search.place.surfaceW});
  WindowsAfterStart windows(search, stays);
  std::optional<Found> best;
  for (double start : candidateStarts(search)) {
    const auto window = windows.at(start);
    if (!window || !window->hours.overlaps(search.ready)) continue;
    Found found = {start, *window, {}};
    found.reasons.coveredShare = coveredShare(*window, search.ready);
    found.reasons.bestFromMiddle = fromMiddle(*window, search.ready);
    if (!best || rank(found.reasons) < rank(best->reasons)) best = found;
  }
  if (best) best->reasons = reasonsOf(search, stays, best->startHour, best->window);
  return best;
}

absl::Status checkWish(const char* what, const Interval<double>& ready,
                       const std::vector<FermentPlace>& places, double longestHours, int pitchMinutes) {
  if (ready.empty()) {
    return absl::InvalidArgumentError(
        absl::StrCat(what, ": the wanted hours ", ready.start, " to ", ready.limit, " are empty"));
  }
  if (places.empty()) return absl::InvalidArgumentError(absl::StrCat(what, ": there is no place"));
  if (!(longestHours > 0 && longestHours <= 240) || pitchMinutes <= 0) {
    return absl::InvalidArgumentError(absl::StrCat(what, ": longest hours ", longestHours,
                                                   " is not in (0, 240] or pitch ", pitchMinutes,
                                                   " is not above 0"));
  }
  return absl::OkStatus();
}

template <typename Option>
void sortByRank(std::vector<Option>& options) {
  std::stable_sort(options.begin(), options.end(),
                   [](const Option& a, const Option& b) { return rank(a.reasons) < rank(b.reasons); });
}

}  // namespace

std::vector<FermentPlace> retardsOf(const FermentPlace& before, double hoursBefore, const FermentPlace& cold,
                                    double least, double most, const FermentPlace& last, double pitchHours) {
  std::vector<FermentPlace> plans;
  if (!(pitchHours > 0)) return plans;
  for (double hours = least; hours <= most + 1e-9; hours += pitchHours) {
    plans.push_back(last);
    plans.back().first = {{hoursBefore, before.air, before.surfaceW}, {hours, cold.air, cold.surfaceW}};
  }
  return plans;
}

absl::StatusOr<std::vector<LevainOption>> levainChoices(const LevainWish& wish) {
  absl::Status status =
      checkWish("choose levain", wish.ready, wish.places, wish.longestHours, wish.pitchMinutes);
  if (!status.ok()) return status;
  const DoughKind kind = withComposition(kLevainKind, wish.wholeGrainShare, 0, 0);
  std::vector<LevainOption> options;
  for (const LevainRatio& ratio : wish.ratios) {
    const auto state = mixLevain(kind, wish.starter, ratio, wish.mixedCelsius, wish.kilograms);
    if (!state.ok()) return state.status();
    for (std::size_t place = 0; place < wish.places.size(); ++place) {
      const Search search = {
          kind,           *state,           wish.places[place],   wish.stage,        wish.ready,
          wish.workHours, wish.uncertainty, wish.hourOfDayAtZero, wish.longestHours, wish.pitchMinutes};
      const auto found = bestStart(search);
      if (found) options.push_back({ratio, place, found->startHour, found->window, found->reasons});
    }
  }
  sortByRank(options);
  return options;
}

absl::StatusOr<std::vector<DoughOption>> doughChoices(const DoughWish& wish) {
  absl::Status status =
      checkWish("choose a place for dough", wish.ready, wish.places, wish.longestHours, wish.pitchMinutes);
  if (!status.ok()) return status;
  std::vector<DoughOption> options;
  for (std::size_t place = 0; place < wish.places.size(); ++place) {
    const Search search = {wish.kind,         wish.state,       wish.places[place], wish.stage,
                           wish.ready,        wish.startHours,  wish.uncertainty,   wish.hourOfDayAtZero,
                           wish.longestHours, wish.pitchMinutes};
    const auto found = bestStart(search);
    if (found) options.push_back({place, found->startHour, found->window, found->reasons});
  }
  sortByRank(options);
  return options;
}

}  // namespace suppertide::bread
