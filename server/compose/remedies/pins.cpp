#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

// Pins on dishes that clash.
std::vector<v1::StepPin> pinsOf(const Situation& situation) {
  std::vector<v1::StepPin> pins;
  for (const v1::StepPin& pin : situation.documents.event.pins()) {
    for (const int dish : situation.dishes())
      if (situation.composition.dishes[static_cast<std::size_t>(dish)].dish->id() == pin.dish_id())
        pins.push_back(pin);
  }
  return pins;
}

Change changeOf(const v1::StepPin& pin, v1::RemedyKind kind, int size) {
  Change change;
  change.what.set_kind(kind);
  change.what.set_dish_id(pin.dish_id());
  change.what.set_step_id(absl::StrCat(pin.dish_id(), "/", pin.step_id()));
  change.what.set_size(size);
  change.group = absl::StrCat(v1::RemedyKind_Name(kind), " ", change.what.step_id());
  return change;
}

bool isSame(const v1::StepPin& a, const v1::StepPin& b) {
  return a.dish_id() == b.dish_id() && a.step_id() == b.step_id();
}

}  // namespace

std::vector<Change> otherOven(const Situation& situation) {
  std::vector<Change> changes;
  for (const v1::StepPin& pin : pinsOf(situation)) {
    if (pin.oven_id().empty()) continue;
    Change change = changeOf(pin, v1::REMEDY_KIND_OTHER_OVEN, change_size::kOtherOven);
    change.what.set_thing_id(pin.oven_id());
    change.apply = [pin](Documents& documents) {
      for (v1::StepPin& own : *documents.event.mutable_pins())
        if (isSame(own, pin)) own.clear_oven_id();
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

std::vector<Change> unpin(const Situation& situation) {
  std::vector<Change> changes;
  for (const v1::StepPin& pin : pinsOf(situation)) {
    if (!pin.has_start_time() && pin.cook_member_id().empty() && pin.place_id().empty()) continue;
    Change change = changeOf(pin, v1::REMEDY_KIND_UNPIN, change_size::kUnpin);
    change.apply = [pin](Documents& documents) {
      auto* pins = documents.event.mutable_pins();
      pins->erase(std::remove_if(pins->begin(), pins->end(),
                                 [&](const v1::StepPin& own) { return isSame(own, pin); }),
                  pins->end());
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
