// What goes wrong on an evening, drawn once: an oven breaks, a guest cancels, a device drops off and comes
// back.
#pragma once

#include "tests/evening/stage.h"
#include "tests/evening/telling.h"

namespace suppertide::evening {

class Troubles {
 public:
  Troubles(Stage& stage, Telling& telling);

  // What is due by now.
  void happen();
  // Devices that are off are on again, and tell what waited.
  void comeBackAll();

 private:
  bool due(std::int64_t& moment);
  v1::Event stored();
  void breakOven();
  void cancelGuest();
  void replan(const v1::Event& event);

  Stage& stage_;
  Telling& telling_;
  // Seconds; 0: never, or over.
  std::int64_t breaksAt_ = 0;
  std::int64_t cancelsAt_ = 0;
  std::int64_t offAt_ = 0;
  std::int64_t backAt_ = 0;
};

}  // namespace suppertide::evening
