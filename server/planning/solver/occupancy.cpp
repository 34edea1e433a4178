#include "server/planning/solver/occupancy.h"

#include <algorithm>

#include "server/base/index.h"
#include "server/planning/model/costs/calm.h"
#include "server/planning/solver/side_rules.h"

namespace suppertide::planning {
namespace {

constexpr int kAway = 101;

template <typename Map>
void forget(Map& rooms, int thing) {
  for (auto it = rooms.begin(); it != rooms.end();)
    it = std::get<0>(it->first) == thing ? rooms.erase(it) : std::next(it);
}

// Adds `amount` over the part of `when` that lies on the axis.
void raise(std::vector<int>& minutes, const Interval<Minute>& when, int amount) {
  const auto part = when.intersect({0, sizeOf(minutes)});
  for (Minute t = part.start; t < part.limit; ++t) nth(minutes, t) += amount;
}

}  // namespace

int amountOf(const Mode& mode, int resource) {
  int amount = 0;
  for (const Use& use : mode.uses)
    if (use.resource == resource) amount += use.amount;
  return amount;
}

std::vector<PhaseSpan> phaseSpans(const OvenNeed& need, Minute start, Minute end) {
  std::vector<PhaseSpan> spans;
  if (need.phases.size() == 1) return {{need.phases.front().setpoint, {start, end}, need.preheated}};
  Minute from = start;
  for (const OvenPhase& phase : need.phases) {
    if (phase.length > 0)
      spans.push_back({phase.setpoint, {from, from + phase.length}, need.preheated && spans.empty()});
    from += phase.length;
  }
  return spans;
}

Occupancy::Occupancy(const Problem& problem) : problem_(problem) {
  for (const Cook& cook : problem.cooks) {
    std::vector<int> minutes(static_cast<std::size_t>(problem.limit), kAway);
    for (const auto& when : cook.available) raise(minutes, when, -kAway);
    attention_.push_back(std::move(minutes));
  }
  for (const Resource& resource : problem.resources) {
    std::vector<int> minutes(static_cast<std::size_t>(problem.limit), 0);
    std::int64_t gone = 0;
    for (const Resource::Taken& taken : resource.taken) {
      if (!resource.usedUp) raise(minutes, taken.when, taken.amount);
      gone += taken.amount;
    }
    amount_.push_back(std::move(minutes));
    gone_.push_back(resource.usedUp ? gone : 0);
  }
  bookings_.resize(problem.ovens.size());
  tasks_.resize(problem.cooks.size());
  readSeparations();
}

void Occupancy::readSeparations() {
  separations_.resize(problem_.steps.size());
  separated_.resize(problem_.steps.size());
  for (int k = 0; k < sizeOf(problem_.separations); ++k) {
    nth(separations_, nth(problem_.separations, k).clean).push_back(k);
    nth(separations_, nth(problem_.separations, k).other).push_back(k);
  }
}

// How long the step could stay with regard to what it must be kept apart from.
Minute Occupancy::separationRoom(int step, int mode, Minute start) const {
  Minute room = problem_.limit;
  for (const int k : nth(separations_, step)) {
    const Separation& separation = nth(problem_.separations, k);
    const bool clean = separation.clean == step;
    const auto& there = nth(separated_, clean ? separation.other : separation.clean);
    if (!there || !asksOf(separation, clean ? mode : there->mode, clean ? there->mode : mode)) continue;
    const Minute cleaning = separation.cleaning;
    const bool after = clean ? cleaning < kNoLimit && start >= there->end + cleaning : start >= there->end;
    const Minute before = clean ? there->start : cleaning < kNoLimit ? there->start - cleaning : -1;
    if (!after) room = std::min(room, start < before ? before : -1);
  }
  return room;
}

// Whether enough is left of all that the mode uses up.
bool Occupancy::leaves(const Mode& mode) const {
  return std::all_of(mode.uses.begin(), mode.uses.end(), [&](const Use& use) {
    const Resource& resource = nth(problem_.resources, use.resource);
    return !resource.usedUp || nth(gone_, use.resource) + amountOf(mode, use.resource) <= resource.capacity;
  });
}

void Occupancy::add(int step, const Placement& placement) {
  change(step, placement, 1);
}
void Occupancy::remove(int step, const Placement& placement) {
  change(step, placement, -1);
}

void Occupancy::change(int step, const Placement& placement, int sign) {
  const Interval<Minute> when{placement.start, placement.end};
  if (when.empty()) return;
  const Mode& mode = nth(nth(problem_.steps, step).modes, placement.mode);
  if (placement.cook >= 0 && mode.attention > 0) {
    raise(nth(attention_, placement.cook), when, sign * mode.attention);
    forget(cookRooms_, placement.cook);
    if (mode.attention >= kTaskAttention) {
      auto& tasks = nth(tasks_, placement.cook);
      if (sign > 0)
        tasks.push_back({step, when});
      else
        std::erase_if(tasks, [&](const Task& task) { return task.step == step; });
      forget(calm_, placement.cook);
    }
  }
  for (const Use& use : mode.uses) {
    if (nth(problem_.resources, use.resource).usedUp) {
      nth(gone_, use.resource) += sign * use.amount;
      continue;
    }
    raise(nth(amount_, use.resource), when, sign * use.amount);
    forget(resourceRooms_, use.resource);
  }
  if (!nth(separations_, step).empty())
    nth(separated_, step) = sign > 0 ? std::optional(placement) : std::nullopt;
  if (!mode.oven) return;
  auto& bookings = nth(bookings_, mode.oven->oven);
  if (sign < 0) {
    std::erase_if(bookings, [&](const Booking& booking) { return booking.step == step; });
  } else {
    for (const PhaseSpan& span : phaseSpans(*mode.oven, placement.start, placement.end))
      bookings.push_back({step, span.setpoint, span.when, span.entering, &mode.oven->load});
  }
  forget(setpointRooms_, mode.oven->oven);
  forget(rackRooms_, mode.oven->oven);
  forget(heat_, mode.oven->oven);
}

Occupancy::NextBlocked Occupancy::sweep(const std::vector<char>& blocked) const {
  NextBlocked next(blocked.size() + 1, problem_.limit);
  for (std::size_t t = blocked.size(); t-- > 0;) next[t] = blocked[t] ? static_cast<Minute>(t) : next[t + 1];
  return next;
}

// The next minute from each on at which more than `most` is taken.
Occupancy::NextBlocked Occupancy::sweepAbove(const std::vector<int>& taken, int most) const {
  NextBlocked next(taken.size() + 1);
  Minute blocked = next[taken.size()] = problem_.limit;
  for (std::size_t t = taken.size(); t-- > 0;) {
    if (taken[t] > most) blocked = static_cast<Minute>(t);
    next[t] = blocked;
  }
  return next;
}

const Occupancy::NextBlocked& Occupancy::cookRoom(int cook, int attention) {
  auto [it, fresh] = cookRooms_.try_emplace({cook, attention});
  if (fresh) it->second = sweepAbove(nth(attention_, cook), 100 - attention);
  return it->second;
}

const Occupancy::NextBlocked& Occupancy::resourceRoom(int resource, int amount) {
  auto [it, fresh] = resourceRooms_.try_emplace({resource, amount});
  if (fresh)
    it->second = sweepAbove(nth(amount_, resource), nth(problem_.resources, resource).capacity - amount);
  return it->second;
}

const Occupancy::NextBlocked& Occupancy::setpointRoom(int oven, int setpoint, bool entering) {
  auto [it, fresh] = setpointRooms_.try_emplace({oven, setpoint, entering});
  if (!fresh) return it->second;
  const Oven& data = nth(problem_.ovens, oven);
  std::vector<char> blocked(static_cast<std::size_t>(problem_.limit), 0);
  const auto block = [&](Minute from, Minute to) {
    const auto part = Interval<Minute>{from, to}.intersect({0, problem_.limit});
    for (Minute t = part.start; t < part.limit; ++t) nth(blocked, t) = 1;
  };
  for (const auto& closed : data.closed) block(closed.start, closed.limit);
  for (const Booking& booking : nth(bookings_, oven)) {
    if (booking.setpoint == setpoint) continue;
    const Minute before = booking.entering ? nth(nth(data.change, setpoint), booking.setpoint) : 0;
    const Minute after = entering ? nth(nth(data.change, booking.setpoint), setpoint) : 0;
    block(booking.when.start - before, booking.when.limit + after);
  }
  return it->second = sweep(blocked);
}

const Occupancy::NextBlocked& Occupancy::rackRoom(int oven, const Load& load) {
  auto [it, fresh] =
      rackRooms_.try_emplace({oven, load.racks, load.widthMm, load.depthMm, load.heightMm, load.panCount});
  if (!fresh) return it->second;
  std::vector<char> blocked(static_cast<std::size_t>(problem_.limit), 0);
  const auto& bookings = nth(bookings_, oven);
  std::vector<Minute> borders;
  for (const Booking& booking : bookings) {
    borders.push_back(std::clamp(booking.when.start, 0, problem_.limit));
    borders.push_back(std::clamp(booking.when.limit, 0, problem_.limit));
  }
  std::sort(borders.begin(), borders.end());
  for (std::size_t k = 0; k + 1 < borders.size(); ++k) {
    if (borders[k] == borders[k + 1]) continue;
    std::vector<Load> loads{load};
    for (const Booking& booking : bookings)
      if (booking.when.contains(borders[k])) loads.push_back(*booking.load);
    if (loads.size() == 1 || nth(problem_.ovens, oven).racks->fits(loads)) continue;
    std::fill(blocked.begin() + borders[k], blocked.begin() + borders[k + 1], char{1});
  }
  return it->second = sweep(blocked);
}

Minute Occupancy::ovenRoom(const OvenNeed& need, Minute start) {
  const NextBlocked& racks = rackRoom(need.oven, need.load);
  if (need.phases.size() == 1)
    return std::min(nth(racks, start),
                    nth(setpointRoom(need.oven, need.phases.front().setpoint, need.preheated), start));
  Minute from = start;
  bool entering = need.preheated;
  for (const OvenPhase& phase : need.phases) {
    if (phase.length == 0) continue;
    const Minute to = from + phase.length;
    if (to > problem_.limit || nth(racks, from) < to) return -1;
    if (nth(setpointRoom(need.oven, phase.setpoint, entering), from) < to) return -1;
    from = to;
    entering = false;
  }
  return problem_.limit;
}

Minute Occupancy::roomUntil(int step, int modeIndex, int cook, Minute start) {
  if (start < 0 || start >= problem_.limit) return -1;
  const Mode& mode = nth(nth(problem_.steps, step).modes, modeIndex);
  Minute room = problem_.limit;
  if (mode.attention > 0) room = std::min(room, nth(cookRoom(cook, mode.attention), start));
  for (const Use& use : mode.uses)
    if (use.amount > 0 && !nth(problem_.resources, use.resource).usedUp)
      room = std::min(room, nth(resourceRoom(use.resource, amountOf(mode, use.resource)), start));
  if (mode.oven) room = std::min(room, ovenRoom(*mode.oven, start));
  if (!leaves(mode)) return -1;
  return std::min(room, separationRoom(step, modeIndex, start));
}

void Occupancy::roomsUntil(int step, int modeIndex, int cook, const std::vector<Minute>& starts,
                           std::vector<Minute>& room) {
  const Mode& mode = nth(nth(problem_.steps, step).modes, modeIndex);
  room.assign(starts.size(), leaves(mode) ? problem_.limit : -1);
  const auto narrow = [&](const NextBlocked& next) {
    for (std::size_t k = 0; k < starts.size(); ++k) room[k] = std::min(room[k], nth(next, starts[k]));
  };
  if (mode.attention > 0) narrow(cookRoom(cook, mode.attention));
  for (const Use& use : mode.uses)
    if (use.amount > 0 && !nth(problem_.resources, use.resource).usedUp)
      narrow(resourceRoom(use.resource, amountOf(mode, use.resource)));
  if (mode.oven && mode.oven->phases.size() == 1) {
    narrow(rackRoom(mode.oven->oven, mode.oven->load));
    narrow(setpointRoom(mode.oven->oven, mode.oven->phases.front().setpoint, mode.oven->preheated));
  } else if (mode.oven) {
    for (std::size_t k = 0; k < starts.size(); ++k)
      room[k] = std::min(room[k], ovenRoom(*mode.oven, starts[k]));
  }
  if (!nth(separations_, step).empty())
    for (std::size_t k = 0; k < starts.size(); ++k)
      room[k] = std::min(room[k], separationRoom(step, modeIndex, starts[k]));
}

bool Occupancy::fitsOnce(int step, const Placement& place) const {
  const Mode& mode = nth(nth(problem_.steps, step).modes, place.mode);
  if (place.start == place.end) return true;
  if (place.start < 0 || place.end > problem_.limit) return false;
  if (mode.attention > 0)
    for (Minute t = place.start; t < place.end; ++t)
      if (nth(nth(attention_, place.cook), t) + mode.attention > 100) return false;
  for (const Use& use : mode.uses)
    for (Minute t = place.start; t < place.end && use.amount > 0; ++t)
      if (!nth(problem_.resources, use.resource).usedUp &&
          nth(nth(amount_, use.resource), t) + amountOf(mode, use.resource) >
              nth(problem_.resources, use.resource).capacity)
        return false;
  if (!leaves(mode) || separationRoom(step, place.mode, place.start) < place.end) return false;
  return !mode.oven || ovenFits(step, *mode.oven, place);
}

bool Occupancy::ovenFits(int step, const OvenNeed& need, const Placement& place) const {
  const Oven& oven = nth(problem_.ovens, need.oven);
  const Interval<Minute> stay{place.start, place.end};
  const auto& bookings = nth(bookings_, need.oven);
  for (const auto& closed : oven.closed)
    if (closed.overlaps(stay)) return false;
  for (const PhaseSpan& span : phaseSpans(need, place.start, place.end))
    for (const Booking& booking : bookings) {
      if (booking.setpoint == span.setpoint) continue;
      const Minute before = booking.entering ? nth(nth(oven.change, span.setpoint), booking.setpoint) : 0;
      const Minute after = span.entering ? nth(nth(oven.change, booking.setpoint), span.setpoint) : 0;
      if (span.when.limit + before > booking.when.start && booking.when.limit + after > span.when.start)
        return false;
    }
  std::vector<Minute> minutes{place.start};
  for (const Booking& booking : bookings)
    if (stay.contains(booking.when.start)) minutes.push_back(booking.when.start);
  for (const Minute t : minutes) {
    std::vector<Load> loads{need.load};
    for (const Booking& booking : bookings)
      if (booking.step != step && booking.when.contains(t)) loads.push_back(*booking.load);
    if (loads.size() > 1 && !oven.racks->fits(loads)) return false;
  }
  return true;
}

}  // namespace suppertide::planning
