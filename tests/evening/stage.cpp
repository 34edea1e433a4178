#include "tests/evening/stage.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/time/civil_time.h"

namespace suppertide::evening {

Stage::Stage(const v1::Bundle& from, std::uint64_t seed)
    : bundle(from),
      event(from.events(0)),
      truth(seed),
      begin(from.plans(0).steps(0).start_time().seconds() - 30 * kMinute),
      party(from, begin) {
  readNames();
  if (!absl::LoadTimeZone(event.time_zone().empty() ? bundle.household().time_zone() : event.time_zone(),
                          &zone_))
    zone_ = absl::UTCTimeZone();
  for (const v1::Course& course : event.courses()) last = std::max(last, course.serving_time().seconds());
}

void Stage::readNames() {
  for (const v1::Member& member : bundle.household().members()) names_[member.id()] = member.display_name();
  for (const v1::Dish& dish : event.dishes()) {
    names_[dish.id()] = dish.display_name();
    for (const v1::Recipe& recipe : bundle.recipes())
      if (dish.display_name().empty() && recipe.id() == dish.recipe_id())
        names_[dish.id()] = recipe.display_name();
  }
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Oven& oven : kitchen.ovens()) names_[oven.id()] = oven.display_name();
}

const v1::PlannedStep* Stage::find(const v1::Plan& plan, const std::string& id) {
  for (const v1::PlannedStep& step : plan.steps())
    if (step.id() == id) return &step;
  return nullptr;
}

const v1::Oven* Stage::ovenCalled(const std::string& id) const {
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Oven& oven : kitchen.ovens())
      if (oven.id() == id) return &oven;
  return nullptr;
}

std::string Stage::stamped(const std::string& line, const char* gap) const {
  return absl::StrCat(absl::FormatTime("%a %H:%M", absl::FromUnixSeconds(now), zone_), gap, line);
}

std::string Stage::clock(std::int64_t seconds) const {
  return absl::FormatTime("%H:%M", absl::FromUnixSeconds(seconds), zone_);
}

std::string Stage::name(const std::string& id) const {
  const auto found = names_.find(id);
  return found == names_.end() ? id : found->second;
}

std::string Stage::stepName(const v1::PlannedStep& step) const {
  return absl::StrCat(step.title(), " · ", name(step.dish_id()));
}

int Stage::hour() const {
  return absl::ToCivilHour(absl::FromUnixSeconds(now), zone_).hour();
}

}  // namespace suppertide::evening
