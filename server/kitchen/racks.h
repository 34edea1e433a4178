// Whether pans fit into an oven together, and where each stands.
//
// A shelf lies in a rack position; a pan standing on it may reach through the
// clear heights above, and then no shelf can lie there. On one shelf, pans lie
// flat, turned by 90 degrees if that helps, and never overlap. Sizes are outer
// sizes in millimetres. Any part of a set that fits, fits (but see rack_answer.h).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "server/kitchen/oven.h"

namespace suppertide::kitchen {

inline constexpr int kMostPans = 12;  // counted singly
// Steps of the exact search on one shelf before others get their turn, some 0.5 ms.
// Shelves that people fill need none or some dozens.
inline constexpr int kMostRackSteps = 3'000;

struct Pan {
  int widthMm = 0;
  int depthMm = 0;
  int heightMm = 0;  // of pan and food, lid included
  int count = 1;
};

// Area of `to` over that of `from`: what a recipe is scaled by when it moves to
// another pan and keeps its thickness. Both have an area.
double areaFactor(const Pan& from, const Pan& to);

struct PanPlace {
  int pan = 0;       // index into the pans asked about
  int position = 0;  // rack position of its shelf, 0 at the bottom
  int xMm = 0;       // corner nearest the left front of the shelf
  int yMm = 0;
  bool turned = false;
};

enum class Misfit { kNone, kTooWide, kTooTall, kNoRoom, kTooManyPans };

struct RackPlan {
  Misfit misfit = Misfit::kNone;
  int misfitPan = -1;            // the first pan that does not fit with those before it
  std::vector<PanPlace> places;  // one for each single pan, when all fit
  // False when there was no time to look at every packing: then a way to lay them may exist, but pans
  // lie on some shelf with hardly a gap between them.
  bool proven = true;
  bool fits() const { return misfit == Misfit::kNone; }
};

// Up to kMostPans single pans, kTooManyPans beyond; no pans fit always. Exact, except when `proven` says
// no: that needs a shelf on which six pans or more lie with hardly a gap, around a hole or in no way at all.
// What straight cuts take apart is nearly always found. Microseconds for a few pans; a dozen pans all of
// different sizes take 0.05 to 5 ms, and 2 ms on average where they fill the oven wholly.
RackPlan packRacks(const Oven& oven, const std::vector<Pan>& pans);

// A pan of the same proportions that would fit where pan number `misfit` of `pans`
// does not, with all before it: the largest, to 5 mm; lower only when it is too tall
// for any position. None when not even half of its length would do.
std::optional<Pan> panThatWould(const Oven& oven, const std::vector<Pan>& pans, int misfit);

// The same for food that takes its pan's shape: as much of it in a narrower pan stands deeper, and the pan of
// it as much higher, at most `mostDeeper` times. The largest that fits, sides to 5 mm of the longer one.
std::optional<Pan> deeperPanThatWould(const Oven& oven, const std::vector<Pan>& pans, int misfit,
                                      double mostDeeper);

// Whether a way to lay them was found: packRacks without the places.
bool fitsRacks(const Oven& oven, const std::vector<Pan>& pans);

}  // namespace suppertide::kitchen
