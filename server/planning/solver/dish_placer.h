// Places one whole dish at least cost while everything else stays put.
//
// The gaps of a dish nearly always form a tree around its last step; along it a
// dynamic programme over the grid finds the best starts, lengths, modes and
// cooks together. What a tree cannot see (two steps of the dish wanting the same
// cook, gaps that close a ring, linked modes) is met by fixing steps from the
// last one outward and solving the rest again.
#pragma once

#include <cstdint>
#include <vector>

#include "server/planning/solver/grid_model.h"
#include "server/planning/solver/occupancy.h"

namespace suppertide::planning {

class DishPlacer {
 public:
  DishPlacer(const GridModel& model, Occupancy& occupancy) : model_(model), occupancy_(occupancy) {}

  // Puts the steps of `dish` into `plan` and the occupancy and marks it served;
  // false, with nothing changed, when no place was found. `cookPrice`: what a
  // minute of each cook's work costs on top, in tier-4 units of 1/1024.
  bool place(int dish, Schedule& plan, const std::vector<std::int64_t>& cookPrice);

 private:
  // A span of a clock that ran over, with what it may take in the next try.
  struct Cap {
    Clock::Span span;
    Minute most;
  };
  struct Link {
    int child;
    int parent;
    Edge childEdge, parentEdge;
    bool childFirst;  // the gap leads from the child to the parent
    Minute least, most;
  };
  struct Decision {
    int choice = -1, cook = -1;
    int start = -1, end = -1;  // candidate indexes
  };
  struct Table {
    int firstStart = 0, firstEnd = 0;  // where `starts` and `ends` begin among the step's candidates
    std::vector<Minute> starts, ends;
    std::vector<std::int64_t> startCost, endCost;  // of the subtree, by candidate
    std::vector<Decision> byStart, byEnd;
    std::vector<std::int64_t> startExtra, endExtra;  // of the children
  };
  struct Message {
    std::vector<int> childIndex;  // best candidate of the child's edge, by parent's candidate
  };

  bool placeWithin(Schedule& plan, const std::vector<std::int64_t>& cookPrice);
  void takeBack(const Schedule& plan);
  Minute lastEnd(int step, int mode, Minute start) const;
  bool capClocks(const Schedule& plan);
  void plantTree(int dish);
  void hang(const Gap& gap, int parent, std::vector<bool>& seen);
  void tighten(const Gap& gap);
  bool solve(Schedule& plan, const std::vector<std::int64_t>& cookPrice, int depth);
  bool fillTables(Schedule& plan, const std::vector<std::int64_t>& cookPrice);
  void limitWindows(int step, const Schedule& plan, Table& table) const;
  void fillTable(int step, const Schedule& plan, const std::vector<std::int64_t>& cookPrice);
  void addOwnCosts(int step);
  void setSoftCosts(const Mode& mode, int cook, const Table& table);
  void tryChoice(int step, int choice, int cook, std::int64_t optionCost, std::int64_t workPrice);
  void sendUp(const Link& link);
  bool mayUse(int step, int mode, const Schedule& plan) const;
  const ModeLink* brokenLink(const Schedule& plan, int& step) const;
  void banOthers(int step, const std::vector<int>& modes);
  void readBack(int step, const Decision& decision, Schedule& plan) const;
  bool fixSteps(Schedule& plan);
  bool keepsGaps(int step, const Schedule& plan) const;
  std::int64_t servingCost(int step, Minute end) const;
  const Placement* placed(int step, const Schedule& plan) const;

  const GridModel& model_;
  Occupancy& occupancy_;
  std::vector<int> order_;                   // steps from the root outward
  std::vector<Link> links_;                  // of order_[1..], to the step they hang on
  std::vector<Table> tables_;                // by step
  std::vector<Message> messages_;            // by step, to its parent
  std::vector<bool> fixed_;                  // by step
  std::vector<std::pair<int, int>> banned_;  // step and mode, while linked modes are decided
  bool soft_ = false;                        // the choice being tried has costs in these
  std::vector<std::int64_t> startSoft_, endSoft_;
  std::vector<Minute> room_;  // of the choice being tried, by start
  std::vector<Cap> caps_;
  std::vector<Gap> gaps_;  // of the dish: the model's and those of the caps
  std::int64_t cost_ = 0;  // of the tables' solution
  int dish_ = 0;
};

}  // namespace suppertide::planning
