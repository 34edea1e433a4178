// The hard rules, each checked in a file of its own.
#pragma once

#include <array>

#include "server/planning/audit/replay.h"

namespace suppertide::planning {

struct HardRule {
  Rule id;
  void (*check)(const Replay& replay, Findings& findings);
};

void auditGap(const Replay& replay, Findings& findings);
void auditServing(const Replay& replay, Findings& findings);
void auditCook(const Replay& replay, Findings& findings);
void auditCapacity(const Replay& replay, Findings& findings);
void auditOvenTemperature(const Replay& replay, Findings& findings);
void auditOvenRacks(const Replay& replay, Findings& findings);
void auditOvenProofing(const Replay& replay, Findings& findings);
void auditReadiness(const Replay& replay, Findings& findings);
void auditFoodSafety(const Replay& replay, Findings& findings);
void auditPinned(const Replay& replay, Findings& findings);
void auditAllergen(const Replay& replay, Findings& findings);
void auditModeLink(const Replay& replay, Findings& findings);

inline constexpr std::array<HardRule, 12> kHardRules = {{
    {Rule::kGap, auditGap},
    {Rule::kServing, auditServing},
    {Rule::kCook, auditCook},
    {Rule::kCapacity, auditCapacity},
    {Rule::kOvenTemperature, auditOvenTemperature},
    {Rule::kOvenRacks, auditOvenRacks},
    {Rule::kOvenProofing, auditOvenProofing},
    {Rule::kReadiness, auditReadiness},
    {Rule::kFoodSafety, auditFoodSafety},
    {Rule::kPinned, auditPinned},
    {Rule::kAllergen, auditAllergen},
    {Rule::kModeLink, auditModeLink},
}};

}  // namespace suppertide::planning
