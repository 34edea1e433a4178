// Bytes in a data file that nobody of us wrote: documents as storage keeps them, and files as a disk may
// leave them.
//
// The first byte chooses: a document of some kind, or a data file.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <string>

#include "server/compose/validate.h"
#include "server/service/diagnosis.h"
#include "server/service/documents.h"
#include "server/storage/backup.h"
#include "server/storage/store.h"
#include "tests/fuzz/stored_kinds.h"

namespace {

void lookAtDocument(std::uint8_t number, const std::string& bytes) {
  suppertide::storage::Document document;
  document.key = {std::string(suppertide::fuzz::storedKind(number)->name()), "id"};
  document.bytes = bytes;
  document.deleted = number % 16 == 15;
  const suppertide::v1::Change change = suppertide::service::changeOf(document);
  change.SerializeAsString();
  if (change.has_household()) suppertide::compose::validate(change.household());
  if (change.has_kitchen()) suppertide::compose::validate(change.kitchen());
  if (change.has_starter()) suppertide::compose::validate(change.starter());
  if (change.has_recipe()) suppertide::compose::validate(change.recipe());
  if (change.has_event()) suppertide::compose::validate(change.event());
}

void lookAtFile(const std::string& bytes) {
  static const std::string folder = [] {
    std::string pattern = "/tmp/suppertide-fuzz-XXXXXX";
    if (mkdtemp(pattern.data()) == nullptr) std::abort();
    return pattern;
  }();
  const std::string path = folder + "/h.sqlite";
  for (const char* ending : {"-wal", "-shm", "-journal"}) std::remove((path + ending).c_str());
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
  suppertide::service::diagnose(path).status().IgnoreError();
  std::remove((path + ".copy").c_str());
  suppertide::storage::backUp(path, path + ".copy").status().IgnoreError();
  const suppertide::ManualClock clock(suppertide::Instant(std::chrono::hours(12)));
  suppertide::storage::Store::Options options;
  options.fullSync = false;
  auto store = suppertide::storage::Store::open(path, options, clock);
  if (!store.ok()) return;
  (*store)->hasHouseholds().status().IgnoreError();
  for (const char* id : {"home", "demo"}) {
    (*store)->snapshot(id).status().IgnoreError();
    (*store)->changesAfter(id, 0, 100).status().IgnoreError();
    (*store)->listDevices(id).status().IgnoreError();
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string bytes(reinterpret_cast<const char*>(data) + 1, size - 1);
  if (data[0] < 128)
    lookAtDocument(data[0], bytes);
  else
    lookAtFile(bytes);
  return 0;
}
