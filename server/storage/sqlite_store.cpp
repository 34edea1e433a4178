#include "server/storage/sqlite_store.h"

#include <algorithm>
#include <mutex>
#include <utility>

#include "absl/strings/str_cat.h"
#include "server/storage/apply_write.h"
#include "server/storage/create_household.h"
#include "server/storage/redeem_invitation.h"
#include "server/storage/transaction.h"

namespace suppertide::storage {

namespace {

absl::Status noHousehold(const std::string& householdId) {
  return absl::NotFoundError(absl::StrCat("read: there is no household ", householdId));
}

}  // namespace

SqliteStore::SqliteStore(std::optional<FileLock> lock, std::unique_ptr<Connection> writer,
                         std::unique_ptr<Connection> reader, const Options& options, const Clock& clock)
    : lock_(std::move(lock)),
      writer_(std::move(writer)),
      reader_(std::move(reader)),
      options_(options),
      clock_(clock) {}

absl::Status SqliteStore::inTransaction(const std::function<absl::Status(Connection&)>& step) {
  const std::lock_guard guard(writer_->mutex);
  Database& database = *writer_->database;
  if (database.syncFailed()) {
    return absl::UnavailableError("write: a sync to disk failed before; the server must be started anew");
  }
  absl::StatusOr<Transaction> transaction = Transaction::begin(database, Transaction::Kind::kWrite);
  if (!transaction.ok()) return transaction.status();
  absl::Status status = step(*writer_);
  if (status.ok()) status = transaction->commit();
  return status;
}

// Also where it failed, as what a broken disk says of a commit may be wrong.
absl::Status SqliteStore::inPeopleTransaction(const std::function<absl::Status(Connection&)>& step) {
  absl::Status status = inTransaction(step);
  ++peopleVersion_;
  return status;
}

void SqliteStore::notePeopleIn(const WriteRequest& request) {
  const auto ofPeople = [](const Put& put) { return put.key.kind == "household"; };
  if (std::any_of(request.puts.begin(), request.puts.end(), ofPeople)) ++peopleVersion_;
}

absl::StatusOr<WriteResult> SqliteStore::write(const WriteRequest& request) {
  // The transaction is all there is to take back, so there is no savepoint.
  absl::StatusOr<WriteResult> result = absl::UnknownError("not carried out");
  const absl::Status status = inTransaction([&](Connection& connection) {
    result = applyWrite(connection, options_, request, clock_.now());
    const bool keeps = result.ok() && !request.validateOnly;
    return keeps ? absl::OkStatus() : absl::CancelledError("nothing to keep");
  });
  notePeopleIn(request);
  if (!status.ok() && status.code() != absl::StatusCode::kCancelled) return status;
  return result;
}

std::vector<absl::StatusOr<WriteResult>> SqliteStore::writeAll(const std::vector<WriteRequest>& requests) {
  std::vector<absl::StatusOr<WriteResult>> results;
  if (requests.size() == 1) return {write(requests.front())};
  const absl::Status status =
      inTransaction([&](Connection& connection) { return applyAll(connection, requests, results); });
  for (const WriteRequest& request : requests) notePeopleIn(request);
  // Outcomes of one commit may rest on each other, refusals too: none stands if it failed.
  if (!status.ok()) results.assign(requests.size(), status);
  return results;
}

// An error means that the transaction is lost; what one request got wrong is in its result.
absl::Status SqliteStore::applyAll(Connection& connection, const std::vector<WriteRequest>& requests,
                                   std::vector<absl::StatusOr<WriteResult>>& results) {
  const Instant now = clock_.now();
  for (const WriteRequest& request : requests) {
    absl::StatusOr<Savepoint> savepoint = Savepoint::begin(*connection.database);
    if (!savepoint.ok()) return savepoint.status();
    absl::StatusOr<WriteResult> result = applyWrite(connection, options_, request, now);
    if (!connection.database->inTransaction()) return result.status();
    const bool keeps = result.ok() && !request.validateOnly;
    const absl::Status settled = keeps ? savepoint->keep() : savepoint->takeBack();
    if (!settled.ok()) return settled;
    results.push_back(std::move(result));
  }
  return absl::OkStatus();
}

absl::StatusOr<Document> SqliteStore::get(const std::string& householdId, const DocumentKey& key) {
  const std::lock_guard guard(reading().mutex);
  absl::StatusOr<std::optional<Document>> document = reading().documents.find(householdId, key);
  if (!document.ok()) return document.status();
  if (!document->has_value() || (*document)->deleted) {
    return absl::NotFoundError(absl::StrCat("read ", key.kind, " ", key.id, ": there is none"));
  }
  return **std::move(document);
}

absl::StatusOr<std::vector<Document>> SqliteStore::list(const std::string& householdId,
                                                        const std::string& kind, const std::string& afterId,
                                                        int limit) {
  const std::lock_guard guard(reading().mutex);
  return reading().documents.list(householdId, kind, afterId, limit);
}

absl::StatusOr<Snapshot> SqliteStore::snapshot(const std::string& householdId) {
  const std::lock_guard guard(reading().mutex);
  const absl::StatusOr<Transaction> still = Transaction::begin(*reading().database, Transaction::Kind::kRead);
  if (!still.ok()) return still.status();
  const absl::StatusOr<std::optional<HouseholdRow>> household = reading().households.find(householdId);
  if (!household.ok()) return household.status();
  if (!household->has_value()) return noHousehold(householdId);
  absl::StatusOr<std::vector<Document>> documents = reading().documents.all(householdId);
  if (!documents.ok()) return documents.status();
  return Snapshot{(*household)->revision, *std::move(documents)};
}

absl::StatusOr<std::int64_t> SqliteStore::revision(const std::string& householdId) {
  const std::lock_guard guard(reading().mutex);
  const absl::StatusOr<std::optional<HouseholdRow>> household = reading().households.find(householdId);
  if (!household.ok()) return household.status();
  if (!household->has_value()) return noHousehold(householdId);
  return (*household)->revision;
}

absl::StatusOr<ChangePage> SqliteStore::changesAfter(const std::string& householdId, std::int64_t after,
                                                     int limit) {
  const std::lock_guard guard(reading().mutex);
  const absl::StatusOr<Transaction> still = Transaction::begin(*reading().database, Transaction::Kind::kRead);
  if (!still.ok()) return still.status();
  const absl::StatusOr<std::optional<HouseholdRow>> household = reading().households.find(householdId);
  if (!household.ok()) return household.status();
  if (!household->has_value()) return noHousehold(householdId);
  if (after < (*household)->trimmedRevision) return ChangePage{/*trimmed=*/true, {}};
  absl::StatusOr<std::vector<Change>> changes = reading().changes.after(householdId, after, limit);
  if (!changes.ok()) return changes.status();
  return ChangePage{/*trimmed=*/false, *std::move(changes)};
}

absl::StatusOr<bool> SqliteStore::hasHouseholds() {
  const std::lock_guard guard(reading().mutex);
  return reading().households.any();
}

absl::StatusOr<WriteResult> SqliteStore::createHousehold(const NewHousehold& household) {
  absl::StatusOr<WriteResult> result = absl::UnknownError("not carried out");
  const absl::Status status = inPeopleTransaction([&](Connection& connection) {
    result = createHouseholdIn(connection, household, clock_.now());
    return result.status();
  });
  if (!status.ok()) return status;
  return result;
}

absl::Status SqliteStore::addCode(const std::string& codeHash, const Code& code) {
  return inTransaction([&](Connection& connection) {
    const absl::Status status = connection.codes.removeExpired(clock_.now());
    return status.ok() ? connection.codes.add(codeHash, code) : status;
  });
}

absl::Status SqliteStore::dropCodes(Code::Purpose purpose) {
  return inTransaction([&](Connection& connection) { return connection.codes.removeAll(purpose); });
}

absl::StatusOr<Code> SqliteStore::findCode(const std::string& codeHash) {
  const std::lock_guard guard(reading().mutex);
  absl::StatusOr<std::optional<Code>> code = reading().codes.find(codeHash, clock_.now());
  if (!code.ok()) return code.status();
  if (!code->has_value()) return absl::NotFoundError("read: the code is wrong, used or expired");
  return **std::move(code);
}

absl::StatusOr<Redeemed> SqliteStore::redeemInvitation(const Redemption& redemption) {
  absl::StatusOr<Redeemed> result = absl::UnknownError("not carried out");
  const absl::Status status = inPeopleTransaction([&](Connection& connection) {
    result = redeemInvitationIn(connection, options_, redemption, clock_.now());
    return result.status();
  });
  if (!status.ok()) return status;
  return result;
}

absl::StatusOr<Device> SqliteStore::findDevice(const std::string& tokenHash) {
  std::optional<Device> device;
  {
    const std::lock_guard guard(reading().mutex);
    absl::StatusOr<std::optional<Device>> found = reading().devices.findByToken(tokenHash);
    if (!found.ok()) return found.status();
    device = *std::move(found);
  }
  if (!device || device->revoked) return absl::NotFoundError("read: the token is unknown or revoked");
  const Instant now = clock_.now();
  if (now - device->lastSeenTime >= kLastSeenGrain) {
    // A full disk must not lock people out.
    inTransaction([&](Connection& connection) {
      return connection.devices.touch(device->id, now);
    }).IgnoreError();
    device->lastSeenTime = now;
  }
  return *std::move(device);
}

absl::StatusOr<std::vector<Device>> SqliteStore::listDevices(const std::string& householdId) {
  const std::lock_guard guard(reading().mutex);
  return reading().devices.list(householdId);
}

absl::Status SqliteStore::revokeDevice(const std::string& householdId, const std::string& deviceId) {
  return inPeopleTransaction([&](Connection& connection) -> absl::Status {
    const absl::StatusOr<bool> revoked = connection.devices.revoke(householdId, deviceId);
    if (!revoked.ok()) return revoked.status();
    return *revoked ? absl::OkStatus()
                    : absl::NotFoundError(absl::StrCat("revoke device ", deviceId, ": there is none"));
  });
}

}  // namespace suppertide::storage
