#include "server/storage/redeem_invitation.h"

#include <utility>

#include "absl/strings/str_cat.h"
#include "server/storage/apply_write.h"

namespace suppertide::storage {

namespace {

// The invitation, taken out.
absl::StatusOr<Code> useUp(Connection& connection, const std::string& codeHash, Instant now) {
  absl::StatusOr<std::optional<Code>> code = connection.codes.find(codeHash, now);
  if (!code.ok()) return code.status();
  if (!code->has_value() || (*code)->purpose != Code::Purpose::kInvitation) {
    return absl::NotFoundError("join: the code is wrong, used or expired");
  }
  const absl::Status status = connection.codes.remove(codeHash);
  if (!status.ok()) return status;
  return **std::move(code);
}

absl::StatusOr<Redeemed> repeat(Connection& connection, const Redemption& wanted, const RequestRow& known) {
  absl::StatusOr<Device> device = letInAgain(connection, known, wanted.device, wanted.tokenHash);
  if (!device.ok()) return device.status();
  // Refuses another fingerprint; the caller then takes the new token back.
  absl::StatusOr<WriteResult> write = replay(connection, device->householdId, known, wanted.fingerprint);
  if (!write.ok()) return write.status();
  return Redeemed{*std::move(device), *std::move(write)};
}

}  // namespace

absl::Status recordStrangersRequest(Connection& connection, RequestRow row, Instant now) {
  row.householdId = kNoHousehold;
  row.number = now.time_since_epoch().count();
  const absl::Status status =
      connection.requests.drop(kNoHousehold, (now - kStrangersRequestsKept).time_since_epoch().count());
  return status.ok() ? connection.requests.add(row) : status;
}

absl::StatusOr<Device> letInAgain(Connection& connection, const RequestRow& known, Device device,
                                  const std::string& tokenHash) {
  const absl::StatusOr<std::optional<Device>> first = connection.devices.find(known.deviceId);
  if (!first.ok()) return first.status();
  if (!first->has_value() || (*first)->revoked) {
    return absl::NotFoundError("join: the device that this let in was revoked");
  }
  device.householdId = (*first)->householdId;
  device.memberId = (*first)->memberId;
  absl::Status status = connection.devices.remove(known.deviceId);
  if (status.ok()) status = connection.devices.add(device, tokenHash);
  if (status.ok()) status = connection.requests.setDevice(kNoHousehold, known.requestId, device.id);
  if (!status.ok()) return status;
  return device;
}

absl::StatusOr<Redeemed> redeemInvitationIn(Connection& connection, const Store::Options& options,
                                            const Redemption& wanted, Instant now) {
  if (!wanted.requestId.empty()) {
    const absl::StatusOr<std::optional<RequestRow>> known =
        connection.requests.find(kNoHousehold, wanted.requestId);
    if (!known.ok()) return known.status();
    if (known->has_value()) return repeat(connection, wanted, **known);
  }
  const absl::StatusOr<Code> code = useUp(connection, wanted.codeHash, now);
  if (!code.ok()) return code.status();
  if (wanted.device.householdId != code->householdId) {
    return absl::InvalidArgumentError("join: the code is of another household");
  }
  Redeemed redeemed{wanted.device, {}};
  RequestRow row;
  if (wanted.household) {
    WriteRequest write;
    write.householdId = code->householdId;
    write.memberId = wanted.device.memberId;
    write.puts = {*wanted.household};
    absl::StatusOr<WriteResult> written = applyWrite(connection, options, write, now);
    if (!written.ok()) return written.status();
    redeemed.write = *std::move(written);
    row.keys = {wanted.household->key};
  }
  absl::Status status = connection.devices.add(wanted.device, wanted.tokenHash);
  if (status.ok() && !wanted.requestId.empty()) {
    row.requestId = wanted.requestId;
    row.fingerprint = wanted.fingerprint;
    row.revision = redeemed.write.revision;
    row.deviceId = wanted.device.id;
    status = recordStrangersRequest(connection, std::move(row), now);
  }
  if (!status.ok()) return status;
  return redeemed;
}

}  // namespace suppertide::storage
