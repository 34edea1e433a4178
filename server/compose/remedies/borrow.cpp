#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr int kMostOvens = 8;
constexpr double kBorrowedLitres = 30;

Change changeOf(const std::string& thing, int size, int count) {
  Change change;
  change.what.set_kind(v1::REMEDY_KIND_BORROW);
  change.what.set_thing_id(thing);
  change.what.set_count(count);
  change.what.set_size(size);
  change.group = absl::StrCat("borrow ", thing);
  return change;
}

void addOvenLike(v1::Kitchen& kitchen, const std::string& id) {
  for (const v1::Oven& oven : kitchen.ovens()) {
    if (oven.id() != id) continue;
    v1::Oven borrowed = oven;
    borrowed.set_id(absl::StrCat(id.substr(0, 54), "-borrowed"));
    borrowed.set_display_name(absl::StrCat(oven.display_name().substr(0, 40), " 2"));
    *kitchen.add_ovens() = borrowed;
    return;
  }
}

// Of resources, by what they are in the kitchen.
Change oneMore(const Situation& situation, int resource) {
  const std::string id = situation.composition.resourceIds[static_cast<std::size_t>(resource)];
  const auto& places = situation.composition.placeResource;
  if (resource == situation.composition.burnerResource) {
    Change change = changeOf(id, change_size::kBorrow, 1);
    change.apply = [](Documents& documents) {
      documents.kitchen.set_burner_count(documents.kitchen.burner_count() + 1);
    };
    return change;
  }
  if (std::find(places.begin(), places.end(), resource) != places.end()) {
    Change change = changeOf(id, change_size::kBorrowPlace, static_cast<int>(kBorrowedLitres));
    change.apply = [id](Documents& documents) {
      for (v1::Place& place : *documents.kitchen.mutable_places())
        if (place.id() == id) place.set_volume_l(place.volume_l() + kBorrowedLitres);
    };
    return change;
  }
  Change change = changeOf(id, change_size::kBorrow, 1);
  change.apply = [id](Documents& documents) {
    for (v1::Equipment& thing : *documents.kitchen.mutable_equipment())
      if (thing.id() == id) thing.set_count(thing.count() + 1);
  };
  return change;
}

}  // namespace

std::vector<Change> borrow(const Situation& situation) {
  std::vector<Change> changes;
  for (std::size_t r = 0; r < situation.composition.problem.resources.size(); ++r)
    if (situation.isOver(planning::WishKind::kCount, static_cast<int>(r)))
      changes.push_back(oneMore(situation, static_cast<int>(r)));
  if (situation.documents.kitchen.ovens_size() >= kMostOvens) return changes;
  for (std::size_t o = 0; o < situation.composition.problem.ovens.size(); ++o) {
    if (!situation.isOver(planning::WishKind::kOven, static_cast<int>(o))) continue;
    const std::string id = situation.composition.problem.ovens[o].id;
    Change change = changeOf(id, change_size::kBorrowOven, 1);
    change.apply = [id](Documents& documents) { addOvenLike(documents.kitchen, id); };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
