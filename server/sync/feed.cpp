#include "server/sync/feed.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"

namespace suppertide::sync {

namespace {

// Small enough for one message, large enough to be quick.
constexpr std::size_t kPartDocuments = 100;
constexpr std::size_t kPartBytes = 512 * 1024;
constexpr int kPageChanges = 64;

std::vector<FeedItem> snapshotItems(storage::Snapshot snapshot) {
  std::vector<FeedItem> items{Reset{}};
  SnapshotPart part;
  std::size_t bytes = 0;
  for (storage::Document& document : snapshot.documents) {
    const bool full = part.documents.size() == kPartDocuments || bytes + document.bytes.size() > kPartBytes;
    if (full && !part.documents.empty()) {
      items.emplace_back(std::exchange(part, {}));
      bytes = 0;
    }
    bytes += document.bytes.size();
    part.documents.push_back(std::move(document));
  }
  if (!part.documents.empty()) items.emplace_back(std::move(part));
  items.emplace_back(Bookmark{snapshot.revision});
  return items;
}

}  // namespace

Feed::Feed(Hub& hub, storage::Store& store, std::string householdId, std::int64_t after)
    : hub_(hub), store_(store), householdId_(std::move(householdId)), delivered_(after) {}

absl::StatusOr<FeedItem> Feed::next() {
  if (!started_) {
    const absl::Status status = start();
    if (!status.ok()) return status;
  }
  if (ready_.empty()) {
    const absl::Status status = refill();
    if (!status.ok()) return status;
  }
  if (ready_.empty()) {
    if (!std::exchange(bookmarkDue_, false)) return Nothing{};
    return Bookmark{delivered_};
  }
  FeedItem item = std::move(ready_.back());
  ready_.pop_back();
  // Moves only with what is handed out, so that bookmark() never runs ahead.
  if (const auto* change = std::get_if<std::shared_ptr<const storage::Change>>(&item)) {
    delivered_ = (*change)->revision;
  } else if (const auto* bookmark = std::get_if<Bookmark>(&item)) {
    delivered_ = bookmark->revision;
    bookmarkDue_ = false;
  }
  return item;
}

bool Feed::isUpToDate() const {
  if (!started_ || !ready_.empty() || bookmarkDue_) return false;
  const Hub::Recent recent = hub_.recentAfter(householdId_, delivered_);
  return recent.atHand && recent.changes.empty();
}

absl::Status Feed::start() {
  const absl::StatusOr<std::int64_t> present = store_.revision(householdId_);
  if (!present.ok()) return present.status();
  started_ = true;
  if (delivered_ == 0) return readSnapshot();
  if (delivered_ > 0 && delivered_ <= *present) return absl::OkStatus();
  const std::int64_t asked = std::exchange(delivered_, *present);
  bookmarkDue_ = false;
  return absl::InvalidArgumentError(
      absl::StrCat("watch: revision ", asked, " does not exist; the last one is ", *present));
}

absl::Status Feed::refill() {
  Hub::Recent recent = hub_.recentAfter(householdId_, delivered_);
  if (recent.atHand) {
    ready_.assign(std::make_move_iterator(recent.changes.rbegin()),
                  std::make_move_iterator(recent.changes.rend()));
    return absl::OkStatus();
  }
  absl::StatusOr<storage::ChangePage> page = store_.changesAfter(householdId_, delivered_, kPageChanges);
  if (!page.ok()) return page.status();
  if (page->trimmed) return readSnapshot();
  if (!page->changes.empty()) bookmarkDue_ = true;
  for (auto change = page->changes.rbegin(); change != page->changes.rend(); ++change) {
    ready_.emplace_back(std::make_shared<const storage::Change>(std::move(*change)));
  }
  return absl::OkStatus();
}

absl::Status Feed::readSnapshot() {
  absl::StatusOr<storage::Snapshot> snapshot = store_.snapshot(householdId_);
  if (!snapshot.ok()) return snapshot.status();
  ready_ = snapshotItems(*std::move(snapshot));
  std::reverse(ready_.begin(), ready_.end());
  return absl::OkStatus();
}

}  // namespace suppertide::sync
