#include <algorithm>

#include "server/compose/validate/documents.h"

namespace suppertide::compose {
namespace {

constexpr int kMostMembers = 50;
constexpr int kMostSkills = 20;

void checkMember(const Checker& here, const v1::Member& member) {
  here.at("id").id(member.id());
  here.at("displayName").text(member.display_name(), 60);
  here.at("role").chosen(member.role(), "a role: reader, cook or host");
  if (here.at("skills").count(member.skills_size(), 0, kMostSkills, "skills")) {
    Once skills;
    for (int i = 0; i < member.skills_size(); ++i) {
      const Checker skill = here.at("skills", i);
      if (skill.text(member.skills(i), 60)) skills.add(skill, member.skills(i));
    }
  }
  if (member.has_awake()) here.at("awake").hours(member.awake());
  if (member.has_social()) here.at("social").hours(member.social());
  if (member.has_share()) here.at("share").range(member.share(), 0, 10);
}

}  // namespace

void checkHousehold(const Checker& here, const v1::Household& household) {
  // Before a household is made, and in a bundle, its id doesn't matter.
  here.at("id").optionalId(household.id());
  here.at("displayName").text(household.display_name(), 100);
  if (!isTimeZone(household.time_zone()))
    here.at("timeZone").wrong(household.time_zone(), "must be a known time zone, as \"Europe/Lisbon\"");
  here.at("temperatureUnit").known(household.temperature_unit(), "Celsius or Fahrenheit");
  here.at("measureSystem").known(household.measure_system(), "metric or US");
  here.at("safetyRules").known(household.safety_rules(), "a set of food-safety limits");
  const auto& members = household.members();
  if (!here.at("members").count(members.size(), 0, kMostMembers, "members")) return;
  Once ids;
  for (int i = 0; i < members.size(); ++i) {
    const Checker member = here.at("members", i);
    checkMember(member, members[i]);
    ids.add(member.at("id"), members[i].id());
  }
  const bool host = std::any_of(members.begin(), members.end(),
                                [](const v1::Member& m) { return m.role() == v1::ROLE_HOST; });
  if (!members.empty() && !host)
    here.at("members").wrong("", "there must be at least one host, or nobody can change anything");
}

Violations validate(const v1::Household& household) {
  Violations violations;
  checkHousehold(Checker(violations), household);
  return violations;
}

}  // namespace suppertide::compose
