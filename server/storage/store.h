// Documents of households with their revisions, people's devices and codes, in
// one SQLite file.
//
// A write is one transaction: the request id is looked up, each document's
// expectation checked, the documents stored, the change logged, the household's
// revision raised, all committed with full sync. So an OK is on disk, and a
// repeated request gets its first outcome, also after a restart. Bytes are
// opaque here. Errors are canonical:
//   NOT_FOUND, ALREADY_EXISTS   as the expectation says
//   ABORTED                     stale etag; currentDocument(status) has what is stored
//   INVALID_ARGUMENT            a request id that was used for something else;
//                               a name of a document that is not one, or twice in a write
//   RESOURCE_EXHAUSTED          too many documents; disk full
//   UNAVAILABLE                 the file is busy or cannot be written
//   DATA_LOSS                   the file is damaged
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "server/base/clock.h"

namespace suppertide::storage {

struct DocumentKey {
  std::string kind;  // "household", "kitchen", "starter", "recipe", "event", "plan", "progress", "shopping"
  std::string id;
  friend auto operator<=>(const DocumentKey&, const DocumentKey&) = default;
};

struct Document {
  DocumentKey key;
  std::string bytes;  // empty when deleted
  std::string etag;
  std::int64_t revision = 0;
  Instant createTime;
  Instant updateTime;
  std::string memberId;  // who wrote it last
  bool deleted = false;  // a tombstone, kept until the log is trimmed
};

enum class Expect { kAnything, kAbsent, kPresent };

struct Put {
  DocumentKey key;
  std::string bytes;
  Expect expect = Expect::kAnything;
  std::string etag;     // not empty: must be the stored one
  bool remove = false;  // removing what is not there changes nothing
};

struct WriteRequest {
  std::string householdId;
  std::string memberId;
  std::string requestId;      // empty: a repeat is carried out again
  std::string fingerprint;    // of the call and its content; a request id with another one is refused
  std::vector<Put> puts;      // each of another document
  bool validateOnly = false;  // checks all, changes nothing, does not use up the request id
};

struct WriteResult {
  std::int64_t revision = 0;        // of this write; the present one when nothing changed or validateOnly
  std::vector<Document> documents;  // as stored, in the order of the puts
  bool replayed = false;            // the request was known; documents are as they are now
  bool changed = false;             // this write made a revision; watchers are to hear of it
};

// One committed write as the log has it.
struct Change {
  std::int64_t revision = 0;
  std::string memberId;
  Instant commitTime;
  std::vector<Document> documents;
};

struct Snapshot {
  std::int64_t revision = 0;
  std::vector<Document> documents;  // without tombstones, by kind and id
};

struct ChangePage {
  bool trimmed = false;  // the log no longer reaches back; take a snapshot
  std::vector<Change> changes;
};

struct Device {
  std::string id;
  std::string householdId;
  std::string memberId;
  std::string displayName;
  Instant createTime;
  Instant lastSeenTime;
  bool revoked = false;
};

// What a code lets its user do, once.
struct Code {
  enum class Purpose { kHost, kInvitation };
  Purpose purpose = Purpose::kInvitation;
  std::string householdId;  // empty for the host code
  std::string memberId;     // may be empty
  int role = 0;             // number of suppertide.v1.Role
  std::optional<Instant> expireTime;
};

// Creating a household: everything in one transaction.
struct NewHousehold {
  std::string householdId;
  std::string codeHash;  // consumed
  std::string bytes;     // the household document
  std::string memberId;
  Device device;
  std::string tokenHash;
  std::string requestId;
  std::string fingerprint;
};

// Letting a device in by an invitation: everything in one transaction.
struct Redemption {
  std::string codeHash;  // consumed
  Device device;         // of the household and member that the code is for
  std::string tokenHash;
  std::optional<Put> household;  // the household document with its new member, when there is one
  std::string requestId;         // empty: a repeat finds the code used up
  std::string fingerprint;
};

struct Redeemed {
  Device device;  // as stored: in a repeat of the household and member of the first time
  WriteResult write;
};

// One open file. Calls are safe from any thread; writes are serialised, reads
// see the last commit. Blocking: call from storage's own threads or tests, not
// from a gRPC callback (see write_queue.h).
class Store {
 public:
  static constexpr std::chrono::hours kLastSeenGrain{1};

  struct Options {
    // Each household's log and the request ids remembered reach back this many
    // writes and up to two sixteenths more, since the oldest go some at once; the log
    // less far where its documents weigh more than `keepLogBytes`.
    // The last `keepAtLeast` writes stay whatever they weigh, for those who watch.
    std::int64_t keepChanges = 20'000;
    std::int64_t keepLogBytes = 32'000'000;
    std::int64_t keepAtLeast = 100;
    int maxDocuments = 10'000;  // in a household
    bool fullSync = true;       // tests may give up durability for speed
  };

  // Opens or makes `path`; ":memory:" is private to this store. Migrates older
  // schemas forward. FAILED_PRECONDITION for a newer schema or another program's
  // file (both left untouched), or when another server has the file; DATA_LOSS
  // when the integrity check fails. `clock` outlives the store.
  static absl::StatusOr<std::unique_ptr<Store>> open(const std::string& path, const Options& options,
                                                     const Clock& clock);
  virtual ~Store() = default;

  // NOT_FOUND when there is no such household. An etag on a document that is not
  // there is NOT_FOUND, too, but for a removal, which changes nothing then. A
  // refused request may be sent again under its id. After a sync to disk has
  // failed, every further write is UNAVAILABLE until the file is opened anew.
  virtual absl::StatusOr<WriteResult> write(const WriteRequest& request) = 0;
  // All of `requests` under one commit, each with its own outcome; one failing does not touch the others.
  virtual std::vector<absl::StatusOr<WriteResult>> writeAll(const std::vector<WriteRequest>& requests) = 0;

  // NOT_FOUND also for a tombstone.
  virtual absl::StatusOr<Document> get(const std::string& householdId, const DocumentKey& key) = 0;
  // Of one kind, by id, after `afterId` (exclusive, empty: from the start), at most `limit`. No tombstones.
  virtual absl::StatusOr<std::vector<Document>> list(const std::string& householdId, const std::string& kind,
                                                     const std::string& afterId, int limit) = 0;
  virtual absl::StatusOr<Snapshot> snapshot(const std::string& householdId) = 0;
  virtual absl::StatusOr<std::int64_t> revision(const std::string& householdId) = 0;
  // Changes with revision > after, ascending, at most `limit` of them.
  virtual absl::StatusOr<ChangePage> changesAfter(const std::string& householdId, std::int64_t after,
                                                  int limit) = 0;

  virtual absl::StatusOr<bool> hasHouseholds() = 0;
  // NOT_FOUND when the code is no valid host code. A repeat gives the first
  // household; its device is replaced by the one given now, for the same member,
  // so that the new token works when the first answer was lost.
  virtual absl::StatusOr<WriteResult> createHousehold(const NewHousehold& household) = 0;

  // Hashes are of the service's making; storage only compares.
  // Drops expired codes on the way.
  virtual absl::Status addCode(const std::string& codeHash, const Code& code) = 0;
  virtual absl::Status dropCodes(Code::Purpose purpose) = 0;
  // NOT_FOUND when unknown, used or expired. Does not use it up.
  virtual absl::StatusOr<Code> findCode(const std::string& codeHash) = 0;
  // NOT_FOUND as findCode; INVALID_ARGUMENT when the device is of another
  // household; ABORTED as a write. For a day a repeat gives the first outcome
  // again, but with the device and token given now, so that the new token works
  // when the first answer was lost.
  virtual absl::StatusOr<Redeemed> redeemInvitation(const Redemption& redemption) = 0;
  // Rises with each commit that lets somebody in or out or writes a household's document, before that
  // write is answered. What was read of people stays true as long as this is what it was before reading.
  virtual std::uint64_t peopleVersion() const = 0;
  // NOT_FOUND when unknown or revoked. Keeps the last-seen time, to kLastSeenGrain.
  virtual absl::StatusOr<Device> findDevice(const std::string& tokenHash) = 0;
  // By time of making; revoked ones too.
  virtual absl::StatusOr<std::vector<Device>> listDevices(const std::string& householdId) = 0;
  // NOT_FOUND when the household has no such device; revoking again is OK.
  virtual absl::Status revokeDevice(const std::string& householdId, const std::string& deviceId) = 0;
};

// The stored document that made a write ABORTED; absent for other errors.
std::optional<Document> currentDocument(const absl::Status& status);

}  // namespace suppertide::storage
