// The one line that changes while planning goes on; nothing when nobody would see it change.
#pragma once

#include <string>

#include "client/terminal/environment.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::terminal {

class ProgressLine {
 public:
  explicit ProgressLine(Environment& environment) : environment_(environment) {}
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  void show(const v1::MakePlanResponse& message);
  // `found` remedies so far.
  void show(const v1::FindRemediesResponse& message, int found);

 private:
  void print(const std::string& words);

  Environment& environment_;
  bool shown_ = false;
};

}  // namespace suppertide::terminal
