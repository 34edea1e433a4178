// What is in a data file, looked at without changing it, also while a server has it.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/storage/store.h"

namespace suppertide::storage {

struct HouseholdInspection {
  std::string id;
  std::int64_t revision = 0;
  std::int64_t trimmedRevision = 0;
  std::map<std::string, std::int64_t> documents;  // by kind, without tombstones
  std::int64_t tombstones = 0;
  std::int64_t changes = 0;   // in the log
  std::int64_t requests = 0;  // remembered
  std::int64_t devices = 0;   // revoked ones too
  std::int64_t revokedDevices = 0;
};

struct Inspection {
  int schemaVersion = 0;
  int knownVersion = 0;  // of this program; an older file is brought forward when served
  std::int64_t bytes = 0;
  std::vector<HouseholdInspection> households;  // by id
  std::int64_t codes = 0;                       // invitations and host code
  std::vector<std::string> damages;  // a line each: what SQLite finds broken, and what contradicts itself
  std::vector<std::string> foreign;  // tables, views, triggers and indexes that are not ours
};

// The errors of Store::open(), but damage that leaves the file readable is told in
// `damages`. Reads the whole file.
absl::StatusOr<Inspection> inspect(const std::string& path);

// Gives `look` each present document with its household, by household, kind and id.
absl::Status forEachDocument(
    const std::string& path,
    const std::function<void(const std::string& householdId, const Document&)>& look);

}  // namespace suppertide::storage
