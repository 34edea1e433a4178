#include "server/planning/model/rack_fit.h"

namespace suppertide::planning {

bool RackCount::fits(const std::vector<Load>& loads) const {
  int wanted = 0;
  for (const Load& load : loads) wanted += load.racks;
  return wanted <= racks_;
}

}  // namespace suppertide::planning
