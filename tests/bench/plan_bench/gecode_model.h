// A Problem as a Gecode space, in slots of the grid. The Problem is one that
// peersKnow() (peers.h).
#pragma once

#include <gecode/int.hh>
#include <gecode/minimodel.hh>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// Gecode's own constraints: optional tasks on cumulative resources, elements for
// what depends on modes and starts, a disjunction for each pair in an oven. Each
// search has the dishes in another order and branches on one dish after the
// other: its costs, then by accumulated failures its modes, cooks and times.
// About every other search keeps the best plan but for a few dishes.
class GecodeDinner : public Gecode::Space {
 public:
  // `problem` must outlive every copy. Fails when two steps meet in an oven in more
  // ways than ovenPair() can say.
  GecodeDinner(const Problem& problem, Minute grid, unsigned seed);
  GecodeDinner(GecodeDinner& other);
  Gecode::Space* copy() override { return new GecodeDinner(*this); }

  // Less late than `best`, or as late with fewer flaws.
  void constrain(const Gecode::Space& best) override;
  bool master(const Gecode::MetaInfo& info) override;
  // True when the search covers everything that is left.
  bool slave(const Gecode::MetaInfo& info) override;

  std::vector<Placement> places() const;

 private:
  void addSteps();
  void addGaps();
  void addCooks();
  void addThings();
  void addOvens();
  void addPairs();
  void addCosts();
  void branchOnDish(int dish);

  const Problem* problem_;
  Minute grid_;
  Gecode::Rnd dice_;                                                     // one for all copies
  Gecode::IntVarArray starts_, lengths_, ends_, modes_, cooks_, bests_;  // as Problem::steps
  Gecode::IntVarArray lateness_, flaws_;                                 // as Problem::dishes
  Gecode::IntVarArray totals_;                                           // lateness, flaws
};

}  // namespace suppertide::planning
