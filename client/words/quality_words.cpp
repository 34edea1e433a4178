#include "client/words/quality_words.h"

#include <algorithm>

#include "client/words/joined.h"

namespace suppertide {
namespace {

QString counted(std::int64_t count, const QString& one, const QString& many) {
  return count == 1 ? one : many.arg(count);
}

QString length(const TimeWords& words, std::int64_t minutes) {
  return words.length(static_cast<double>(minutes));
}

}  // namespace

QString QualityWords::soFar(const v1::Quality& quality, const TimeWords& words) {
  const v1::TierCosts& costs = quality.costs();
  if (costs.unserved() > 0)
    return counted(costs.unserved(), tr("1 dish is not fitted in yet."),
                   tr("%1 dishes are not fitted in yet."));
  if (costs.lateness() > 0)
    return tr("Every dish is served, %1 late in all.").arg(length(words, costs.lateness()));
  return tr("Every dish is served on time.");
}

QString QualityWords::result(const v1::Plan& plan, const TimeWords& words) {
  if (plan.unserved_size() > 0)
    return counted(plan.unserved_size(), tr("1 dish does not fit."), tr("%1 dishes do not fit."));
  return soFar(plan.quality(), words);
}

QString QualityWords::proven(const v1::Quality& quality) {
  if (quality.optimal()) return tr("Proven best: no plan with these dishes, people and ovens is better.");
  const int count = quality.proven_tier_count();
  const QString goals[kTiers] = {tr("how many dishes are served"),
                                 tr("lateness"),
                                 tr("how little moves"),
                                 tr("waiting and freshness"),
                                 tr("people's hours and shares"),
                                 tr("calm between tasks"),
                                 tr("empty ovens")};
  // What is told nobody has to move when planning from nothing: that goal is passed over in silence.
  QStringList done;
  for (int i = 0; i < std::min(count, kTiers); ++i)
    if (i != 2) done << goals[i];
  if (done.isEmpty()) return tr("Now looking at %1.").arg(goals[0]);
  if (count >= kTiers) return tr("Proven best: %1.").arg(Joined::words(done));
  const int next = count == 2 ? 3 : count;
  return tr("Proven best: %1. Now looking at %2.").arg(Joined::words(done), goals[next]);
}

QString QualityWords::proof(const v1::Quality& quality, const TimeWords& words) {
  if (quality.optimal()) return tr("Proven best: no plan with these dishes, people and ovens is better.");
  const auto gap = [&](auto part) {
    return std::max<std::int64_t>(0, part(quality.costs()) - part(quality.bounds()));
  };
  switch (quality.proven_tier_count()) {
    case 0:
      if (quality.costs().unserved() == quality.bounds().unserved())
        return tr("How much better a plan might be is not known.");
      return counted(gap([](const v1::TierCosts& c) { return c.unserved(); }),
                     tr("A longer search might serve one more dish."),
                     tr("A longer search might serve up to %1 more dishes."));
    case 1:
      return tr("A longer search might be less late, by at most %1.")
          .arg(length(words, gap([](const v1::TierCosts& c) { return c.lateness(); })));
    case 2:
      return tr("A longer search might move less.");
    case 3:
      return tr("A longer search might save waiting, at most %1 over all dishes.")
          .arg(length(words, gap([](const v1::TierCosts& c) { return c.quality(); })));
    case 4:
      return tr("A longer search might save work at unsocial hours or share it more fairly, at most %1.")
          .arg(length(words, gap([](const v1::TierCosts& c) { return c.people(); })));
    case 5:
      return tr("A longer search might leave the cooks more air between tasks.");
    default:
      return tr("A longer search might heat an empty oven less, by at most %1.")
          .arg(length(words, gap([](const v1::TierCosts& c) { return c.ovens(); })));
  }
}

QStringList QualityWords::worse(const v1::TierCosts& before, const v1::TierCosts& after,
                                const TimeWords& words) {
  QStringList parts;
  const auto more = [](std::int64_t a, std::int64_t b) { return b - a; };
  if (const auto by = more(before.unserved(), after.unserved()); by > 0)
    parts << counted(by, tr("1 more dish would not be served."), tr("%1 more dishes would not be served."));
  if (const auto by = more(before.lateness(), after.lateness()); by > 0)
    parts << tr("%1 later in all.").arg(length(words, by));
  if (const auto by = more(before.quality(), after.quality()); by > 0)
    parts << tr("%1 more waiting or off its best.").arg(length(words, by));
  if (const auto by = more(before.people(), after.people()); by > 0)
    parts << tr("%1 more at unsocial hours or beyond a fair share.").arg(length(words, by));
  if (more(before.calm(), after.calm()) > 0) parts << tr("Less air between tasks.");
  if (const auto by = more(before.ovens(), after.ovens()); by > 0)
    parts << tr("%1 more of empty oven.").arg(length(words, by));
  return parts;
}

QStringList QualityWords::better(const v1::TierCosts& before, const v1::TierCosts& after,
                                 const TimeWords& words) {
  QStringList parts;
  const auto less = [](std::int64_t a, std::int64_t b) { return a - b; };
  if (const auto by = less(before.unserved(), after.unserved()); by > 0)
    parts << counted(by, tr("1 more dish is served."), tr("%1 more dishes are served."));
  if (const auto by = less(before.lateness(), after.lateness()); by > 0)
    parts << tr("%1 less late in all.").arg(length(words, by));
  if (const auto by = less(before.quality(), after.quality()); by > 0)
    parts << tr("%1 less waiting or off its best.").arg(length(words, by));
  if (const auto by = less(before.people(), after.people()); by > 0)
    parts << tr("%1 less at unsocial hours or beyond a fair share.").arg(length(words, by));
  if (less(before.calm(), after.calm()) > 0) parts << tr("More air between tasks.");
  if (const auto by = less(before.ovens(), after.ovens()); by > 0)
    parts << tr("%1 less of empty oven.").arg(length(words, by));
  return parts;
}

}  // namespace suppertide
