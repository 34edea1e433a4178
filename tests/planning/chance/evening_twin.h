// The slow twin of the simulated evenings: one evening at a time, event by event.
//
// A cook who looks around at every moment at which something may change, and
// starts what may start. Shares nothing with server/planning/chance but the
// words of chances.h; its draws come from the standard library.
#pragma once

#include <cstdint>
#include <random>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

class EveningTwin {
 public:
  EveningTwin(const Problem& problem, const Schedule& schedule, std::uint64_t seed)
      : problem_(problem), schedule_(schedule), engine_(seed) {}

  // Cooks one evening.
  void run();
  // The same with these lengths, real over planned, by step.
  void run(std::vector<double> factors);

  double start(int step) const { return start_[static_cast<std::size_t>(step)]; }
  double end(int step) const { return end_[static_cast<std::size_t>(step)]; }
  // All served dishes of the course ready by their serving time and `grace`.
  bool inTime(const std::vector<int>& course, Minute grace) const;

 private:
  double pert(double least, double most);
  const Mode& mode(int step) const;
  bool served(int step) const;
  double planned(int step, Edge edge) const;
  bool comesBefore(int first, int second) const;
  // When the edge of a step happened; infinite while it has not.
  double happened(int step, Edge edge) const;
  bool mayStart(int step, double now) const;
  bool gapsAllow(int step, Edge edge, double now) const;
  bool timeHasCome(int step, double now) const;
  // The soonest that a step which has not started could start, as far as one can tell now.
  double soonestStart(int step, double now) const;
  // Whether `step`, begun now, is done before one that comes before it in the plan can begin.
  bool overtakes(int step, int before, double now, Minute lag) const;
  bool cookIsFree(int step, double now) const;
  bool thingsAreFree(int step, double now) const;
  bool ovenIsFree(int step, double now) const;
  bool isKeptApart(int step, double now) const;
  double ownEnd(int step) const { return ownEnd(step, start_[static_cast<std::size_t>(step)]); }
  double ownEnd(int step, double start) const;
  void lookAround(double now);
  void note(double moment) { agenda_.push_back(moment); }

  const Problem& problem_;
  const Schedule& schedule_;
  std::mt19937_64 engine_;
  std::vector<double> factors_;
  std::vector<double> start_;
  std::vector<double> end_;
  std::vector<double> agenda_;  // a heap, earliest first
};

}  // namespace suppertide::planning
