// A store on a real file in a folder of its own, with a household in it.
#pragma once

#include <memory>
#include <string>

#include "server/storage/store.h"

namespace suppertide::storage {

class StoreFile {
 public:
  StoreFile();
  ~StoreFile();
  const std::string& path() const { return path_; }
  ManualClock& clock() { return clock_; }

  // Opens the file (again). Durability is given up for speed.
  std::unique_ptr<Store> open(Store::Options options = {});
  absl::StatusOr<std::unique_ptr<Store>> tryOpen(Store::Options options = {});

 private:
  std::string folder_;
  std::string path_;
  ManualClock clock_{Instant(std::chrono::seconds(1'800'000'000))};
};

inline constexpr char kHouse[] = "house";

// Makes the household "house" with its document and the device "d" of "ana", token hash "t".
void found(Store& store);

// One document put under a request id; the fingerprint follows from the content.
WriteRequest putting(const std::string& requestId, const std::string& id, const std::string& bytes,
                     Expect expect = Expect::kAnything, const std::string& etag = "");
WriteRequest removing(const std::string& requestId, const std::string& id);

}  // namespace suppertide::storage
