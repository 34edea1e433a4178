#include "client/ui/difference_model.h"

namespace suppertide {

void DifferenceModel::tellChanged(const std::vector<int>& changed) {
  for (std::size_t i = 0; i < changed.size();) {
    std::size_t last = i;
    while (last + 1 < changed.size() && changed[last + 1] == changed[last] + 1) ++last;
    Q_EMIT dataChanged(index(changed[i]), index(changed[last]));
    i = last + 1;
  }
}

}  // namespace suppertide
