// Rule 10, kAllergen: of a separation whose modes are both chosen, the clean step
// ends before the other starts, or starts at least `cleaning` minutes after it
// ends; with kNoLimit it must go first. A step that lasts no time touches nothing.
//
// Breach: the clean step, the other one, the separation as the thing; the first
// minute of the clean step at which the other has begun; the minutes missing to
// the nearer of the two ways to keep them apart.
#include <algorithm>

#include "server/planning/audit/rules/rules.h"

namespace suppertide::planning {
namespace {

bool asked(const Replay& replay, int index, const std::vector<int>& modes) {
  if (!replay.isServed(index) || replay.at(index).start >= replay.at(index).end) return false;
  return modes.empty() || std::count(modes.begin(), modes.end(), replay.at(index).mode) > 0;
}

}  // namespace

void auditAllergen(const Replay& replay, Findings& findings) {
  for (int s = 0; s < sizeOf(replay.problem.separations); ++s) {
    const Separation& separation = nth(replay.problem.separations, s);
    if (!asked(replay, separation.clean, separation.cleanModes) ||
        !asked(replay, separation.other, separation.otherModes))
      continue;
    const Placement& clean = replay.at(separation.clean);
    const Placement& other = replay.at(separation.other);
    const Minute tooLate = clean.end - other.start;
    const Minute tooSoon =
        separation.cleaning < kNoLimit ? other.end + separation.cleaning - clean.start : kNoLimit;
    if (tooLate <= 0 || tooSoon <= 0) continue;
    findings.add({.step = separation.clean,
                  .otherStep = separation.other,
                  .thing = s,
                  .minute = std::max(clean.start, other.start),
                  .amount = std::min(tooLate, tooSoon)});
  }
}

}  // namespace suppertide::planning
