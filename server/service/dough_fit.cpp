#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "server/bread/fit_dough.h"
#include "server/bread/levain_choice.h"
#include "server/service/dough_reading.h"
#include "server/service/validate_doughs.h"

namespace suppertide::compose {
namespace {

constexpr double kNoon = 12;
// Dough temperatures tried beside the wanted one, kelvin off it; assumed to be borne by any dough.
constexpr double kCoolerDough = 3;
constexpr double kWarmerDough = 2;
constexpr double kPrefermentSlackHours = 0.25;  // a preferment may be this far from its use

class Fitter {
 public:
  Fitter(const v1::FitDoughRequest& request, BreadRecipe recipe, const absl::TimeZone& zone)
      : request_(request), recipe_(std::move(recipe)), axis_(originOf(request), zone) {}

  absl::StatusOr<v1::FitDoughResponse> run(const StopAsked& stop) {
    const bread::BreadWish wish = wishOf();
    const auto fit = bread::fitBread(wish, stop);
    if (!fit.ok()) return fit.status();
    v1::FitDoughResponse answer;
    for (const bread::BreadWay& way : fit->ways) {
      if (stop && stop()) return absl::CancelledError("fit dough: nobody waits for the answer");
      write(wish, way, *answer.add_ways(), *answer.add_reasons());
    }
    if (fit->nearest)
      write(wish, *fit->nearest, *answer.mutable_nearest(), *answer.mutable_nearest_reasons());
    return answer;
  }

 private:
  static google::protobuf::Timestamp originOf(const v1::FitDoughRequest& request) {
    if (request.has_earliest_start_time()) return request.earliest_start_time();
    google::protobuf::Timestamp origin = request.ready().start();
    origin.set_seconds(origin.seconds() - kMostDoughHours * 3600);
    return origin;
  }

  double hourOf(const google::protobuf::Timestamp& time) const { return axis_.minuteOf(time) / 60.0; }
  double roomCelsius() const {
    for (const v1::PlaceStay& place : request_.places())
      if (place.kind() == v1::PLACE_KIND_COUNTER)
        return airOf(place.temperature(), place.learned_warmth()).at(kNoon);
    return kUsualRoomCelsius;
  }

  bread::BreadWish wishOf() const {
    bread::BreadWish wish;
    wish.ready = {hourOf(request_.ready().start()), hourOf(request_.ready().limit())};
    wish.hourOfDayAtZero = axis_.clockAtZero() / 60.0;
    wish.workHours = workHours();
    for (const v1::PlaceStay& place : request_.places())
      wish.places.push_back({airOf(place.temperature(), place.learned_warmth()),
                             place.kind() == v1::PLACE_KIND_FRIDGE, bread::kStillAir});
    if (recipe_.hasLevain()) wish.levain = levain();
    const double celsius = recipe_.doughCelsius();
    wish.kind = recipe_.kind();
    wish.mixing = recipe_.mixing(celsius);
    wish.doughCelsius = {celsius, celsius - kCoolerDough, celsius + kWarmerDough};
    wish.pieceKilograms = recipe_.from().piece_mass_g() / 1000;
    wish.bulk = recipe_.bulk();
    wish.proof = recipe_.proof();
    wish.logVigourSpread = recipe_.uncertainty().logVigour;
    return wish;
  }

  bread::LevainChoice levain() const {
    bread::LevainChoice levain;
    levain.kind = recipe_.levainKind();
    levain.starter = recipe_.starterCulture();
    levain.ratios.clear();
    for (const double flour : recipe_.flourPerStarter()) levain.ratios.push_back(recipe_.ratio(flour));
    levain.celsius = BreadRecipe::fedCelsius(roomCelsius());
    levain.kilograms = recipe_.levainBuildGrams() / 1000;
    levain.starterHydration = recipe_.starterHydration();
    return levain;
  }

  std::vector<Interval<double>> workHours() const {
    std::vector<Interval<double>> spans;
    if (!request_.has_work()) return spans;
    const int limit = axis_.minuteOf(request_.ready().limit());
    const std::string from = request_.work().start(), until = request_.work().limit();
    for (int day = -1; day < axis_.daysUpTo(limit); ++day)
      spans.push_back({axis_.minuteOfClock(day, from) / 60.0,
                       axis_.minuteOfClock(until < from ? day + 1 : day, until) / 60.0});
    return spans;
  }

  google::protobuf::Timestamp timeOf(double hour) const {
    return axis_.timeOf(static_cast<int>(std::lround(hour * 60)));
  }

  v1::FermentForecast& writeStage(v1::FermentStage kind, const bread::BreadStage& stage,
                                  const bread::Stage& wanted, v1::DoughForecast& told) const {
    v1::FermentForecast& one = *told.add_stages();
    one.set_stage(kind);
    one.set_place_id(absl::StrCat("places[", stage.place, "]"));
    *one.mutable_start_time() = timeOf(stage.startHour);
    *one.mutable_end_time() = timeOf(stage.endHour);
    *one.mutable_ready_from_time() = timeOf(stage.window.hours.start);
    *one.mutable_best_time() = timeOf(stage.window.best);
    *one.mutable_ready_until_time() = timeOf(stage.window.hours.limit);
    one.set_low_rise(wanted.lowRise);
    one.set_wanted_rise(wanted.wantedRise);
    if (wanted.highRise < bread::kNoHighRise) one.set_high_rise(wanted.highRise);
    return one;
  }

  // Where and when to mix a preferment so that it is ripe at the mixing; absent when no hour of work does.
  std::optional<bread::BreadStage> prefermentFor(const bread::BreadWish& wish, int index, double mixHour) {
    const auto known = ripeFor_.find({index, std::lround(mixHour * 60)});
    if (known != ripeFor_.end()) return known->second;
    bread::DoughWish own;
    own.ready = {mixHour - kPrefermentSlackHours, mixHour + kPrefermentSlackHours};
    own.startHours = wish.workHours;
    own.hourOfDayAtZero = wish.hourOfDayAtZero;
    own.pitchMinutes = wish.pitchMinutes;
    own.longestHours = std::min(own.longestHours, mixHour - wish.earliestHour);
    for (std::size_t p = 0; p < wish.places.size(); ++p)
      if (!wish.places[p].cold)
        own.places.push_back({absl::StrCat(p), wish.places[p].air, wish.places[p].surfaceW, {}});
    std::optional<bread::BreadStage>& found = ripeFor_[{index, std::lround(mixHour * 60)}];
    const auto mixed = recipe_.mixedPreferment(index, BreadRecipe::fedCelsius(roomCelsius()));
    if (!mixed.ok()) return found;
    own.kind = recipe_.prefermentKind(index);
    own.state = *mixed;
    own.stage = recipe_.prefermentStage(index);
    const auto options = bread::doughChoices(own);
    if (!options.ok()) return found;
    const auto best = std::find_if(options->begin(), options->end(), [&](const bread::DoughOption& option) {
      return option.startHour >= wish.earliestHour;
    });
    if (best == options->end()) return found;
    const std::size_t place = std::stoul(own.places[best->place].name);
    return found = bread::BreadStage{place, best->startHour, mixHour, best->window, own.state};
  }

  void writePreferments(const bread::BreadWish& wish, double mixHour, v1::DoughForecast& told,
                        v1::DoughWayReasons& reasons) {
    for (int index = 0; index < recipe_.prefermentCount(); ++index) {
      const std::string& id = request_.formula().preferments(index).id();
      if (const auto stage = prefermentFor(wish, index, mixHour))
        writeStage(v1::FERMENT_STAGE_PREFERMENT, *stage, recipe_.prefermentStage(index), told)
            .set_preferment_id(id);
      else
        reasons.add_unripe_preferment_ids(id);
    }
  }

  void write(const bread::BreadWish& wish, const bread::BreadWay& way, v1::DoughForecast& told,
             v1::DoughWayReasons& reasons) {
    if (way.levain) writeStage(v1::FERMENT_STAGE_LEVAIN, *way.levain, wish.levain->stage, told);
    writePreferments(wish, way.bulk.startHour, told, reasons);
    writeStage(v1::FERMENT_STAGE_BULK, way.bulk, wish.bulk, told);
    writeStage(v1::FERMENT_STAGE_PROOF, way.proof, way.retarded ? wish.retard : wish.proof, told);
    if (way.ratio) told.set_levain_ratio(recipe_.ratioText(way.ratio->flour));
    describeDough(recipe_, told);
    const double room = roomCelsius();
    const WaterWays water = recipe_.water({room, room, room, room, way.doughCelsius});
    told.set_water_celsius(std::round(water.balance.waterCelsius));
    told.set_ice_g(std::round(water.balance.iceGrams));
    told.set_water_correction_k(water.correction.kelvin);
    std::int64_t begun = told.stages(0).start_time().seconds();
    for (const v1::FermentForecast& stage : told.stages())
      begun = std::min<std::int64_t>(begun, stage.start_time().seconds());
    *reasons.mutable_best_from_middle() = durationOf(std::lround(way.bestFromMiddle * 60));
    *reasons.mutable_miss() = durationOf(std::lround(way.miss * 60));
    reasons.set_covered_share(way.coveredShare);
    reasons.set_ready_when_fast(way.readyWhenFast);
    reasons.set_ready_when_slow(way.readyWhenSlow);
    *reasons.mutable_whole() = durationOf((timeOf(way.proof.endHour).seconds() - begun) / 60);
    if (way.retarded)
      *reasons.mutable_retard() = durationOf(std::lround((way.proof.endHour - way.proof.startHour) * 60));
    reasons.set_dough_celsius(way.doughCelsius);
  }

  const v1::FitDoughRequest& request_;
  BreadRecipe recipe_;
  TimeAxis axis_;
  std::map<std::pair<int, long>, std::optional<bread::BreadStage>> ripeFor_;  // by preferment and minute
};

}  // namespace

absl::StatusOr<v1::FitDoughResponse> fitDough(const v1::FitDoughRequest& request, const StopAsked& stop) {
  const auto zone = zoneOf(request.time_zone());
  if (!zone.ok()) return zone.status();
  auto recipe = BreadRecipe::of(request.formula(), &request.starter());
  if (!recipe.ok()) return recipe.status();
  return Fitter(request, *std::move(recipe), *zone).run(stop);
}

}  // namespace suppertide::compose
