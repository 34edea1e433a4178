// When the cooks of an event are up and in the house.
#include <algorithm>
#include <cstdlib>

#include "absl/time/civil_time.h"
#include "server/compose/menu/uses.h"

namespace suppertide::compose {
namespace {

using Span = Interval<std::int64_t>;

constexpr int kDaysBefore = 6;  // as long as a large bird thaws

// "06:30" and "24:00" on a day.
std::int64_t secondsAt(absl::CivilDay day, const std::string& clock, const absl::TimeZone& zone) {
  const int hours = std::atoi(clock.c_str());
  const int minutes = clock.size() >= 5 ? std::atoi(clock.c_str() + 3) : 0;
  return absl::ToUnixSeconds(
      absl::FromCivil(absl::CivilMinute(day.year(), day.month(), day.day(), hours, minutes), zone));
}

std::vector<Span> awakeOf(const v1::Member& member, absl::CivilDay from, absl::CivilDay to,
                          const absl::TimeZone& zone) {
  const std::string start = member.has_awake() ? member.awake().start() : "07:00";
  const std::string limit = member.has_awake() ? member.awake().limit() : "22:30";
  std::vector<Span> spans;
  for (absl::CivilDay day = from; day <= to; ++day)
    spans.push_back({secondsAt(day, start, zone), secondsAt(limit <= start ? day + 1 : day, limit, zone)});
  return spans;
}

std::vector<Span> thereOf(const v1::EventCook& cook, const std::vector<Span>& awake) {
  if (cook.available().empty()) return awake;
  std::vector<Span> there;
  for (const v1::TimeSpan& span : cook.available())
    for (const Span& day : awake) {
      const Span cut = day.intersect({span.start().seconds(), span.limit().seconds()});
      if (!cut.empty()) there.push_back(cut);
    }
  return there;
}

}  // namespace

std::vector<Hands> handsOf(const Menu& menu) {
  std::vector<Hands> hands;
  if (menu.plan == nullptr || menu.plan->steps().empty()) return hands;
  const absl::TimeZone zone = zoneOf(menu);
  std::int64_t last = 0;
  for (const v1::PlannedStep& step : menu.plan->steps()) last = std::max(last, step.end_time().seconds());
  const auto dayOf = [&](std::int64_t seconds) {
    return absl::ToCivilDay(absl::FromUnixSeconds(seconds), zone);
  };
  const absl::CivilDay from = dayOf(menu.plan->steps(0).start_time().seconds()) - kDaysBefore;
  for (const v1::EventCook& cook : menu.event->cooks())
    for (const v1::Member& member : menu.household->members())
      if (member.id() == cook.member_id())
        hands.push_back({member.id(), thereOf(cook, awakeOf(member, from, dayOf(last), zone))});
  return hands;
}

}  // namespace suppertide::compose
