#include "tests/support/watch_recorder.h"

#include <set>

#include "absl/strings/str_cat.h"

namespace suppertide {

namespace {

bool same(const storage::Document& a, const storage::Document& b) {
  return a.key == b.key && a.bytes == b.bytes && a.etag == b.etag && a.revision == b.revision &&
         a.createTime == b.createTime && a.updateTime == b.updateTime && a.memberId == b.memberId &&
         a.deleted == b.deleted;
}

bool same(const std::vector<storage::Document>& a, const std::vector<storage::Document>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (!same(a[i], b[i])) return false;
  }
  return true;
}

bool same(const Replica& a, const Replica& b) {
  if (a.size() != b.size()) return false;
  for (auto left = a.begin(), right = b.begin(); left != a.end(); ++left, ++right) {
    if (left->first != right->first || !same(left->second, right->second)) return false;
  }
  return true;
}

}  // namespace

void apply(const storage::Change& change, Replica& replica) {
  for (const storage::Document& document : change.documents) {
    if (document.deleted) {
      replica.erase(document.key);
    } else {
      replica[document.key] = document;
    }
  }
}

void WatchRecorder::begin(std::int64_t after) {
  events_.push_back({Event::Kind::kBegin, after, nullptr, {}});
}

void WatchRecorder::take(const sync::FeedItem& item) {
  if (std::holds_alternative<sync::Reset>(item)) {
    replica_.clear();
    revision_ = 0;
    sawReset_ = true;
    events_.push_back({Event::Kind::kReset, 0, nullptr, {}});
  } else if (const auto* part = std::get_if<sync::SnapshotPart>(&item)) {
    for (const storage::Document& document : part->documents) replica_[document.key] = document;
  } else if (const auto* bookmark = std::get_if<sync::Bookmark>(&item)) {
    revision_ = bookmark->revision;
    events_.push_back({Event::Kind::kBookmark, revision_, nullptr, replica_});
  } else if (const auto* change = std::get_if<std::shared_ptr<const storage::Change>>(&item)) {
    apply(**change, replica_);
    revision_ = (*change)->revision;
    events_.push_back({Event::Kind::kChange, revision_, *change, {}});
  }
}

Complaints WatchValidator::ordered() const {
  Complaints complaints;
  std::int64_t last = 0;
  for (const Event& event : events_) {
    if (event.kind == Kind::kBegin || event.kind == Kind::kReset) {
      last = event.revision;
    } else if (event.revision < last) {
      complaints.push_back(absl::StrCat(event.revision, " came after ", last));
    } else {
      last = event.revision;
    }
  }
  return complaints;
}

Complaints WatchValidator::unique() const {
  Complaints complaints;
  std::set<std::int64_t> seen;
  for (const Event& event : events_) {
    if (event.kind == Kind::kReset) seen.clear();
    if (event.kind == Kind::kChange && !seen.insert(event.revision).second) {
      complaints.push_back(absl::StrCat("change ", event.revision, " came twice"));
    }
  }
  return complaints;
}

Complaints WatchValidator::atomic() const {
  Complaints complaints;
  for (const Event& event : events_) {
    if (event.kind != Kind::kChange) continue;
    const bool known = event.revision >= 1 && event.revision <= std::ssize(committed_);
    if (!known) {
      complaints.push_back(absl::StrCat("change ", event.revision, " was never committed"));
      continue;
    }
    const storage::Change& truth = *committed_[static_cast<std::size_t>(event.revision - 1)];
    if (!same(event.change->documents, truth.documents) || event.change->memberId != truth.memberId ||
        event.change->commitTime != truth.commitTime) {
      complaints.push_back(absl::StrCat("change ", event.revision, " is not as it was committed"));
    }
  }
  return complaints;
}

Complaints WatchValidator::reliable() const {
  Complaints complaints;
  std::int64_t last = 0;
  bool snapshot = false;  // the next bookmark tells where it stands
  for (const Event& event : events_) {
    if (event.kind == Kind::kReset) snapshot = true;
    if (event.kind == Kind::kChange && event.revision > last + 1) {
      complaints.push_back(absl::StrCat("nothing came between ", last, " and ", event.revision));
    }
    if (event.kind == Kind::kBookmark && !snapshot && event.revision > last) {
      complaints.push_back(absl::StrCat("bookmark ", event.revision, " though only ", last, " had come"));
    }
    if (event.kind == Kind::kChange || event.kind == Kind::kBookmark) {
      last = event.revision;
      snapshot = false;
    }
  }
  return complaints;
}

Complaints WatchValidator::resumable() const {
  Complaints complaints;
  for (std::size_t i = 0; i + 1 < events_.size(); ++i) {
    const Event& begun = events_[i];
    const Event& first = events_[i + 1];
    if (begun.kind != Kind::kBegin) continue;
    const bool right = first.kind == Kind::kBegin || first.kind == Kind::kReset ||
                       (first.kind == Kind::kChange && first.revision == begun.revision + 1) ||
                       (first.kind == Kind::kBookmark && first.revision == begun.revision);
    if (begun.revision == 0 ? first.kind == Kind::kBegin || first.kind == Kind::kReset : right) continue;
    complaints.push_back(absl::StrCat("the stream after ", begun.revision, " went on with ", first.revision));
  }
  return complaints;
}

Complaints WatchValidator::bookmarkable() const {
  Complaints complaints;
  Replica truth;
  std::int64_t at = 0;
  for (const Event& event : events_) {
    if (event.kind != Kind::kBookmark) continue;
    if (event.revision < at) {
      truth.clear();
      at = 0;
    }
    for (; at < event.revision && at < std::ssize(committed_); ++at) {
      apply(*committed_[static_cast<std::size_t>(at)], truth);
    }
    if (at != event.revision || !same(event.replica, truth)) {
      complaints.push_back(absl::StrCat("at bookmark ", event.revision, " the replica is another"));
    }
  }
  return complaints;
}

Complaints WatchValidator::all() const {
  Complaints complaints;
  const auto add = [&complaints](const char* promise, const Complaints& found) {
    for (const std::string& complaint : found) complaints.push_back(absl::StrCat(promise, ": ", complaint));
  };
  add("ordered", ordered());
  add("unique", unique());
  add("atomic", atomic());
  add("reliable", reliable());
  add("resumable", resumable());
  add("bookmarkable", bookmarkable());
  return complaints;
}

}  // namespace suppertide
