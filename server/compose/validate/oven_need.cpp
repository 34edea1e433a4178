// What a step asks of an oven, and what a ferment asks of its dough.
#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kLeastSetpoint = 40;
constexpr int kMostSetpoint = 350;
constexpr int kMostPhases = 10;
constexpr int kMostLoads = 6;
constexpr int kMostRetardMinutes = 7 * kMinutesPerDay;
// As the documents say for absent retard limits.
constexpr int kUsualLeastRetard = 8 * kMinutesPerHour;
constexpr int kUsualMostRetard = 24 * kMinutesPerHour;

void checkSetpoints(const Checker& here, const v1::OvenNeed& need) {
  const int own = need.setpoint_celsius();
  const bool good = here.at("setpointCelsius").range(own, kLeastSetpoint, kMostSetpoint, "°C");
  if (need.has_min_setpoint_celsius()) {
    const int least = need.min_setpoint_celsius();
    const Checker field = here.at("minSetpointCelsius");
    if (field.range(least, kLeastSetpoint, kMostSetpoint, "°C") && good && least > own)
      field.wrong(absl::StrCat(least), absl::StrCat("must not be above the recipe's own ", own, " °C"));
  }
  if (need.has_max_setpoint_celsius()) {
    const int most = need.max_setpoint_celsius();
    const Checker field = here.at("maxSetpointCelsius");
    if (field.range(most, kLeastSetpoint, kMostSetpoint, "°C") && good && most < own)
      field.wrong(absl::StrCat(most), absl::StrCat("must not be below the recipe's own ", own, " °C"));
  }
}

void checkCore(const Checker& here, const v1::OvenNeed& need) {
  if (need.has_start_core_celsius() != need.has_end_core_celsius()) {
    here.at(need.has_start_core_celsius() ? "endCoreCelsius" : "startCoreCelsius")
        .wrong("", "the centre's temperature must be given both for going in and for done, or for neither");
    return;
  }
  if (!need.has_start_core_celsius()) return;
  const double start = need.start_core_celsius();
  const double end = need.end_core_celsius();
  if (!here.at("startCoreCelsius").range(start, -40, 100, "°C")) return;
  if (!(end > start && end < need.setpoint_celsius()))
    here.at("endCoreCelsius")
        .wrong(absl::StrCat(end),
               absl::StrCat("must be above the ", start, " °C it goes in with and below the oven's ",
                            need.setpoint_celsius(), " °C"));
}

void checkPan(const Checker& here, const v1::Pan& pan) {
  here.at("name").optionalText(pan.name());
  here.at("widthMm").range(pan.width_mm(), 30, 1000, "mm");
  here.at("depthMm").range(pan.depth_mm(), 30, 1000, "mm");
  here.at("heightMm").range(pan.height_mm(), 30, 1000, "mm");
  here.at("count").range(pan.count(), 0, 50, "pans");
}

// All phases together, as likely.
std::int64_t bakeMinutes(const v1::OvenNeed& need) {
  std::int64_t minutes = minutesIn(need.duration().likely());
  for (const v1::OvenPhase& phase : need.later_phases()) minutes += minutesIn(phase.duration());
  return minutes;
}

void checkSteamAndLid(const Checker& here, const v1::OvenNeed& need) {
  const std::int64_t whole = bakeMinutes(need);
  const auto within = [&](const Checker& field, const google::protobuf::Duration& duration) {
    if (field.minutes(duration, 1, kMinutesPerDay) && minutesIn(duration) >= whole)
      field.wrong(minutesAsText(minutesIn(duration)),
                  absl::StrCat("must be less than the bake, ", minutesAsText(whole)));
  };
  if (need.has_steam_duration()) within(here.at("steamDuration"), need.steam_duration());
  if (need.has_steam_duration() && !need.steam())
    here.at("steamDuration").wrong(minutesAsText(minutesIn(need.steam_duration())), "only with steam: true");
  if (need.has_lid_duration()) within(here.at("lidDuration"), need.lid_duration());
}

}  // namespace

void checkOvenNeed(const Checker& here, const v1::OvenNeed& need) {
  checkSetpoints(here, need);
  here.at("duration").spread(need.duration(), 1, kMinutesPerDay);
  here.at("foodClass").known(need.food_class(), "a class of food");
  checkCore(here, need);
  here.at("thicknessMm").range(need.thickness_mm(), 0, 500, "mm");
  if (need.has_pan()) checkPan(here.at("pan"), need.pan());
  checkSteamAndLid(here, need);
  here.at("pieceMassG").zeroOrRange(need.piece_mass_g(), 20, 5000, "g");
  here.at("mostLoads").range(need.most_loads(), 0, kMostLoads, "loads");
  if (!here.at("laterPhases").count(need.later_phases_size(), 0, kMostPhases, "later temperatures")) return;
  for (int i = 0; i < need.later_phases_size(); ++i) {
    const Checker phase = here.at("laterPhases", i);
    phase.at("setpointCelsius")
        .range(need.later_phases(i).setpoint_celsius(), kLeastSetpoint, kMostSetpoint, "°C");
    phase.at("duration").minutes(need.later_phases(i).duration(), 1, kMinutesPerDay);
  }
}

void checkFermentNeed(const Checker& here, const v1::FermentNeed& need) {
  here.at("stage").chosen(need.stage(), "a stage of the dough: levain, preferment, bulk or proof");
  bool good = here.at("lowRise").zeroOrRange(need.low_rise(), 1, 6);
  good = here.at("wantedRise").zeroOrRange(need.wanted_rise(), 1, 6) && good;
  good = here.at("highRise").zeroOrRange(need.high_rise(), 1, 6) && good;
  const auto ordered = [](double low, double high) { return low == 0 || high == 0 || low <= high; };
  if (good && !ordered(need.low_rise(), need.wanted_rise()))
    here.at("wantedRise")
        .wrong(absl::StrCat(need.wanted_rise()),
               absl::StrCat("must not be below the low rise, ", need.low_rise()));
  const double below = need.wanted_rise() != 0 ? need.wanted_rise() : need.low_rise();
  if (good && !ordered(below, need.high_rise()))
    here.at("highRise").wrong(absl::StrCat(need.high_rise()), absl::StrCat("must not be below ", below));
  const auto least = need.has_least_retard() ? minutesIn(need.least_retard()) : kUsualLeastRetard;
  const auto most = need.has_most_retard() ? minutesIn(need.most_retard()) : kUsualMostRetard;
  if (!here.at("leastRetard").minutes(need.least_retard(), 0, kMostRetardMinutes)) return;
  if (!here.at("mostRetard").minutes(need.most_retard(), 0, kMostRetardMinutes)) return;
  if (least > most)
    here.at(need.has_most_retard() ? "mostRetard" : "leastRetard")
        .wrong(minutesAsText(need.has_most_retard() ? most : least),
               absl::StrCat("the retard's limits must be in order; they are ", minutesAsText(least), " and ",
                            minutesAsText(most)));
}

}  // namespace suppertide::compose
