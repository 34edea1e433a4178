// What people asked for, read off a problem, each so that it can be taken back.
//
// A wish is not a rule of nature: gaps, lengths, food-safety clocks and
// separations are none and always stay. Taking a wish back only ever allows more
// schedules, so a set of wishes that can be met can also be met with fewer.
#pragma once

#include <vector>

#include "server/planning/model/problem.h"

namespace suppertide::planning {

// The kinds, from what people give up last to what they give up first.
enum class WishKind {
  kServed,    // a dish is served in time; taken back: it is not made at all
  kSetpoint,  // a bake within its own setpoints; taken back: at any an oven bakes at
  kOven,      // an oven and no second like it
  kPinned,    // a step where a person put it
  kHours,     // a cook asleep or away; taken back: there all the time
  kCount,     // so much of a resource; taken back: room for one more
  kHands,     // the cooks there are; taken back: one more, able to do everything
  kFresh,     // a dish kept no longer than it may; taken back: a day longer
};

struct Wish {
  WishKind kind = WishKind::kServed;
  int index = -1;  // a dish, step, oven, cook or resource, as the kind says; -1 for kHands
  friend bool operator==(const Wish&, const Wish&) = default;
};

// All wishes of `dishes` (indexes), in the order of the kinds. Steps that have
// ended, or begun (by step; empty: none has), are facts, and their pins no wishes.
std::vector<Wish> wishesOf(const Problem& problem, const std::vector<int>& dishes,
                           const std::vector<bool>& begun = {});

// Wishes taken back, and how far that may go.
struct Relaxing {
  // By step: a bake is not tried below it, whatever is taken back; empty: no such bound.
  std::vector<int> leastCelsius = {};
  std::vector<bool> begun = {};  // by step, as wishesOf() takes them
};

// The problem with only the dishes that `kept` asks for and every wish of
// `taken` taken back. Steps and dishes are numbered anew; costs below lateness
// and lateness itself are gone, so a schedule that serves every dish serves it in time.
Problem relaxed(const Problem& problem, const std::vector<Wish>& kept, const std::vector<Wish>& taken,
                const Relaxing& relaxing = {});

}  // namespace suppertide::planning
