#include "client/household/household_edits.h"

#include <algorithm>
#include <cstdio>

#include "client/link/request_id.h"

namespace suppertide {
namespace {

constexpr int kDay = 24 * 60;

int minutesOf(const std::string& clock, int otherwise) {
  int hours = 0;
  int minutes = 0;
  return std::sscanf(clock.c_str(), "%d:%d", &hours, &minutes) == 2 ? hours * 60 + minutes : otherwise;
}

std::string clockOf(int minutes) {
  char text[16];
  std::snprintf(text, sizeof(text), "%02d:%02d", minutes / 60 % 100, minutes % 60);
  return text;
}

v1::UpdateHouseholdRequest asItIs(const v1::Household& household, const char* field) {
  v1::UpdateHouseholdRequest request;
  *request.mutable_household() = household;
  request.mutable_update_mask()->add_paths(field);
  return request;
}

}  // namespace

DaySpan awakeOf(const v1::Member& member) {
  return {minutesOf(member.awake().start(), 7 * 60), minutesOf(member.awake().limit(), 22 * 60 + 30)};
}

DaySpan socialOf(const v1::Member& member) {
  return {minutesOf(member.social().start(), 8 * 60), minutesOf(member.social().limit(), 21 * 60 + 30)};
}

DaySpan quietOf(const v1::Member& member) {
  const DaySpan awake = awakeOf(member);
  return {minutesOf(member.quiet().start(), awake.limit % kDay),
          minutesOf(member.quiet().limit(), awake.start)};
}

int soonMinutesOf(const v1::Member& member) {
  constexpr int kUsual = 10;
  return member.has_soon_duration() ? static_cast<int>(member.soon_duration().seconds() / 60) : kUsual;
}

v1::DayHours toHours(const DaySpan& span) {
  v1::DayHours hours;
  hours.set_start(clockOf(span.start % kDay));
  hours.set_limit(clockOf(span.limit));
  return hours;
}

std::optional<v1::UpdateHouseholdRequest> withMember(const v1::Household& household,
                                                     const std::string& memberId,
                                                     const std::function<void(v1::Member&)>& change) {
  v1::UpdateHouseholdRequest request = asItIs(household, "members");
  for (v1::Member& member : *request.mutable_household()->mutable_members()) {
    if (member.id() != memberId) continue;
    change(member);
    return request;
  }
  return std::nullopt;
}

v1::UpdateHouseholdRequest withNewMember(const v1::Household& household, const std::string& name,
                                         v1::Role role) {
  v1::UpdateHouseholdRequest request = asItIs(household, "members");
  v1::Member& member = *request.mutable_household()->add_members();
  member.set_id(link::newRequestId());
  member.set_display_name(name);
  member.set_role(role);
  return request;
}

v1::UpdateHouseholdRequest withoutMember(const v1::Household& household, const std::string& memberId) {
  v1::UpdateHouseholdRequest request = asItIs(household, "members");
  auto& members = *request.mutable_household()->mutable_members();
  members.erase(std::remove_if(members.begin(), members.end(),
                               [&](const v1::Member& member) { return member.id() == memberId; }),
                members.end());
  return request;
}

v1::UpdateHouseholdRequest withField(const v1::Household& household, const char* field,
                                     const std::function<void(v1::Household&)>& change) {
  v1::UpdateHouseholdRequest request = asItIs(household, field);
  change(*request.mutable_household());
  return request;
}

}  // namespace suppertide
