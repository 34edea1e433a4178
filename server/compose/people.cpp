#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

using Span = Interval<planning::Minute>;

v1::DayHours orElse(const v1::DayHours& hours, bool given, const char* start, const char* limit) {
  if (given) return hours;
  v1::DayHours usual;
  usual.set_start(start);
  usual.set_limit(limit);
  return usual;
}

// The same hours on each day that the axis touches, cut to [0, limit).
std::vector<Span> daily(const TimeAxis& axis, const v1::DayHours& hours, planning::Minute limit) {
  const bool overMidnight = hours.limit() <= hours.start();
  std::vector<Span> spans;
  for (int day = -1; day <= axis.daysUpTo(limit); ++day) {
    const Span span{axis.minuteOfClock(day, hours.start()),
                    axis.minuteOfClock(day + (overMidnight ? 1 : 0), hours.limit())};
    const Span cut = span.intersect({0, limit});
    if (!cut.empty()) spans.push_back(cut);
  }
  return spans;
}

// Everything in `spans` that also lies in `within`; both ascending and disjoint.
std::vector<Span> common(const std::vector<Span>& spans, const std::vector<Span>& within) {
  std::vector<Span> both;
  for (const Span& a : spans)
    for (const Span& b : within)
      if (const Span cut = a.intersect(b); !cut.empty()) both.push_back(cut);
  std::sort(both.begin(), both.end(), [](const Span& a, const Span& b) { return a.start < b.start; });
  return both;
}

// What of [0, limit) is not in `spans`, which are ascending and disjoint.
std::vector<Span> rest(const std::vector<Span>& spans, planning::Minute limit) {
  std::vector<Span> holes;
  planning::Minute from = 0;
  for (const Span& span : spans) {
    if (from < span.start) holes.push_back({from, span.start});
    from = std::max(from, span.limit);
  }
  if (from < limit) holes.push_back({from, limit});
  return holes;
}

std::vector<Span> merged(std::vector<Span> spans) {
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.start < b.start; });
  std::vector<Span> whole;
  for (const Span& span : spans) {
    if (!whole.empty() && span.start <= whole.back().limit)
      whole.back().limit = std::max(whole.back().limit, span.limit);
    else
      whole.push_back(span);
  }
  return whole;
}

}  // namespace

absl::Status addPeople(Composition& composition) {
  const Documents& documents = composition.documents;
  const planning::Minute limit = composition.problem.limit;
  for (const v1::EventCook& here : documents.event.cooks()) {
    const auto& members = documents.household.members();
    const auto member = std::find_if(members.begin(), members.end(),
                                     [&](const v1::Member& m) { return m.id() == here.member_id(); });
    if (member == members.end())
      return absl::InvalidArgumentError(absl::StrCat("cook ", here.member_id(), " is not in the household"));
    planning::Cook cook;
    cook.id = member->id();
    cook.share = member->has_share() ? member->share() : 1;
    const auto awake =
        daily(composition.axis, orElse(member->awake(), member->has_awake(), "07:00", "22:30"), limit);
    const auto social =
        daily(composition.axis, orElse(member->social(), member->has_social(), "08:00", "21:30"), limit);
    std::vector<Span> spans;
    for (const v1::TimeSpan& span : here.available()) {
      const Span cut =
          Span{composition.axis.minuteOf(span.start()), composition.axis.minuteOf(span.limit())}.intersect(
              {0, limit});
      if (!cut.empty()) spans.push_back(cut);
    }
    cook.available = here.available().empty() ? merged(awake) : common(merged(spans), merged(awake));
    for (const Span& hole : rest(merged(social), limit)) cook.unsocial.push_back({hole, 1});
    composition.problem.cooks.push_back(std::move(cook));
    composition.cooks.push_back(&*member);
  }
  return absl::OkStatus();
}

}  // namespace suppertide::compose
