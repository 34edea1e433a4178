// One evening that never was: cooks, doughs and ovens with truths of their own, played against the real
// server through the real client link, in simulated time.
//
// Who cooks sees only what their client shows, tells what happens, and is late now and then. A starter may be
// slow, an oven weak; one may break, a guest may cancel, a client drop off and come back with what was told
// meanwhile. The same seed draws the same evening.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "suppertide/v1/bundle.pb.h"

namespace suppertide::evening {

// What the review of an evening would use next time, beside what was really so.
struct Learned {
  std::string lesson;  // its id
  double believed = 0;
  double truth = 0;
  double learned = 0;
};

struct Outcome {
  std::vector<std::string> story;   // as the cooks would see it
  std::vector<std::string> faults;  // promises that did not hold; empty: a good evening
  int reports = 0;
  int plans = 0;        // stored in the course of it
  int moves = 0;        // steps put elsewhere, over all plans
  int movesTold = 0;    // of those, work and bakes that nobody had just reported: what people have to mind
  int lateMinutes = 0;  // of the latest dish
  int unserved = 0;
  int takenBack = 0;  // dishes that a plan left out and a later one served again
  // Seconds from telling a report until every client has the corrected plan, of those that brought one.
  std::vector<double> corrections;
  // Of processor time, server and all clients together: what it takes on a machine with nothing else to do.
  std::vector<double> correctionWork;
  std::vector<Learned> learned;
};

// `planned`: a bundle with one event and its plan.
Outcome playEvening(const v1::Bundle& planned, std::uint64_t seed);

// The bundle with a plan by the server, with so much effort.
v1::Bundle withPlan(v1::Bundle bundle, int seconds);

}  // namespace suppertide::evening
