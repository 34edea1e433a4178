// A plan as a network of events, walked once an evening.
#pragma once

#include <optional>
#include <vector>

#include "server/planning/chance/draws.h"
#include "server/planning/chance/plan_order.h"
#include "server/planning/chance/shared_things.h"

namespace suppertide::planning {

class EveningNetwork {
 public:
  EveningNetwork(const Problem& problem, const Schedule& schedule);

  int eventCount() const { return static_cast<int>(planned_.size()); }
  // Events in the order in which run() fills them in; of served steps only.
  const std::vector<int>& order() const { return eventOrder_; }

  // When each event is in a block of evenings, by event. `factors` by step:
  // real length over planned. Events of unserved steps are left as they are.
  void run(const std::vector<Lanes>& factors, std::vector<Lanes>& times) const;

  // What `event` waited for in that lane of run(), and what that waited for, and
  // so on; `event` first, one that kept its planned time last.
  std::vector<int> chainTo(int event, const std::vector<Lanes>& times, std::size_t lane) const;

 private:
  struct Link {
    int from;
    float lag;
  };
  // Of one event in eventOrder_: its links are [first, limit) in links_.
  struct Node {
    int event = 0;
    int firstWithin = 0;
    int firstFollow = 0;
    int followLimit = 0;
  };
  // How a step ends: as chances.h tells; what has happened does so as placed.
  enum class Ending { kAsLong, kElastic, kFerment, kHappened };
  struct StepTimes {
    Ending ending = Ending::kAsLong;
    float length = 0;  // as planned
    float notBefore = 0;
    Length range;                       // for kElastic and kFerment
    const LengthTable* rows = nullptr;  // not null when the range depends on the start
  };

  void readSteps(const Problem& problem, const Schedule& schedule, const PlanOrder& order);
  void sortEvents(const Problem& problem, const Schedule& schedule, const PlanOrder& order);
  void addLinks(const PlanOrder& order);
  Length rangeAt(const StepTimes& step, float start) const;
  float ownEnd(int step, float start, float factor) const;
  void runStart(const Node& node, const std::vector<Lanes>& factors, std::vector<Lanes>& times) const;
  void runEnd(const Node& node, std::vector<Lanes>& times) const;
  int deciderOf(int event, const std::vector<Lanes>& times, std::size_t lane) const;

  std::vector<float> planned_;  // by event
  std::vector<StepTimes> steps_;
  std::vector<int> eventOrder_;
  std::vector<Node> nodes_;  // as eventOrder_
  std::vector<int> nodeOf_;  // by event, -1 for those of unserved steps
  std::vector<Link> links_;
  std::optional<SharedThings> things_;  // always there once built
};

}  // namespace suppertide::planning
