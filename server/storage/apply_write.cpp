#include "server/storage/apply_write.h"

#include <algorithm>
#include <set>
#include <utility>

#include "absl/strings/str_cat.h"
#include "server/base/ids.h"
#include "server/storage/stale_etag.h"

namespace suppertide::storage {

namespace {

std::string nameOf(const DocumentKey& key) {
  return absl::StrCat("write ", key.kind, " ", key.id);
}

// Shown for a document that is not there and has left no tombstone.
Document nothingAt(const DocumentKey& key) {
  Document document;
  document.key = key;
  document.deleted = true;
  return document;
}

absl::Status checkKeys(const std::vector<Put>& puts) {
  std::set<DocumentKey> seen;
  for (const Put& put : puts) {
    if (!isId(put.key.kind) || !isId(put.key.id)) {
      return absl::InvalidArgumentError(absl::StrCat(nameOf(put.key), ": not a document's name"));
    }
    if (!seen.insert(put.key).second) {
      return absl::InvalidArgumentError(absl::StrCat(nameOf(put.key), ": named twice in one write"));
    }
  }
  return absl::OkStatus();
}

absl::Status checkExpectation(const Put& put, const Document* present) {
  if (put.expect == Expect::kAbsent && present != nullptr) {
    return absl::AlreadyExistsError(absl::StrCat(nameOf(put.key), ": there is one already"));
  }
  const bool mustBeThere = put.expect == Expect::kPresent || (!put.etag.empty() && !put.remove);
  if (mustBeThere && present == nullptr) {
    return absl::NotFoundError(absl::StrCat(nameOf(put.key), ": there is none"));
  }
  if (!put.etag.empty() && present != nullptr && put.etag != present->etag) return staleEtag(*present);
  return absl::OkStatus();
}

// One write on its way through the tables.
class WriteStep {
 public:
  WriteStep(Connection& connection, const Store::Options& options, const WriteRequest& request,
            HouseholdRow household, Instant now)
      : connection_(connection), options_(options), request_(request), household_(std::move(household)) {
    change_.revision = household_.revision + 1;
    change_.memberId = request.memberId;
    change_.commitTime = now;
  }

  absl::StatusOr<WriteResult> carryOut() {
    for (const Put& put : request_.puts) {
      const absl::Status status = apply(put);
      if (!status.ok()) return status;
    }
    if (household_.documentCount > options_.maxDocuments) {
      return absl::ResourceExhaustedError(
          absl::StrCat("write: a household can hold at most ", options_.maxDocuments, " documents"));
    }
    if (request_.validateOnly) return WriteResult{household_.revision, std::move(documents_)};
    const absl::Status status = finish();
    if (!status.ok()) return status;
    return WriteResult{household_.revision, std::move(documents_), /*replayed=*/false, changedAny()};
  }

 private:
  bool changedAny() const { return !change_.documents.empty(); }

  absl::Status apply(const Put& put) {
    const absl::StatusOr<std::optional<Document>> stored =
        connection_.documents.find(request_.householdId, put.key);
    if (!stored.ok()) return stored.status();
    const Document* present = stored->has_value() && !(*stored)->deleted ? &**stored : nullptr;
    const absl::Status expected = checkExpectation(put, present);
    if (!expected.ok()) return expected;
    if (put.remove && present == nullptr) {
      documents_.push_back(stored->value_or(nothingAt(put.key)));
      return absl::OkStatus();
    }
    household_.documentCount += (put.remove ? 0 : 1) - (present != nullptr ? 1 : 0);
    documents_.push_back(written(put, present));
    change_.documents.push_back(documents_.back());
    return connection_.documents.put(request_.householdId, documents_.back());
  }

  Document written(const Put& put, const Document* present) const {
    return {.key = put.key,
            .bytes = put.remove ? std::string() : put.bytes,
            .etag = newEtag(change_.revision),
            .revision = change_.revision,
            .createTime = present != nullptr ? present->createTime : change_.commitTime,
            .updateTime = change_.commitTime,
            .memberId = request_.memberId,
            .deleted = put.remove};
  }

  absl::Status finish() {
    if (changedAny()) {
      household_.revision = change_.revision;
      for (const Document& document : change_.documents)
        household_.logBytes += static_cast<std::int64_t>(document.bytes.size());
      absl::Status status = connection_.changes.add(request_.householdId, change_);
      if (status.ok()) status = trim();
      if (!status.ok()) return status;
    }
    if (!request_.requestId.empty()) {
      RequestRow row;
      row.householdId = request_.householdId;
      row.requestId = request_.requestId;
      row.fingerprint = request_.fingerprint;
      row.revision = household_.revision;
      for (const Put& put : request_.puts) row.keys.push_back(put.key);
      absl::Status status = recordRequest(connection_, household_, std::move(row));
      const std::int64_t forgotten = household_.requestCount - options_.keepChanges;
      if (status.ok() && forgotten > 0 && household_.requestCount % atOnce() == 0)
        status = connection_.requests.drop(household_.id, forgotten);
      if (!status.ok()) return status;
    }
    return connection_.households.update(household_);
  }

  // Old entries go this many at once, since each alone costs every commit some pages more.
  std::int64_t atOnce() const { return std::max<std::int64_t>(1, options_.keepChanges / 16); }

  absl::Status trim() {
    std::int64_t upTo = household_.revision - options_.keepChanges;
    if (upTo < household_.trimmedRevision + atOnce()) upTo = 0;
    if (household_.logBytes > options_.keepLogBytes) {
      // A quarter at once, so that this comes up seldom.
      const absl::StatusOr<std::int64_t> heavy = connection_.changes.oldestWeighing(
          household_.id, household_.logBytes - options_.keepLogBytes / 4 * 3);
      if (!heavy.ok()) return heavy.status();
      upTo = std::max(upTo, std::min(*heavy, household_.revision - options_.keepAtLeast));
    }
    if (upTo <= household_.trimmedRevision) return absl::OkStatus();
    household_.trimmedRevision = upTo;
    const absl::StatusOr<std::int64_t> dropped = connection_.changes.drop(household_.id, upTo);
    if (!dropped.ok()) return dropped.status();
    household_.logBytes -= *dropped;
    return connection_.documents.dropTombstones(household_.id, upTo);
  }

  Connection& connection_;
  const Store::Options& options_;
  const WriteRequest& request_;
  HouseholdRow household_;
  Change change_;
  std::vector<Document> documents_;
};

}  // namespace

std::string newEtag(std::int64_t revision) {
  return absl::StrCat(revision, "-", newId().substr(0, 8));
}

absl::Status recordRequest(Connection& connection, HouseholdRow& household, RequestRow row) {
  row.number = ++household.requestCount;
  return connection.requests.add(row);
}

absl::StatusOr<WriteResult> replay(Connection& connection, const std::string& householdId,
                                   const RequestRow& known, const std::string& fingerprint) {
  if (known.fingerprint != fingerprint) {
    return absl::InvalidArgumentError(
        absl::StrCat("write: request id ", known.requestId, " was used for something else"));
  }
  WriteResult result;
  result.revision = known.revision;
  result.replayed = true;
  for (const DocumentKey& key : known.keys) {
    absl::StatusOr<std::optional<Document>> document = connection.documents.find(householdId, key);
    if (!document.ok()) return document.status();
    result.documents.push_back((*std::move(document)).value_or(nothingAt(key)));
  }
  return result;
}

absl::StatusOr<WriteResult> applyWrite(Connection& connection, const Store::Options& options,
                                       const WriteRequest& request, Instant now) {
  absl::Status keys = checkKeys(request.puts);
  if (!keys.ok()) return keys;
  absl::StatusOr<std::optional<HouseholdRow>> household = connection.households.find(request.householdId);
  if (!household.ok()) return household.status();
  if (!household->has_value()) {
    return absl::NotFoundError(absl::StrCat("write: there is no household ", request.householdId));
  }
  if (!request.requestId.empty() && !request.validateOnly) {
    const absl::StatusOr<std::optional<RequestRow>> known =
        connection.requests.find(request.householdId, request.requestId);
    if (!known.ok()) return known.status();
    if (known->has_value()) return replay(connection, request.householdId, **known, request.fingerprint);
  }
  return WriteStep(connection, options, request, **std::move(household), now).carryOut();
}

}  // namespace suppertide::storage
