// What people told of the steps of an event, taken together: what is under way, what is over.
//
// Reports that were taken back count as never told.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "client/words/instant.h"
#include "suppertide/v1/progress.pb.h"

namespace suppertide {

struct StepProgress {
  enum class State { kAhead, kUnderWay, kDone, kSkipped };
  State state = State::kAhead;
  std::optional<Instant> started;
  std::optional<Instant> ended;    // or skipped
  std::string handedToMemberId;    // the last one; empty: as planned
  std::vector<std::string> notes;  // oldest first
};

class ProgressReading {
 public:
  ProgressReading() = default;
  // Keeps pointers into `progress`.
  explicit ProgressReading(const v1::Progress& progress);

  // `plannedId`: "dish/step". All of it as nothing was told when there is no report.
  const StepProgress& of(const std::string& plannedId) const;
  bool isOver(const std::string& plannedId) const;
  // The newest report by this member that can be taken back; null: none.
  const v1::Report* lastOf(const std::string& memberId) const;
  // Of one step, oldest first, without those that were taken back.
  std::vector<const v1::Report*> reportsOf(const std::string& plannedId) const;

 private:
  void read(const v1::Report& report);

  std::vector<const v1::Report*> reports_;  // that count
  std::map<std::string, StepProgress> steps_;
};

}  // namespace suppertide
