#include "server/kitchen/racks.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "server/kitchen/rack_answer.h"
#include "server/kitchen/rack_search.h"
#include "server/kitchen/straight_cuts.h"

namespace suppertide::kitchen {
namespace {

int singles(const std::vector<Pan>& pans) {
  int count = 0;
  for (const Pan& pan : pans) count += std::max(pan.count, 0);
  return count;
}

Misfit aloneMisfit(const Oven& oven, const Pan& pan) {
  const bool straight = pan.widthMm <= oven.shelfWidthMm && pan.depthMm <= oven.shelfDepthMm;
  const bool turned = pan.depthMm <= oven.shelfWidthMm && pan.widthMm <= oven.shelfDepthMm;
  if (!straight && !turned) return Misfit::kTooWide;
  int height = 0;
  for (int clear : oven.clearHeightsMm) height += clear;
  return pan.heightMm > height ? Misfit::kTooTall : Misfit::kNone;
}

RackAnswer rackAnswer(const Oven& oven, const std::vector<Pan>& pans, long& joins) {
  if (singles(pans) > kMostPans) return RackAnswer::kNo;
  for (const Pan& pan : pans)
    if (pan.count > 0 && aloneMisfit(oven, pan) != Misfit::kNone) return RackAnswer::kNo;
  RackSearch search(oven, kindsOf(oven, pans), joins);
  if (search.run()) return RackAnswer::kYes;
  return search.isProven() ? RackAnswer::kNo : RackAnswer::kUnproven;
}

constexpr int kPitchMm = 5;

// Of the same proportions with this longer side.
Pan narrowed(const Pan& pan, int side) {
  const int longSide = std::max(pan.widthMm, pan.depthMm);
  const auto part = [&](int length) { return static_cast<int>(static_cast<long>(length) * side / longSide); };
  return {part(pan.widthMm), part(pan.depthMm), pan.heightMm, pan.count};
}

RackPlan refusal(Misfit misfit, std::size_t pan) {
  RackPlan plan;
  plan.misfit = misfit;
  plan.misfitPan = static_cast<int>(pan);
  return plan;
}

}  // namespace

double areaFactor(const Pan& from, const Pan& to) {
  return static_cast<double>(to.widthMm) * to.depthMm / (static_cast<double>(from.widthMm) * from.depthMm);
}

RackAnswer rackAnswer(const Oven& oven, const std::vector<Pan>& pans) {
  long joins = kMostJoins;
  return rackAnswer(oven, pans, joins);
}

bool fitsRacks(const Oven& oven, const std::vector<Pan>& pans) {
  return rackAnswer(oven, pans) == RackAnswer::kYes;
}

std::optional<Pan> panThatWould(const Oven& oven, const std::vector<Pan>& pans, int misfit) {
  std::vector<Pan> some(pans.begin(), pans.begin() + misfit + 1);
  const Pan wanted = some.back();
  const int longSide = std::max(wanted.widthMm, wanted.depthMm);
  int clear = 0;
  for (const int height : oven.clearHeightsMm) clear += height;
  const auto shrunk = [&](int side) {
    Pan pan = narrowed(wanted, side);
    pan.heightMm = std::min(wanted.heightMm, clear);
    return pan;
  };
  const auto fits = [&](int side) {
    some.back() = shrunk(side);
    return fitsRacks(oven, some);
  };
  // What fits shrunk, fits shrunk further; so the largest is found by halving.
  int low = (longSide / 2 + kPitchMm - 1) / kPitchMm * kPitchMm;
  int high = longSide / kPitchMm * kPitchMm;
  if (!fits(low)) return std::nullopt;
  while (low < high) {
    const int middle = (low + high + kPitchMm) / (2 * kPitchMm) * kPitchMm;
    if (fits(middle))
      low = middle;
    else
      high = middle - kPitchMm;
  }
  return shrunk(low);
}

std::optional<Pan> deeperPanThatWould(const Oven& oven, const std::vector<Pan>& pans, int misfit,
                                      double mostDeeper) {
  std::vector<Pan> some(pans.begin(), pans.begin() + misfit + 1);
  const Pan wanted = some.back();
  const int longSide = std::max(wanted.widthMm, wanted.depthMm);
  // What is narrower is higher, so that a smaller one need not fit where a larger one does.
  for (int side = (longSide - 1) / kPitchMm * kPitchMm; side > 0; side -= kPitchMm) {
    Pan& pan = some.back() = narrowed(wanted, side);
    const double deeper = 1 / areaFactor(wanted, pan);
    if (deeper > mostDeeper) break;
    pan.heightMm = static_cast<int>(std::ceil(wanted.heightMm * deeper));
    if (fitsRacks(oven, some)) return pan;
  }
  return std::nullopt;
}

RackPlan packRacks(const Oven& oven, const std::vector<Pan>& pans) {
  for (std::size_t i = 0; i < pans.size(); ++i) {
    const Misfit misfit = pans[i].count > 0 ? aloneMisfit(oven, pans[i]) : Misfit::kNone;
    if (misfit != Misfit::kNone) return refusal(misfit, i);
  }
  long joins = kMostJoins;
  RackAnswer all = RackAnswer::kNo;
  if (singles(pans) <= kMostPans) {
    RackSearch search(oven, kindsOf(oven, pans), joins);
    if (search.run()) {
      RackPlan plan;
      plan.places = search.places(pans);
      return plan;
    }
    if (!search.isProven()) all = RackAnswer::kUnproven;
  }
  std::vector<Pan> some;
  for (std::size_t i = 0; i < pans.size(); ++i) {
    some.push_back(pans[i]);
    if (singles(some) > kMostPans) return refusal(Misfit::kTooManyPans, i);
    const RackAnswer fit = i + 1 < pans.size() ? rackAnswer(oven, some, joins) : all;
    if (fit == RackAnswer::kYes) continue;
    RackPlan plan = refusal(Misfit::kNoRoom, i);
    plan.proven = all == RackAnswer::kNo || fit == RackAnswer::kNo;
    return plan;
  }
  return refusal(Misfit::kNoRoom, pans.size() - 1);
}

}  // namespace suppertide::kitchen
