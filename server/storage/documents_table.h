// The present documents of all households, and the tombstones of deleted ones.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/statement.h"
#include "server/storage/store.h"

namespace suppertide::storage {

class DocumentsTable {
 public:
  explicit DocumentsTable(Database& database);

  // Also a tombstone.
  absl::StatusOr<std::optional<Document>> find(const std::string& householdId, const DocumentKey& key);
  // Adds it or takes the place of the one with its key.
  absl::Status put(const std::string& householdId, const Document& document);
  // Of one kind, by id, from `afterId` (exclusive) on. No tombstones.
  absl::StatusOr<std::vector<Document>> list(const std::string& householdId, const std::string& kind,
                                             const std::string& afterId, int limit);
  // All, by kind and id. No tombstones.
  absl::StatusOr<std::vector<Document>> all(const std::string& householdId);
  // Forgets tombstones with a revision up to and with this one.
  absl::Status dropTombstones(const std::string& householdId, std::int64_t upToRevision);

 private:
  Statement find_;
  Statement put_;
  Statement list_;
  Statement all_;
  Statement dropTombstones_;
};

}  // namespace suppertide::storage
