// A household without a server, as its host sees it, for the editors' tests.
#pragma once

#include <memory>

#include "client/session/household_session.h"
#include "tests/window/sample.h"

namespace suppertide::testing {

inline Instant sampleNow() {
  return Instant(std::chrono::seconds(secondsAt("2026-06-20T15:20:00+01:00")));
}

// The sample dinner, whose soup has steps.
inline link::Replica sampleWithSteps() {
  link::Replica replica = *sampleReplica();
  for (const char* title : {"Chop the fennel", "Simmer", "Blend"}) {
    v1::Step& step = *replica.recipes["r-soup"].add_steps();
    step.set_id("s" + std::to_string(replica.recipes["r-soup"].steps_size()));
    step.set_title(title);
    step.set_kind(v1::STEP_KIND_HANDS_ON);
    step.mutable_duration()->mutable_likely()->set_seconds(900);
  }
  return replica;
}

struct SampleHousehold {
  HouseholdSession session{[] { return sampleNow(); }};
  link::Replica replica = sampleWithSteps();

  explicit SampleHousehold(const std::string& memberId = "ines") {
    session.adopt(std::make_shared<link::Replica>(replica));
    session.setMemberId(memberId);
  }
  // As when somebody else has written it: the etag is another one.
  template <typename Document>
  void write(Document document, std::map<std::string, Document>& into, const std::string& memberId) {
    document.mutable_meta()->set_etag(document.meta().etag() + "x");
    document.mutable_meta()->set_updated_by_member_id(memberId);
    into[document.id()] = document;
    ++replica.revision;
    session.adopt(std::make_shared<link::Replica>(replica), memberId);
  }
};

}  // namespace suppertide::testing
