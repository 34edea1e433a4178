// The sample feast to look at in a new household: its dates moved so that the dinner lies ahead.
#pragma once

#include <QtCore/qbytearray.h>

#include <string>

#include "absl/status/statusor.h"
#include "client/words/instant.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide {

// For whom the feast is.
struct SampleHome {
  std::string householdName;
  std::string timeZone;    // IANA
  std::string personName;  // becomes the feast's host
};

// Reads the bundle `json`. Its dinner comes to the first same weekday that is at least four days after
// `now`; every time keeps its hour of the day, told in the home's zone.
absl::StatusOr<v1::Bundle> sampleEvent(const QByteArray& json, const SampleHome& home, Instant now);

// The member that is the person's: the bundle's first host.
std::string hostOf(const v1::Bundle& bundle);

}  // namespace suppertide
