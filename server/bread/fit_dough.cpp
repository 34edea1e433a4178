#include "server/bread/fit_dough.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

#include "absl/status/status.h"
#include "server/bread/uncertainty.h"

namespace suppertide::bread {
namespace {

// What ranks ways, in hours of being off the wanted moment; all assumed.
constexpr double kUnsureHours = 0.75;       // not ready when fast, or when slow
constexpr double kOffBestShare = 0.3;       // of the hours by which levain and bulk miss their best
constexpr double kWholeHourShare = 0.01;    // of the hours it all takes
constexpr double kOtherWarmthShare = 0.05;  // of each kelvin off the wanted dough temperature
constexpr double kNearestHours = 24;        // how late the nearest may be with levain and bulk
constexpr double kUncoveredHours = 0.5;     // when none of the wanted span is covered

// The moment in `window` and in a span of work that is nearest to the window's best.
std::optional<double> workMoment(const ReadinessWindow& window, std::span<const Interval<double>> work) {
  if (work.empty()) return window.best;
  std::optional<double> found;
  for (const Interval<double>& span : work) {
    const Interval<double> both = span.intersect(window.hours);
    if (both.empty()) continue;
    const double moment = std::clamp(window.best, both.start, both.limit);
    if (!found || std::abs(moment - window.best) < std::abs(*found - window.best)) found = moment;
  }
  return found;
}

class Search {
 public:
  Search(const BreadWish& wish, const std::function<bool()>& stop) : wish_(wish), stop_(stop) {}

  // Levain and bulk end before `limitHour`.
  absl::Status run(double limitHour) {
    limitHour_ = limitHour;
    const double pitch = wish_.pitchMinutes / 60.0;
    for (double hour = wish_.earliestHour; hour < wish_.ready.limit; hour += pitch) {
      if (stop_ && stop_()) return absl::CancelledError("fit dough: nobody waits for the answer");
      if (!isWork(hour)) continue;
      BreadWay way;
      if (!wish_.levain) {
        if (const absl::Status status = mixAt(way, Culture{0, 0, 1}, hour); !status.ok()) return status;
      } else if (const absl::Status status = feedAt(hour); !status.ok()) {
        return status;
      }
    }
    return absl::OkStatus();
  }

  bool anyWay() const { return !best_.empty(); }

  BreadFit result() {
    BreadFit fit;
    for (auto& [key, way] : best_) fit.ways.push_back(std::move(way));
    for (BreadWay& way : fit.ways) judge(way);
    std::stable_sort(fit.ways.begin(), fit.ways.end(),
                     [](const BreadWay& a, const BreadWay& b) { return a.penalty < b.penalty; });
    if (fit.ways.size() > kMostWays) fit.ways.resize(kMostWays);
    if (fit.ways.empty() && nearest_) {
      judge(*nearest_);
      fit.nearest = std::move(nearest_);
    }
    return fit;
  }

 private:
  using Key = std::array<double, 4>;  // flour on 1 of starter, places of levain, bulk and proof

  bool isWork(double hour) const {
    return wish_.workHours.empty() ||
           std::any_of(wish_.workHours.begin(), wish_.workHours.end(),
                       [&](const Interval<double>& span) { return span.contains(hour); });
  }

  std::array<Stay, 1> stay(std::size_t place) const {
    return {Stay{kOpenEnded, wish_.places[place].air, wish_.places[place].surfaceW}};
  }

  // A stage in a place, with the state at its end; absent when no moment of it suits the work.
  std::optional<std::pair<BreadStage, DoughState>> stageIn(const DoughKind& kind, const DoughState& state,
                                                           double hour, std::size_t place,
                                                           const Stage& wanted) const {
    const auto stays = stay(place);
    const double search = std::min(kSearchHours, std::max(1.0, wish_.ready.limit + 24 - hour));
    const auto window = forecast(kind, state, hour, stays, wanted, {wish_.hourOfDayAtZero, search, 0}).window;
    if (!window) return std::nullopt;
    const auto end = workMoment(*window, wish_.workHours);
    if (!end) return std::nullopt;
    return std::pair{BreadStage{place, hour, *end, *window, state},
                     stateAfter(kind, state, hour, stays, *end - hour, wish_.hourOfDayAtZero)};
  }

  absl::Status feedAt(double hour) {
    const LevainChoice& levain = *wish_.levain;
    for (const LevainRatio& ratio : levain.ratios) {
      const auto fed = mixLevain(levain.kind, levain.starter, ratio, levain.celsius, levain.kilograms,
                                 levain.starterHydration);
      if (!fed.ok()) return fed.status();
      for (std::size_t place = 0; place < wish_.places.size(); ++place) {
        if (wish_.places[place].cold) continue;
        const auto ripe = stageIn(levain.kind, *fed, hour, place, levain.stage);
        if (!ripe || ripe->first.endHour >= limitHour_) continue;
        BreadWay way;
        way.ratio = ratio;
        way.levain = ripe->first;
        if (const absl::Status status = mixAt(way, cultureOf(ripe->second), ripe->first.endHour);
            !status.ok())
          return status;
      }
    }
    return absl::OkStatus();
  }

  absl::Status mixAt(BreadWay way, const Culture& culture, double hour) {
    for (const double celsius : wish_.doughCelsius) {
      Mixing mixing = wish_.mixing;
      mixing.celsius = way.doughCelsius = celsius;
      const auto mixed = mix(wish_.kind, culture, mixing);
      if (!mixed.ok()) return mixed.status();
      for (std::size_t place = 0; place < wish_.places.size(); ++place) {
        if (wish_.places[place].cold) continue;
        const auto risen = stageIn(wish_.kind, *mixed, hour, place, wish_.bulk);
        if (!risen || risen->first.endHour >= limitHour_) continue;
        way.bulk = risen->first;
        for (std::size_t last = 0; last < wish_.places.size(); ++last)
          proofIn(way, shape(wish_.kind, risen->second, wish_.pieceKilograms), last);
      }
    }
    return absl::OkStatus();
  }

  void proofIn(BreadWay way, const DoughState& shaped, std::size_t place) {
    way.retarded = wish_.places[place].cold;
    const auto window = proofWindow(way, shaped, place);
    if (!window) return;
    way.proof = {place, way.bulk.endHour, window->best, *window, shaped};
    Interval<double> usable = window->hours.intersect(wish_.ready);
    way.bestFromMiddle = window->best - (wish_.ready.start + wish_.ready.limit) / 2;
    if (window->hours.start >= wish_.ready.limit)
      way.miss = std::max(1e-3, window->hours.start - wish_.ready.limit);
    else if (window->hours.limit <= wish_.ready.start)
      way.miss = std::min(-1e-3, window->hours.limit - wish_.ready.start);
    if (way.miss != 0) {
      if (!nearest_ || std::abs(way.miss) < std::abs(nearest_->miss)) nearest_ = way;
      return;
    }
    const auto end =
        workMoment({usable, std::clamp(window->best, usable.start, usable.limit)}, wish_.workHours);
    if (!end) return;
    way.proof.endHour = *end;
    way.coveredShare = (usable.limit - usable.start) / (wish_.ready.limit - wish_.ready.start);
    way.penalty = penaltyOf(way);
    const Key key = {way.ratio ? way.ratio->flour : 0,
                     way.levain ? static_cast<double>(way.levain->place) : 0,
                     static_cast<double>(way.bulk.place), static_cast<double>(place)};
    const auto [at, isNew] = best_.try_emplace(key, way);
    if (!isNew && way.penalty < at->second.penalty) at->second = std::move(way);
  }

  std::optional<ReadinessWindow> proofWindow(const BreadWay& way, const DoughState& shaped,
                                             std::size_t place) const {
    return forecast(wish_.kind, shaped, way.bulk.endHour, stay(place),
                    way.retarded ? wish_.retard : wish_.proof, {wish_.hourOfDayAtZero, kSearchHours, 0})
        .window;
  }

  double penaltyOf(const BreadWay& way) const {
    const double startHour = way.levain ? way.levain->startHour : way.bulk.startHour;
    double off = std::abs(way.bulk.endHour - way.bulk.window.best);
    if (way.levain) off += std::abs(way.levain->endHour - way.levain->window.best);
    return std::abs(way.proof.endHour - way.proof.window.best) + kOffBestShare * off +
           kUncoveredHours * (1 - way.coveredShare) + kWholeHourShare * (way.proof.endHour - startHour) +
           kOtherWarmthShare * std::abs(way.doughCelsius - wish_.doughCelsius.front());
  }

  // Whether it is ready in the wanted span when all after the mixing is faster (or slower).
  bool readyWhen(const BreadWay& way, double sign) const {
    DoughState mixed = way.bulk.state;
    mixed.vigour *= std::exp(sign * kNinthDecile * wish_.logVigourSpread);
    const DoughState risen = stateAfter(wish_.kind, mixed, way.bulk.startHour, stay(way.bulk.place),
                                        way.bulk.endHour - way.bulk.startHour, wish_.hourOfDayAtZero);
    const auto window = proofWindow(way, shape(wish_.kind, risen, wish_.pieceKilograms), way.proof.place);
    return window && window->hours.overlaps(wish_.ready);
  }

  void judge(BreadWay& way) const {
    way.readyWhenFast = readyWhen(way, 1);
    way.readyWhenSlow = readyWhen(way, -1);
    way.penalty += kUnsureHours * ((way.readyWhenFast ? 0 : 1) + (way.readyWhenSlow ? 0 : 1));
  }

  const BreadWish& wish_;
  const std::function<bool()>& stop_;
  double limitHour_ = 0;
  std::map<Key, BreadWay> best_;
  std::optional<BreadWay> nearest_;
};

}  // namespace

absl::StatusOr<BreadFit> fitBread(const BreadWish& wish, const std::function<bool()>& stop) {
  if (wish.ready.empty()) return absl::InvalidArgumentError("fit dough: the wanted span is empty");
  if (wish.places.empty()) return absl::InvalidArgumentError("fit dough: there is no place");
  if (wish.doughCelsius.empty())
    return absl::InvalidArgumentError("fit dough: there is no dough temperature to try");
  if (wish.pitchMinutes <= 0) return absl::InvalidArgumentError("fit dough: the pitch is not above 0");
  Search search(wish, stop);
  if (const absl::Status status = search.run(wish.ready.limit); !status.ok()) return status;
  if (!search.anyWay())
    if (const absl::Status status = search.run(wish.ready.limit + kNearestHours); !status.ok()) return status;
  return search.result();
}

}  // namespace suppertide::bread
