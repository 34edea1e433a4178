// The stored dinner of data/supper.json: three cooks, two ovens, two breads,
// from Thursday 18 to Saturday 20 June 2026 in Lisbon.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "client/link/replica.h"
#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::testing {

inline constexpr char kSampleEvent[] = "midsummer";

std::shared_ptr<const link::Replica> sampleReplica();
// The same with one step of the plan begun later by so many minutes, as long as before.
std::shared_ptr<const link::Replica> sampleWithStepLater(const std::string& plannedId, int minutes);
// What a server sends to a new watcher: reset, the documents, a bookmark.
std::vector<v1::WatchResponse> snapshotOf(const link::Replica& replica);
// A commit that writes the replica's plan of the sample event.
v1::WatchResponse planWritten(const link::Replica& replica, std::int64_t revision,
                              const std::string& memberId);

// Seconds since 1970 of "2026-06-20T14:05:00+01:00".
std::int64_t secondsAt(const std::string& rfc3339);

}  // namespace suppertide::testing
