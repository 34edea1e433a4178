#include "server/compose/remedies/catalogue.h"

#include <algorithm>
#include <iterator>

namespace suppertide::compose {
namespace {

constexpr RemedyIdea kCatalogue[] = {shareTemperature, otherOven,        keepLonger, bakeEarlier,
                                     retardOvernight,  otherLevainRatio, otherCook,  unpin,
                                     laterCourse,      borrow,           dropDish,   moreHours};

}  // namespace

std::vector<Change> proposals(const Situation& situation) {
  std::vector<Change> all;
  for (const RemedyIdea idea : kCatalogue) {
    std::vector<Change> some = idea(situation);
    std::move(some.begin(), some.end(), std::back_inserter(all));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Change& a, const Change& b) { return a.what.size() < b.what.size(); });
  return all;
}

}  // namespace suppertide::compose
