#include "server/bread/published_checks.h"

#include "server/bread/published_rows.h"

namespace suppertide::bread {

std::vector<PublishedCheck> publishedChecks() {
  std::vector<PublishedCheck> checks;
  rows::addGrowth(checks);
  rows::addGas(checks);
  rows::addHeat(checks);
  rows::addLevains(checks);
  rows::addDoughs(checks);
  rows::addDoughTemperature(checks);
  rows::addFormula(checks);
  rows::addBaking(checks);
  return checks;
}

std::string_view nameOf(SourceReading reading) {
  switch (reading) {
    case SourceReading::kRead:
      return "read";
    case SourceReading::kAbstract:
      return "abstract";
    case SourceReading::kSecondHand:
      return "second-hand";
    case SourceReading::kMemory:
      return "memory";
    case SourceReading::kComputed:
      return "computed";
    case SourceReading::kCommonPractice:
      return "common practice, no source";
  }
  return "";
}

std::string_view nameOf(CheckBasis basis) {
  switch (basis) {
    case CheckBasis::kIndependent:
      return "independent";
    case CheckBasis::kTakenOver:
      return "taken over";
    case CheckBasis::kFitted:
      return "fitted";
    case CheckBasis::kArithmetic:
      return "arithmetic";
  }
  return "";
}

}  // namespace suppertide::bread
