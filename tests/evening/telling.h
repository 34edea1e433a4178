// Reports to the server, and what comes of them on every device.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "tests/evening/stage.h"

namespace suppertide::evening {

class Telling {
 public:
  explicit Telling(Stage& stage) : stage_(stage) {}

  // A report on the step, of now, that says nothing yet.
  v1::Report about(const v1::PlannedStep& step) const;
  void tell(CookClient& cook, v1::Report report);
  // Waits until every device that is on shows what the server has.
  void everybodySees();
  // Waits for what the server makes of a report (empty: of another change); whether another plan came.
  bool corrected(const std::string& reportId);

  const std::vector<std::string>& told() const { return told_; }  // ids

 private:
  // What the plan leaves out, or has taken in again.
  void sayServed(const v1::Plan& plan);
  std::string why(const v1::Plan& plan, const v1::MovedStep& moved) const;

  Stage& stage_;
  std::vector<std::string> told_;
  std::int64_t lastPlan_ = 0;
  std::set<std::string> left_;  // dishes that the last plan leaves out
};

}  // namespace suppertide::evening
