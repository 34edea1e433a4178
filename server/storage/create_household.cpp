#include "server/storage/create_household.h"

#include <utility>

#include "absl/strings/str_cat.h"
#include "server/base/ids.h"
#include "server/storage/apply_write.h"
#include "server/storage/redeem_invitation.h"

namespace suppertide::storage {

namespace {

// A repeat may carry another id for the household: the first one's holds.
absl::StatusOr<WriteResult> repeat(Connection& connection, const NewHousehold& wanted,
                                   const RequestRow& known) {
  absl::StatusOr<WriteResult> result = replay(connection, known.keys.front().id, known, wanted.fingerprint);
  if (!result.ok()) return result;
  const absl::StatusOr<Device> device = letInAgain(connection, known, wanted.device, wanted.tokenHash);
  if (!device.ok()) return device.status();
  return result;
}

absl::Status useHostCode(Connection& connection, const std::string& codeHash, Instant now) {
  const absl::StatusOr<std::optional<Code>> code = connection.codes.find(codeHash, now);
  if (!code.ok()) return code.status();
  if (!code->has_value() || (*code)->purpose != Code::Purpose::kHost) {
    return absl::NotFoundError("create household: the code is wrong or was used");
  }
  return connection.codes.remove(codeHash);
}

absl::Status checkNew(Connection& connection, const NewHousehold& wanted) {
  if (!isId(wanted.householdId)) return absl::InvalidArgumentError("create household: its id is not one");
  const absl::StatusOr<std::optional<HouseholdRow>> present = connection.households.find(wanted.householdId);
  if (!present.ok()) return present.status();
  if (!present->has_value()) return absl::OkStatus();
  return absl::AlreadyExistsError(
      absl::StrCat("create household ", wanted.householdId, ": there is one already"));
}

absl::Status store(Connection& connection, const NewHousehold& wanted, const Change& change) {
  const Document& document = change.documents.front();
  Device device = wanted.device;
  device.householdId = wanted.householdId;
  HouseholdRow row;
  row.id = wanted.householdId;
  row.revision = change.revision;
  row.documentCount = 1;
  row.logBytes = static_cast<std::int64_t>(document.bytes.size());
  absl::Status status = connection.households.add(row);
  if (status.ok()) status = connection.documents.put(row.id, document);
  if (status.ok()) status = connection.changes.add(row.id, change);
  if (status.ok()) status = connection.devices.add(device, wanted.tokenHash);
  if (status.ok() && !wanted.requestId.empty()) {
    RequestRow request;
    request.requestId = wanted.requestId;
    request.fingerprint = wanted.fingerprint;
    request.revision = change.revision;
    request.keys = {document.key};
    request.deviceId = device.id;
    status = recordStrangersRequest(connection, std::move(request), change.commitTime);
  }
  return status;
}

}  // namespace

absl::StatusOr<WriteResult> createHouseholdIn(Connection& connection, const NewHousehold& wanted,
                                              Instant now) {
  if (!wanted.requestId.empty()) {
    const absl::StatusOr<std::optional<RequestRow>> known =
        connection.requests.find(kNoHousehold, wanted.requestId);
    if (!known.ok()) return known.status();
    if (known->has_value()) return repeat(connection, wanted, **known);
  }
  absl::Status status = useHostCode(connection, wanted.codeHash, now);
  if (status.ok()) status = checkNew(connection, wanted);
  if (!status.ok()) return status;
  Document document;
  document.key = {"household", wanted.householdId};
  document.bytes = wanted.bytes;
  document.etag = newEtag(1);
  document.revision = 1;
  document.createTime = document.updateTime = now;
  document.memberId = wanted.memberId;
  const Change change{1, wanted.memberId, now, {document}};
  status = store(connection, wanted, change);
  if (!status.ok()) return status;
  return WriteResult{1, {std::move(document)}, /*replayed=*/false, /*changed=*/true};
}

}  // namespace suppertide::storage
