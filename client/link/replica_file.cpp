#include "client/link/replica_file.h"

#include <google/protobuf/io/zero_copy_stream_impl_lite.h>
#include <google/protobuf/util/delimited_message_util.h>

#include <fstream>
#include <sstream>
#include <utility>

#include "absl/strings/str_cat.h"
#include "client/link/assembler.h"
#include "client/link/private_file.h"
#include "client/link/replica_changes.h"

namespace suppertide::link {
namespace {

// Ahead of the messages that a server would send to a new watcher: reset, documents, bookmark.
constexpr char kMark[] = "suppertide replica 1\n";

std::string bytesOf(const Replica& replica) {
  std::stringstream out;
  out << kMark;
  v1::WatchResponse message;
  message.mutable_reset();
  google::protobuf::util::SerializeDelimitedToOstream(message, &out);
  for (v1::Change& change : changesOf(replica)) {
    *message.mutable_snapshot()->add_documents() = std::move(change);
    google::protobuf::util::SerializeDelimitedToOstream(message, &out);
    message.clear_snapshot();
  }
  message.mutable_bookmark()->set_revision(replica.revision);
  google::protobuf::util::SerializeDelimitedToOstream(message, &out);
  return std::move(out).str();
}

}  // namespace

absl::Status saveReplica(const std::filesystem::path& path, const Replica& replica) {
  return writePrivately(path, bytesOf(replica));
}

absl::StatusOr<std::shared_ptr<const Replica>> loadReplica(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return absl::NotFoundError(absl::StrCat("read ", path.string(), ": there is none"));
  std::stringstream text;
  text << file.rdbuf();
  const std::string bytes = std::move(text).str();
  const absl::Status damaged = absl::DataLossError(absl::StrCat("read ", path.string(), ": it is damaged"));
  if (bytes.rfind(kMark, 0) != 0) return damaged;
  constexpr std::size_t kStart = sizeof(kMark) - 1;
  google::protobuf::io::ArrayInputStream in(bytes.data() + kStart, static_cast<int>(bytes.size() - kStart));
  Assembler assembler;
  bool end = false;
  while (!end) {
    v1::WatchResponse message;
    if (!google::protobuf::util::ParseDelimitedFromZeroCopyStream(&message, &in, &end)) return damaged;
    if (assembler.take(message).caughtUp) return assembler.replica();
  }
  return damaged;
}

ReplicaKeeper::ReplicaKeeper(std::filesystem::path path, std::chrono::milliseconds pause)
    : path_(std::move(path)), pause_(pause), thread_([this] { run(); }) {}

ReplicaKeeper::~ReplicaKeeper() {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    stopping_ = true;
  }
  wake_.notify_all();
  thread_.join();
}

void ReplicaKeeper::keep(std::shared_ptr<const Replica> replica) {
  const std::lock_guard<std::mutex> lock(mutex_);
  next_ = std::move(replica);
  wake_.notify_all();
}

void ReplicaKeeper::run() {
  std::unique_lock<std::mutex> lock(mutex_);
  while (true) {
    wake_.wait(lock, [this] { return stopping_ || next_ != nullptr; });
    const std::shared_ptr<const Replica> replica = std::exchange(next_, nullptr);
    const bool last = stopping_;
    lock.unlock();
    // What cannot be kept is received anew next time.
    if (replica != nullptr) saveReplica(path_, *replica).IgnoreError();
    lock.lock();
    if (last) return;
    wake_.wait_for(lock, pause_, [this] { return stopping_; });
  }
}

}  // namespace suppertide::link
