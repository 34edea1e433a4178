// The problem's own rules as clauses: windows, lengths, gaps, modes and cooks.
//
// Everything a step needs of the outside (cooks' attention, things, ovens) is
// left to ResourceClauses, which adds it where a plan runs into it. A dish that
// may go unserved has a literal; what it uses then binds nobody.
#pragma once

#include <deque>
#include <map>
#include <tuple>
#include <vector>

#include "server/planning/solver/grid_model.h"
#include "server/planning/solver/order_var.h"

namespace suppertide::planning {

class Encoder {
 public:
  // `plan` fits the model; the dishes it serves are known to be possible.
  // With `allServed`, no dish may be left out.
  Encoder(const GridModel& model, Sat& sat, const Schedule& plan, bool allServed);

  const GridModel& model() const { return model_; }
  Sat& sat() { return sat_; }
  Lit served(int dish) const { return nth(served_, dish); }
  Lit servedStep(int step) const { return served(nth(model_.problem().steps, step).dish); }
  Lit mode(int step, int mode) const { return nth(nth(modes_, step), mode); }
  Lit cook(int step, int cook) const { return nth(nth(cooks_, step), cook); }
  Point start(int step) const { return nth(starts_, step); }
  Point end(int step) const { return nth(ends_, step); }
  Point edge(int step, Edge edge) const { return edge == Edge::kStart ? start(step) : end(step); }
  // True when the step has no length in the plan; kFalse where it always has one.
  Lit emptyStep(int step);
  // Implies: edge of `from` + lag <= edge of `to`. Made once for each triple.
  Lit before(int from, Edge fromEdge, Minute lag, int to, Edge toEdge);

  // The plan in the solver's current answer.
  Schedule read() const;
  // Makes the solver try `plan` first.
  void prefer(const Schedule& plan);

 private:
  void makeStep(int step);
  void makeModes(int step);
  void makeCooks(int step);
  void makeLengths(int step);
  void makeLengths(int step, const Choice& choice);
  void makeGaps();
  void makeServing();
  void makeLinks(int step);
  void makeAbsences(int step);
  void avoid(int step, std::vector<Lit> otherwise, const Interval<Minute>& when);
  std::vector<Lit> otherwise(int step) const;
  const OrderVar* makeVar(std::vector<Minute> values);

  const GridModel& model_;
  Sat& sat_;
  std::vector<bool> possible_;  // by dish: known to be possible alone
  std::vector<Lit> served_;
  std::vector<std::vector<Lit>> modes_;
  std::vector<std::vector<Lit>> cooks_;
  std::vector<Point> starts_;
  std::vector<Point> ends_;
  std::deque<OrderVar> vars_;
  // By the two edges: lag -> literal, so that a longer lag implies a shorter one.
  std::map<std::tuple<int, int>, std::map<Minute, Lit>> orders_;
};

// The spans in which `resource` is taken by others by more than `amount`.
std::vector<Interval<Minute>> takenAbove(const Resource& resource, int amount);

}  // namespace suppertide::planning
