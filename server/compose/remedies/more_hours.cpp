#include <algorithm>
#include <cstdlib>

#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr int kMinutesMore[] = {60, 120};
constexpr int kDay = 24 * 60;

int minuteOf(const std::string& clock) {
  return std::atoi(clock.substr(0, 2).c_str()) * 60 + std::atoi(clock.substr(3, 2).c_str());
}

std::string clockOf(int minute) {
  return absl::StrCat(absl::Dec(minute / 60, absl::kZeroPad2), ":", absl::Dec(minute % 60, absl::kZeroPad2));
}

// Up earlier and to bed later, on the same day. Those awake past midnight stay as they are.
void stretchAwake(v1::Member& member, int minutes) {
  const bool given = member.has_awake();
  const int start = minuteOf(given ? member.awake().start() : "07:00");
  const int limit = minuteOf(given ? member.awake().limit() : "22:30");
  if (limit <= start) return;
  member.mutable_awake()->set_start(clockOf(std::max(0, start - minutes)));
  member.mutable_awake()->set_limit(clockOf(std::min(kDay - 1, limit + minutes)));
}

void stretchAtHome(v1::EventCook& cook, int minutes) {
  for (v1::TimeSpan& span : *cook.mutable_available()) {
    span.mutable_start()->set_seconds(span.start().seconds() - minutes * 60);
    span.mutable_limit()->set_seconds(span.limit().seconds() + minutes * 60);
  }
}

}  // namespace

std::vector<Change> moreHours(const Situation& situation) {
  std::vector<Change> changes;
  for (std::size_t c = 0; c < situation.composition.problem.cooks.size(); ++c) {
    if (!situation.isOver(planning::WishKind::kHours, static_cast<int>(c))) continue;
    const std::string id = situation.composition.problem.cooks[c].id;
    for (const int minutes : kMinutesMore) {
      Change change;
      change.what.set_kind(v1::REMEDY_KIND_HOURS);
      change.what.set_thing_id(id);
      *change.what.mutable_duration() = durationOf(minutes);
      change.what.set_size(change_size::kHours + 2 * minutes / 15);
      change.group = absl::StrCat("hours ", id);
      change.apply = [id, minutes](Documents& documents) {
        for (v1::Member& member : *documents.household.mutable_members())
          if (member.id() == id) stretchAwake(member, minutes);
        for (v1::EventCook& cook : *documents.event.mutable_cooks())
          if (cook.member_id() == id) stretchAtHome(cook, minutes);
      };
      changes.push_back(std::move(change));
    }
  }
  return changes;
}

}  // namespace suppertide::compose
