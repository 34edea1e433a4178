// What the cooks do: by what their own devices show, at their own pace, told as it happens.
#pragma once

#include <string>
#include <vector>

#include "tests/evening/stage.h"
#include "tests/evening/telling.h"

namespace suppertide::evening {

class Cooking {
 public:
  Cooking(Stage& stage, Telling& telling) : stage_(stage), telling_(telling) {}

  // All that is due, once around.
  void goAround();

 private:
  void readOvens();
  std::vector<std::string> stepIds();
  CookClient& whoTells(const v1::PlannedStep& step);
  void act(const std::string& id);
  // What the plan has before it in its dish is over in truth.
  bool mayBegin(const v1::Plan& shown, const v1::PlannedStep& step);
  void begin(CookClient& cook, const v1::Plan& shown, const v1::PlannedStep& step, Standing& here);
  void beginFerment(const v1::PlannedStep& step, Standing& here);
  double trueRise(const Standing& here) const;
  void goOn(CookClient& cook, const v1::PlannedStep& step, Standing& here);
  void needsMore(CookClient& cook, const v1::PlannedStep& step, Standing& here);
  bool isDaytime() const;
  void watchDough(CookClient& cook, const v1::PlannedStep& step, Standing& here);
  void tellRise(CookClient& cook, const v1::PlannedStep& step, const Standing& here);

  Stage& stage_;
  Telling& telling_;
};

}  // namespace suppertide::evening
