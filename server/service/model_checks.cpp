#include "server/bread/published_checks.h"
#include "server/service/dough_answers.h"

namespace suppertide::compose {

v1::CheckModelResponse checkModel() {
  v1::CheckModelResponse answer;
  for (const bread::PublishedCheck& row : bread::publishedChecks()) {
    v1::ModelCheck& told = *answer.add_checks();
    told.set_topic(row.topic);
    told.set_claim(row.claim);
    told.set_source(row.source);
    told.set_reading(std::string(bread::nameOf(row.reading)));
    told.set_basis(std::string(bread::nameOf(row.basis)));
    told.set_unit(row.unit);
    told.set_low(row.low);
    told.set_high(row.high);
    if (row.model < bread::kNeverHours) told.set_model(row.model);
    told.set_passes(row.passes);
    told.set_known_miss(row.knownMiss);
  }
  return answer;
}

}  // namespace suppertide::compose
