// What is in a data file and what is wrong with it, down to the documents.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "server/storage/inspection.h"

namespace suppertide::service {

struct Diagnosis {
  storage::Inspection file;
  std::map<std::string, std::string> householdNames;  // by id
  // A line each: documents that cannot be read, are of no kind we know, hold what
  // only a newer program knows, or would be refused if they were written today.
  std::vector<std::string> documents;

  bool isWell() const { return file.damages.empty() && file.foreign.empty() && documents.empty(); }
};

// The errors of storage::inspect(). Changes nothing; a server may have the file.
absl::StatusOr<Diagnosis> diagnose(const std::string& dataFile);

}  // namespace suppertide::service
