// What a person did and no server has taken yet: on disk before the tap is answered.
//
// One SQLite file a household. A request waits until the server has taken it; one
// that the server refused is kept aside until a person says what to do with it.
// Any thread.
#pragma once

#include <google/protobuf/message.h>

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"

struct sqlite3;

namespace suppertide::link {

class Outbox {
 public:
  struct Entry {
    std::int64_t number = 0;  // grows; the order of sending
    // Null: a newer version put it there; it waits for that.
    std::shared_ptr<const google::protobuf::Message> request;
    std::int64_t madeSeconds = 0;  // since 1970
    bool refused = false;
    absl::Status refusal{};  // with the server's errorDetail()
  };

  // Makes file and folder when needed. A damaged file is set aside as "….damaged" and a new one begun.
  // FailedPrecondition when another program has the file open or it is from a newer version.
  static absl::StatusOr<std::unique_ptr<Outbox>> open(const std::filesystem::path& file);
  // Keeps nothing beyond its own life.
  static std::unique_ptr<Outbox> inMemory();
  ~Outbox();

  // On disk when it returns OK. A few milliseconds: one full sync.
  absl::StatusOr<std::int64_t> add(const google::protobuf::Message& request, std::int64_t madeSeconds);
  // Oldest first.
  std::vector<Entry> entries() const;
  std::optional<Entry> entry(std::int64_t number) const;
  // The oldest that waits and can be sent.
  std::optional<Entry> next() const;

  // The server took it and answered with `answer`. Later edits of the same document that were made
  // on top of it, and those still to be added, are aimed at the version that it made.
  absl::Status taken(std::int64_t number, const google::protobuf::Message& answer);
  absl::Status refused(std::int64_t number, const absl::Status& why);
  absl::Status drop(std::int64_t number);

 private:
  explicit Outbox(sqlite3* database) : database_(database) {}
  absl::Status prepare();
  absl::Status load();
  absl::Status store(const Entry& entry);
  absl::Status remove(std::int64_t number);
  absl::Status run(const char* sql);
  template <class Work>
  absl::Status atOnce(Work work);
  std::vector<Entry>::iterator find(std::int64_t number);

  sqlite3* database_;
  mutable std::mutex mutex_;  // guards all, and the database
  std::vector<Entry> entries_;
  std::int64_t last_ = 0;
  std::map<std::string, std::string> nextEtags_;  // by kind, id and etag: of what our own edits made of it
};

}  // namespace suppertide::link
