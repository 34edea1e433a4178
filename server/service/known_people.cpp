#include "server/service/known_people.h"

#include <utility>

#include "server/service/documents.h"
#include "server/service/secrets.h"

namespace suppertide::service {

absl::StatusOr<Caller> KnownPeople::find(const std::string& token) {
  const std::string hash = hashOfToken(token);
  // Before reading: a change that comes in between makes what was read good for this call alone.
  const std::uint64_t version = store_.peopleVersion();
  {
    const std::lock_guard lock(mutex_);
    if (version > version_) {
      people_.clear();
      version_ = version;
    }
    const auto found = people_.find(hash);
    if (version == version_ && found != people_.end() && clock_.now() < found->second.until)
      return found->second.caller;
  }
  absl::StatusOr<Person> person = read(hash);
  if (!person.ok()) return person.status();
  Caller caller = person->caller;
  const std::lock_guard lock(mutex_);
  if (version == version_) people_[hash] = *std::move(person);
  return caller;
}

absl::StatusOr<KnownPeople::Person> KnownPeople::read(const std::string& tokenHash) {
  const auto device = store_.findDevice(tokenHash);
  if (!device.ok()) return device.status();
  const auto document = store_.get(device->householdId, {"household", device->householdId});
  if (!document.ok()) return document.status();
  const auto household = service::read<v1::Household>(*document);
  const v1::Member* member = memberOf(household, device->memberId);
  const v1::Role role = member == nullptr ? v1::ROLE_UNSPECIFIED : member->role();
  return Person{{device->householdId, device->memberId, device->id, tokenHash, role},
                device->lastSeenTime + storage::Store::kLastSeenGrain};
}

}  // namespace suppertide::service
