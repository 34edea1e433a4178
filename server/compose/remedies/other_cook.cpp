#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

bool cooksHere(const v1::Event& event, const std::string& memberId) {
  return std::any_of(event.cooks().begin(), event.cooks().end(),
                     [&](const v1::EventCook& cook) { return cook.member_id() == memberId; });
}

bool isOverHands(const Situation& situation) {
  for (std::size_t c = 0; c < situation.composition.problem.cooks.size(); ++c)
    if (situation.isOver(planning::WishKind::kHours, static_cast<int>(c))) return true;
  return situation.isOver(planning::WishKind::kHands, -1);
}

}  // namespace

std::vector<Change> otherCook(const Situation& situation) {
  std::vector<Change> changes;
  if (!isOverHands(situation)) return changes;
  for (const v1::Member& member : situation.documents.household.members()) {
    if (member.role() == v1::ROLE_READER || cooksHere(situation.documents.event, member.id())) continue;
    Change change;
    change.what.set_kind(v1::REMEDY_KIND_OTHER_COOK);
    change.what.set_thing_id(member.id());
    change.what.set_size(change_size::kOtherCook);
    change.group = absl::StrCat("cook ", member.id());
    change.apply = [id = member.id()](Documents& documents) {
      if (!cooksHere(documents.event, id)) documents.event.add_cooks()->set_member_id(id);
    };
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace suppertide::compose
