// What everything about one simulated evening shares: its documents, its truth, its hour, and the story told.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <string>

#include "absl/time/time.h"
#include "tests/evening/evening.h"
#include "tests/evening/kitchen_truth.h"
#include "tests/evening/party.h"

namespace suppertide::evening {

inline constexpr int kMinute = 60;

// Where a step stands in truth.
struct Standing {
  std::int64_t begun = 0;  // seconds; 0: not yet
  std::int64_t ends = 0;   // once begun, unless it turns out otherwise
  bool over = false;
  bool saidLate = false;
  std::int64_t nextLook = 0;  // at a dough that is not ready yet
  bool looked = false;
  std::string oven;
  v1::FermentForecast forecast;  // of a ferment, as foreseen when it began
};

using Seen = std::shared_ptr<const link::Replica>;

class Stage {
 public:
  Stage(const v1::Bundle& bundle, std::uint64_t seed);

  const v1::Plan& planIn(const Seen& seen) const { return seen->plans.at(event.id()); }
  Seen hostSees() { return party.host().replica(); }
  static const v1::PlannedStep* find(const v1::Plan& plan, const std::string& id);

  void say(const std::string& line) { out.story.push_back(stamped(line, "  ")); }
  void fault(const std::string& what) { out.faults.push_back(stamped(what, " ")); }
  std::string clock(std::int64_t seconds) const;
  // Of a member, dish or oven; the id itself of anything else.
  std::string name(const std::string& id) const;
  std::string stepName(const v1::PlannedStep& step) const;
  int hour() const;
  const v1::Oven* ovenCalled(const std::string& id) const;  // null for none

  const v1::Bundle& bundle;
  const v1::Event event;
  KitchenTruth truth;
  const std::int64_t begin;
  std::int64_t last = 0;  // when the last course is served
  std::int64_t now = 0;
  Party party;
  std::map<std::string, Standing> steps;  // by step
  Outcome out;

 private:
  void readNames();
  std::string stamped(const std::string& line, const char* gap) const;

  absl::TimeZone zone_;
  std::map<std::string, std::string> names_;
};

}  // namespace suppertide::evening
