// A household's whole evening on a disk that fails at its n-th operation, for every n.
//
// The people go on like people: what was not acknowledged they do again, under the
// same request ids, once the server is up again. At the end all must be as after an
// evening on a sound disk: nothing lost, nothing twice, nothing by halves.
#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <set>

#include "server/storage/inspection.h"
#include "tests/storage/fault_vfs.h"
#include "tests/support/stored_household.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

using absl::StatusCode;
using Fault = FaultVfs::Fault;

constexpr char kHost[] = "host code";
constexpr char kInvitation[] = "invitation";

Store::Options eveningOptions() {
  Store::Options options;
  options.keepChanges = 5;  // so that the log is trimmed, too
  return options;
}

// What happens, each once, in this order.
using Step = std::function<absl::Status(Store&)>;

Step writing(std::vector<Put> puts, const std::string& requestId) {
  return [=](Store& store) { return store.write(writeOf(puts, requestId)).status(); };
}

absl::Status invite(Store& store) {
  Code code;
  code.householdId = kHome;
  code.memberId = "ben";
  code.role = 2;
  return store.addCode(kInvitation, code);
}

absl::Status join(Store& store) {
  Redemption joining;
  joining.codeHash = kInvitation;
  joining.device.id = "phone";
  joining.device.householdId = kHome;
  joining.device.memberId = "ben";
  joining.tokenHash = "phone token";
  joining.household = put("household", kHome, "the household with ben");
  joining.requestId = joining.fingerprint = "join";
  return store.redeemInvitation(joining).status();
}

absl::Status found(Store& store) {
  Code code;
  code.purpose = Code::Purpose::kHost;
  const absl::Status status = store.addCode(kHost, code);
  return status.ok() ? store.createHousehold(newHousehold()).status() : status;
}

std::vector<Step> evening() {
  const std::string large(9000, 'r');  // more than a page
  std::vector<Step> steps = {
      found,
      writing({put("kitchen", "k", "ovens"), put("recipe", "loaf", large), put("recipe", "tart", "eggs"),
               put("event", "supper", "at eight")},
              "import"),
      invite,
      join,
      writing({put("plan", "supper", std::string(20'000, 'p'))}, "plan"),
  };
  for (int report = 0; report < 4; ++report) {
    const std::string n = std::to_string(report);
    steps.push_back(writing({put("progress", "supper", "reports up to " + n)}, "report-" + n));
  }
  steps.push_back(writing({removal("recipe", "tart"), put("event", "supper", "at nine")}, "change"));
  return steps;
}

struct End {
  std::int64_t revision = 0;
  std::map<DocumentKey, std::string> documents;
  std::vector<std::pair<std::string, bool>> devices;
  std::vector<std::string> changes;  // what the log has, without etags
  friend bool operator==(const End&, const End&) = default;
};

End endOf(Store& store) {
  End end;
  end.revision = *store.revision(kHome);
  const auto snapshot = store.snapshot(kHome);
  const auto devices = store.listDevices(kHome);
  const auto page = store.changesAfter(kHome, end.revision - 5, 100);
  for (const Document& document : snapshot->documents) end.documents[document.key] = document.bytes;
  for (const Device& device : *devices) end.devices.emplace_back(device.id, device.revoked);
  EXPECT_FALSE(page->trimmed);
  for (const Change& change : page->changes)
    for (const Document& document : change.documents)
      end.changes.push_back(std::to_string(change.revision) + document.key.id + document.bytes);
  return end;
}

class EveningTest : public ::testing::Test {
 protected:
  // Goes through the evening from step `next` on until something fails; `next` is
  // then the first step that was not acknowledged. True when nothing failed.
  bool live(const std::string& path, std::size_t& next, std::set<StatusCode>& errors) {
    const absl::StatusOr<std::unique_ptr<Store>> store = Store::open(path, eveningOptions(), clock_);
    absl::Status status = store.status();
    for (const std::vector<Step> steps = evening(); status.ok() && next < steps.size();) {
      status = steps[next](**store);
      if (status.ok()) ++next;
    }
    if (!status.ok()) errors.insert(status.code());
    return status.ok();
  }

  End soundEnd() {
    TempDir dir;
    std::set<StatusCode> errors;
    std::size_t next = 0;
    EXPECT_TRUE(live(dir.file("data"), next, errors));
    return endOf(*openStore(dir.file("data"), eveningOptions(), clock_));
  }

  void failEach(Fault fault, const std::set<StatusCode>& allowed) {
    const End sound = soundEnd();
    int n = 1;
    for (bool struck = true; struck && !HasFailure(); ++n) {
      SCOPED_TRACE("operation " + std::to_string(n));
      TempDir dir;
      const std::string path = dir.file("data");
      std::set<StatusCode> errors;
      std::size_t next = 0;
      disk_.arm(fault, n);
      live(path, next, errors);
      struck = disk_.struck();
      disk_.disarm();
      if (struck && fault == Fault::kPowerCut) disk_.loseUnsynced();
      for (const StatusCode code : errors) EXPECT_TRUE(allowed.contains(code)) << static_cast<int>(code);
      errors.clear();
      // The server is started anew, and what was not acknowledged is asked again.
      EXPECT_TRUE(live(path, next, errors)) << "after the failure";
      EXPECT_TRUE(endOf(*openStore(path, eveningOptions(), clock_)) == sound);
      const auto inspection = inspect(path);
      ASSERT_TRUE(inspection.ok()) << inspection.status();
      EXPECT_TRUE(inspection->damages.empty()) << inspection->damages.front();
    }
    EXPECT_GT(n, 4) << "the fault hardly struck";
    RecordProperty("operations", n);
  }

  ManualClock clock_{kNoon};
  FaultVfs disk_;
};

TEST_F(EveningTest, SurvivesEachFailedWrite) {
  failEach(Fault::kWriteErrorOnce, {StatusCode::kUnavailable});
}

TEST_F(EveningTest, SurvivesEachFailedSync) {
  failEach(Fault::kSyncErrorOnce, {StatusCode::kUnavailable});
}

TEST_F(EveningTest, SurvivesEachFileThatDoesNotOpen) {
  failEach(Fault::kOpenErrorOnce, {StatusCode::kUnavailable});
}

TEST_F(EveningTest, SurvivesAFullDiskAtAnyMoment) {
  failEach(Fault::kDiskFull, {StatusCode::kResourceExhausted});
}

TEST_F(EveningTest, SurvivesAPowerCutAtAnyMoment) {
  failEach(Fault::kPowerCut, {StatusCode::kUnavailable});
}

TEST_F(EveningTest, SurvivesEachFailedRead) {
  failEach(Fault::kReadErrorOnce, {StatusCode::kUnavailable});
}

}  // namespace
}  // namespace suppertide::storage
