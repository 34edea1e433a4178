// What holds for all rules together; each rule has its tests under rules/.
#include "server/planning/audit/audit.h"

#include "tests/planning/rules/breaches.h"

namespace suppertide::planning {
namespace {

TEST(AuditTest, BreachesComeInTheOrderOfTheirMinutes) {
  ProblemBuilder kitchen(200);
  kitchen.resource("burners", 1);
  kitchen.dish("stew", {.serve = 100});
  kitchen.step("boil").lasting(30).using_("burners");
  kitchen.step("fry").lasting(30).using_("burners").notBefore(60);
  const Problem problem = kitchen.build();
  EXPECT_THAT(breaches(problem, ScheduleBuilder(problem).put("boil", 60).put("fry", 50)),
              ElementsAre("kGap: fry at 50 by 10", "kCapacity: boil (with fry) at 60 by 1"));
}

}  // namespace
}  // namespace suppertide::planning
