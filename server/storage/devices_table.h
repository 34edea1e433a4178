// Devices of people, each known by the hash of its token.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/database.h"
#include "server/storage/statement.h"
#include "server/storage/store.h"

namespace suppertide::storage {

class DevicesTable {
 public:
  explicit DevicesTable(Database& database);

  absl::StatusOr<std::optional<Device>> find(const std::string& id);
  absl::StatusOr<std::optional<Device>> findByToken(const std::string& tokenHash);
  // By time of making, then id; revoked ones too.
  absl::StatusOr<std::vector<Device>> list(const std::string& householdId);
  absl::Status add(const Device& device, const std::string& tokenHash);
  absl::Status remove(const std::string& id);
  absl::Status touch(const std::string& id, Instant now);
  // False when the household has no such device.
  absl::StatusOr<bool> revoke(const std::string& householdId, const std::string& id);

 private:
  Database& database_;
  Statement find_;
  Statement findByToken_;
  Statement list_;
  Statement add_;
  Statement remove_;
  Statement touch_;
  Statement revoke_;
};

}  // namespace suppertide::storage
