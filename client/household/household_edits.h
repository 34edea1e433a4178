// Changes of a household and its people, as requests to the server.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "client/link/session.h"
#include "suppertide/v1/household.pb.h"

namespace suppertide {

// Hours of a day in minutes after midnight; a limit before the start runs past
// midnight.
struct DaySpan {
  int start = 0;
  int limit = 0;
  friend bool operator==(const DaySpan&, const DaySpan&) = default;
};

// As stated, or what counts when a member states nothing.
DaySpan awakeOf(const v1::Member& member);
DaySpan socialOf(const v1::Member& member);
// When reminders make no sound: as stated, or whenever not awake.
DaySpan quietOf(const v1::Member& member);
// So many minutes before a step its cook is told that it comes.
int soonMinutesOf(const v1::Member& member);
v1::DayHours toHours(const DaySpan& span);

// The members with one of them changed. Absent: there is no such member.
std::optional<v1::UpdateHouseholdRequest> withMember(const v1::Household& household,
                                                     const std::string& memberId,
                                                     const std::function<void(v1::Member&)>& change);
v1::UpdateHouseholdRequest withNewMember(const v1::Household& household, const std::string& name,
                                         v1::Role role);
v1::UpdateHouseholdRequest withoutMember(const v1::Household& household, const std::string& memberId);
// One field, named as in the proto, changed by `change`.
v1::UpdateHouseholdRequest withField(const v1::Household& household, const char* field,
                                     const std::function<void(v1::Household&)>& change);

}  // namespace suppertide
