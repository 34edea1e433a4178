#include "server/maintenance.h"

#include <algorithm>
#include <cinttypes>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_replace.h"
#include "absl/strings/strip.h"
#include "server/service/diagnosis.h"
#include "server/storage/backup.h"

namespace suppertide {
namespace {

using Json = nlohmann::ordered_json;
using service::Diagnosis;
using storage::HouseholdInspection;

void print(const std::string& line) {
  std::printf("%s\n", line.c_str());
}

std::string counted(std::int64_t count, const std::string& one, const std::string& many) {
  return absl::StrCat(count, " ", count == 1 ? one : many);
}

std::string countedKind(std::int64_t count, const std::string& kind) {
  const std::string one = absl::StrReplaceAll(kind, {{"_", " "}});
  if (kind == "progress" || kind == "shopping") return counted(count, one, one);
  return counted(count, one, one + (kind.ends_with("s") ? "es" : "s"));
}

std::string sizeOf(std::int64_t bytes) {
  if (bytes < 10'000'000) return absl::StrCat((bytes + 999) / 1000, " kB");
  return absl::StrCat(bytes / 1'000'000, " MB");
}

std::string contentOf(const storage::CopyReport& report) {
  return absl::StrCat(counted(report.households, "household", "households"), ", ",
                      counted(report.documents, "document", "documents"), ", ", sizeOf(report.bytes));
}

std::string lineOf(const HouseholdInspection& household, const std::string& name) {
  std::vector<std::string> kinds;
  std::int64_t documents = 0;
  for (const auto& [kind, count] : household.documents) {
    kinds.push_back(countedKind(count, kind));
    documents += count;
  }
  return absl::StrCat(
      "household \"", name, "\" (", household.id, "): revision ", household.revision, ", ",
      counted(documents, "document", "documents"), " (", absl::StrJoin(kinds, ", "), "), ",
      counted(household.devices, "device", "devices"),
      household.revokedDevices > 0 ? absl::StrCat(" (", household.revokedDevices, " revoked)") : "",
      household.changes == 0 ? "; the log is empty"
                             : absl::StrCat("; the log goes back to ", household.trimmedRevision + 1));
}

void printAll(const char* title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  print(title);
  for (const std::string& line : lines) print("  " + line);
}

void printWords(const std::string& dataFile, const Diagnosis& diagnosis) {
  const storage::Inspection& file = diagnosis.file;
  print(absl::StrCat("data file ", dataFile, ": schema ", file.schemaVersion,
                     file.schemaVersion < file.knownVersion ? " (brought forward when it is served)" : "",
                     ", ", sizeOf(file.bytes), ", ", counted(file.codes, "code", "codes"), " to join with"));
  for (const HouseholdInspection& household : file.households) {
    const auto name = diagnosis.householdNames.find(household.id);
    print(lineOf(household, name == diagnosis.householdNames.end() ? "" : name->second));
  }
  printAll("Damaged:", file.damages);
  printAll("Not Suppertide's:", file.foreign);
  printAll("Documents:", diagnosis.documents);
  if (diagnosis.isWell()) print("Nothing wrong was found.");
}

void printJson(const Diagnosis& diagnosis) {
  Json households = Json::array();
  for (const HouseholdInspection& household : diagnosis.file.households) {
    const auto name = diagnosis.householdNames.find(household.id);
    households.push_back({{"id", household.id},
                          {"displayName", name == diagnosis.householdNames.end() ? "" : name->second},
                          {"revision", household.revision},
                          {"trimmedRevision", household.trimmedRevision},
                          {"documents", household.documents},
                          {"tombstones", household.tombstones},
                          {"changes", household.changes},
                          {"requests", household.requests},
                          {"devices", household.devices},
                          {"revokedDevices", household.revokedDevices}});
  }
  const Json json = {{"schemaVersion", diagnosis.file.schemaVersion},
                     {"knownVersion", diagnosis.file.knownVersion},
                     {"bytes", diagnosis.file.bytes},
                     {"codes", diagnosis.file.codes},
                     {"households", households},
                     {"damages", diagnosis.file.damages},
                     {"foreign", diagnosis.file.foreign},
                     {"documents", diagnosis.documents}};
  print(json.dump(2, ' ', false, Json::error_handler_t::replace));
}

// Storage tells what is wrong; a person must also know where: in the first of `files`, unless it names one.
int failed(const std::vector<std::string>& files, const absl::Status& status) {
  const std::string message(absl::StripPrefix(status.message(), "storage: "));
  const bool told = std::any_of(files.begin(), files.end(), [&](const std::string& file) {
    return message.find(file) != std::string::npos;
  });
  return complain(told ? message : absl::StrCat("data file ", files.front(), ": ", message), kFailed);
}

}  // namespace

int complain(const std::string& line, int exitCode) {
  std::fprintf(stderr, "suppertide-server: %s\n", line.c_str());
  return exitCode;
}

int backUpFile(const std::string& dataFile, const std::string& copy) {
  const auto report = storage::backUp(dataFile, copy);
  if (!report.ok()) return failed({dataFile, copy}, report.status());
  print(absl::StrCat("Copied ", dataFile, " to ", copy, ": ", contentOf(*report), "."));
  return kDone;
}

int restoreFile(const std::string& copy, const std::string& dataFile, bool replace) {
  const auto report = storage::restore(copy, dataFile, replace);
  if (report.status().code() == absl::StatusCode::kAlreadyExists)
    return complain(absl::StrCat(report.status().message(), "; --replace sets it aside"), kFailed);
  if (!report.ok()) return failed({copy, dataFile}, report.status());
  print(absl::StrCat("Restored ", dataFile, " from ", copy, ": ", contentOf(*report), "."));
  if (!report->setAside.empty())
    print(absl::StrCat("The file that was there before is kept as ", report->setAside, "."));
  print(
      "Devices that joined since the copy was made must join again; those that were revoked since then are");
  print("let in again until they are revoked anew. Invitations are void.");
  return kDone;
}

int examineFile(const std::string& dataFile, bool json) {
  const auto diagnosis = service::diagnose(dataFile);
  if (!diagnosis.ok()) return failed({dataFile}, diagnosis.status());
  if (json)
    printJson(*diagnosis);
  else
    printWords(dataFile, *diagnosis);
  return diagnosis->isWell() ? kDone : kFoundWrong;
}

}  // namespace suppertide
