// The store over one SQLite file: a connection that writes, another that reads.
#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "server/storage/connection.h"
#include "server/storage/file_lock.h"
#include "server/storage/store.h"

namespace suppertide::storage {

class SqliteStore : public Store {
 public:
  // `reader` is null in memory, where the writer's connection serves both.
  SqliteStore(std::optional<FileLock> lock, std::unique_ptr<Connection> writer,
              std::unique_ptr<Connection> reader, const Options& options, const Clock& clock);

  absl::StatusOr<WriteResult> write(const WriteRequest& request) override;
  std::vector<absl::StatusOr<WriteResult>> writeAll(const std::vector<WriteRequest>& requests) override;
  absl::StatusOr<Document> get(const std::string& householdId, const DocumentKey& key) override;
  absl::StatusOr<std::vector<Document>> list(const std::string& householdId, const std::string& kind,
                                             const std::string& afterId, int limit) override;
  absl::StatusOr<Snapshot> snapshot(const std::string& householdId) override;
  absl::StatusOr<std::int64_t> revision(const std::string& householdId) override;
  absl::StatusOr<ChangePage> changesAfter(const std::string& householdId, std::int64_t after,
                                          int limit) override;
  absl::StatusOr<bool> hasHouseholds() override;
  absl::StatusOr<WriteResult> createHousehold(const NewHousehold& household) override;
  absl::Status addCode(const std::string& codeHash, const Code& code) override;
  absl::Status dropCodes(Code::Purpose purpose) override;
  absl::StatusOr<Code> findCode(const std::string& codeHash) override;
  absl::StatusOr<Redeemed> redeemInvitation(const Redemption& redemption) override;
  std::uint64_t peopleVersion() const override { return peopleVersion_; }
  absl::StatusOr<Device> findDevice(const std::string& tokenHash) override;
  absl::StatusOr<std::vector<Device>> listDevices(const std::string& householdId) override;
  absl::Status revokeDevice(const std::string& householdId, const std::string& deviceId) override;

 private:
  Connection& reading() { return reader_ ? *reader_ : *writer_; }
  // Runs `step` in a write transaction and commits when it is OK.
  absl::Status inTransaction(const std::function<absl::Status(Connection&)>& step);
  // As inTransaction(), for what lets somebody in or out.
  absl::Status inPeopleTransaction(const std::function<absl::Status(Connection&)>& step);
  void notePeopleIn(const WriteRequest& request);
  absl::Status applyAll(Connection& connection, const std::vector<WriteRequest>& requests,
                        std::vector<absl::StatusOr<WriteResult>>& results);

  std::optional<FileLock> lock_;  // first, so released after the connections are closed
  std::unique_ptr<Connection> writer_;
  std::unique_ptr<Connection> reader_;
  const Options options_;
  const Clock& clock_;
  std::atomic<std::uint64_t> peopleVersion_ = 1;
};

}  // namespace suppertide::storage
