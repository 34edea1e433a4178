// Every remedy there is, each in a file of its own.
#pragma once

#include <vector>

#include "server/compose/remedies/situation.h"

namespace suppertide::compose {

// Lets a bake stand at what its food class tolerates, where the recipe asks for less.
std::vector<Change> shareTemperature(const Situation& situation);
// Lets a bake go into any oven, where it was put into one.
std::vector<Change> otherOven(const Situation& situation);
// Bakes what takes its pan's shape in a smaller pan, deeper and longer, so that it stands beside another
// dish.
std::vector<Change> otherPan(const Situation& situation);
// Lets a dish be ready earlier and wait longer.
std::vector<Change> keepLonger(const Situation& situation);
// Bakes a bread hours ahead and warms it through before serving.
std::vector<Change> bakeEarlier(const Situation& situation);
// Allows a dough the fridge.
std::vector<Change> retardOvernight(const Situation& situation);
// Builds the levain with more or less flour on its starter.
std::vector<Change> otherLevainRatio(const Situation& situation);
// Asks a member who does not cook yet.
std::vector<Change> otherCook(const Situation& situation);
// Leaves a pinned step to the planner.
std::vector<Change> unpin(const Situation& situation);
// Serves a course a quarter of an hour to an hour later.
std::vector<Change> laterCourse(const Situation& situation);
// One more burner, mixer, pan, oven, or room in a neighbour's fridge.
std::vector<Change> borrow(const Situation& situation);
std::vector<Change> dropDish(const Situation& situation);
// A cook up an hour earlier and to bed an hour later, or home for longer.
std::vector<Change> moreHours(const Situation& situation);

// What all of them propose and what has begun has no part in, smallest change first; equal ones in the
// catalogue's order.
std::vector<Change> proposals(const Situation& situation);

}  // namespace suppertide::compose
