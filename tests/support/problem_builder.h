// Problems and schedules for tests, saying only what matters.
//
//   ProblemBuilder kitchen(600);
//   kitchen.cook("Ana");
//   kitchen.oven("oven", {180, 240}, {.racks = 2, .changeMinutes = 15});
//   kitchen.dish("loaf", {.serve = 300, .holdLimit = 60});
//   kitchen.step("mix").lasting(20).by({"Ana"});
//   kitchen.step("bake").lasting(40).in("oven", 240).after("mix");
//   Problem problem = kitchen.build();
//   Schedule schedule = ScheduleBuilder(problem).put("mix", 0, "Ana").put("bake", 260).done();
//
// Everything is named by its id; an unknown id ends the test program with a message.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "server/planning/model/schedule.h"

namespace suppertide::planning {

// The index of the step, dish, cook, oven or resource called `id`.
int stepIndex(const Problem& problem, std::string_view id);
int dishIndex(const Problem& problem, std::string_view id);
int cookIndex(const Problem& problem, std::string_view id);
int ovenIndex(const Problem& problem, std::string_view id);
int resourceIndex(const Problem& problem, std::string_view id);
int unknownIndex(const Problem& problem, std::string_view id);
int modeIndex(const Step& step, std::string_view name);
// The setpoint of `oven` at `celsius`.
int setpointIndex(const Oven& oven, int celsius);

// Adds to one step; what concerns a mode goes to the mode added last. A step
// starts with one mode of length 0, without needs, called "plain".
class StepBuilder {
 public:
  struct CelsiusFor {
    int celsius;
    Minute length;
  };

  StepBuilder(Problem& problem, int index) : problem_(problem), index_(index) {}
  StepBuilder& kind(StepKind kind);
  StepBuilder& lasting(Minute length);
  StepBuilder& lasting(Minute shortest, Minute best, Minute longest);
  StepBuilder& lasting(LengthTable table);
  StepBuilder& by(std::initializer_list<std::string_view> cooks, int attention = 100);
  StepBuilder& using_(std::string_view resource, int amount = 1);
  // In the oven for the whole step; its kind becomes kBake.
  StepBuilder& in(std::string_view oven, int celsius, int racks = 1);
  StepBuilder& in(std::string_view oven, std::initializer_list<CelsiusFor> phases, int racks = 1);
  StepBuilder& coldStart();
  StepBuilder& linkedTo(std::string_view step, std::vector<int> modes);
  StepBuilder& quality(int modeCost, int shortMinuteCost = 0, int longMinuteCost = 0);
  // Goes on with a new mode, empty like the first one.
  StepBuilder& orMode(std::string_view name);
  // Starts `least` to `most` minutes after the end of `step`.
  StepBuilder& after(std::string_view step, Minute least = 0, Minute most = kNoLimit);
  StepBuilder& notBefore(Minute earliest);
  StepBuilder& notAfter(Minute latest);
  StepBuilder& pinned(Pin pin);
  // Told to people as starting at `start`, in the first mode.
  StepBuilder& announced(Minute start, std::string_view cook = {}, int weight = 1);
  // `minutes` of air wanted in the gap that was added last.
  StepBuilder& air(Minute minutes);
  // Real lengths lie between these parts of the planned one.
  StepBuilder& spread(double least, double most);
  StepBuilder& follows(std::string_view unknown, double power = 1);
  int index() const { return index_; }

 private:
  Step& step();
  Mode& mode();
  Problem& problem_;
  int index_;
};

class ProblemBuilder {
 public:
  struct OvenSpec {
    int racks = 1;
    Minute changeMinutes = 0;  // between any two setpoints
    int idleMinuteCost = 0;
  };
  struct DishSpec {
    Minute serve = 0;
    Minute holdLimit = kNoLimit;
    Minute lateLimit = 0;
  };

  explicit ProblemBuilder(Minute limit);
  // There all the time, or in [start, limit) only.
  int cook(std::string_view id);
  int cook(std::string_view id, Minute start, Minute limit);
  int oven(std::string_view id, std::vector<int> setpoints, OvenSpec spec);
  int resource(std::string_view id, int capacity);
  // A resource that is not given back.
  int stock(std::string_view id, int capacity);
  int unknown(std::string_view id, double sigma);
  // Steps added from now on belong to this dish; the last of them is its lastStep.
  int dish(std::string_view id, DishSpec spec);
  StepBuilder step(std::string_view id);
  void gap(std::string_view from, Edge fromEdge, std::string_view to, Edge toEdge, Minute least,
           Minute most = kNoLimit);
  struct SpanSpec {
    std::string_view from;
    Edge fromEdge = Edge::kStart;
    std::string_view to = {};  // none: until served
    Edge toEdge = Edge::kEnd;
    std::vector<int> modes = {};
  };
  void clock(std::string_view id, Minute most, std::initializer_list<SpanSpec> spans);
  // In any of their modes.
  void separation(std::string_view id, std::string_view clean, std::string_view other,
                  Minute cleaning = kNoLimit);
  // For what the functions above don't say.
  Problem& problem() { return problem_; }
  // The problem; it passes check(), or the program ends with what check() said.
  Problem build() const;

 private:
  Problem problem_;
};

// Every dish served; a step that is not put lies at its place of the last call, or at 0 for 0 minutes.
class ScheduleBuilder {
 public:
  explicit ScheduleBuilder(const Problem& problem);
  // In `mode`, for its shortest length at that start.
  ScheduleBuilder& put(std::string_view step, Minute start, std::string_view cook = {}, int mode = 0);
  // Sets the end of a step that was put.
  ScheduleBuilder& until(std::string_view step, Minute end);
  ScheduleBuilder& without(std::string_view dish);
  const Schedule& done() const { return schedule_; }

 private:
  const Problem& problem_;
  Schedule schedule_;
};

}  // namespace suppertide::planning
