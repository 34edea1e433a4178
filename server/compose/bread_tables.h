// Readiness tables that were worked out once, for events composed again and again with small changes.
#pragma once

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <vector>

#include "server/bread/readiness_table.h"
#include "server/bread/uncertainty.h"

namespace suppertide::compose {

// Answers as the functions of bread/readiness_table.h do, and remembers what it was asked: about
// 100 bytes a minute of table that is kept. Not for several threads.
class BreadTables {
 public:
  using Rows = std::vector<bread::ReadinessRow>;
  using States = std::vector<bread::DoughState>;

  const Rows& rows(const bread::DoughKind& kind, const States& states, std::size_t likely,
                   std::span<const bread::Stay> stays, const bread::Stage& stage,
                   const bread::StartGrid& grid, const bread::TableOptions& options);
  const States& statesAtReadiness(const bread::DoughKind& kind, const bread::DoughState& state,
                                  double startHour, std::span<const bread::Stay> stays,
                                  const bread::Stage& stage);

  // Hours until a ferment that starts at `startHour` is best, all shifted by `shift`; 0 when it never is.
  double bestHours(const bread::DoughKind& kind, const bread::DoughState& state, double startHour,
                   std::span<const bread::Stay> stays, const bread::Stage& stage, const bread::Shift& shift);

  // Begins another use; what neither this one nor the one before asked for is forgotten at the next.
  void nextUse();

 private:
  template <typename Answer>
  struct Kept {
    Answer answer;
    std::int64_t use = 0;  // the last that asked
  };
  template <typename Answer>
  using Memory = std::map<std::string, Kept<Answer>>;  // by everything the answer depends on

  std::int64_t use_ = 0;
  Memory<Rows> rows_;
  Memory<States> states_;
  Memory<double> hours_;
};

}  // namespace suppertide::compose
