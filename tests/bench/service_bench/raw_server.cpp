#include "tests/bench/service_bench/raw_server.h"

#include <grpcpp/generic/async_generic_service.h>
#include <grpcpp/grpcpp.h>
#include <sqlite3.h>

#include <condition_variable>
#include <cstdlib>
#include <deque>
#include <mutex>
#include <set>
#include <thread>

namespace suppertide::bench {

namespace {

bool endsWith(const std::string& text, const std::string& ending) {
  return text.size() >= ending.size() &&
         text.compare(text.size() - ending.size(), ending.size(), ending) == 0;
}

// One table, one thread, one commit at a time with full sync.
class Disk {
 public:
  explicit Disk(const std::string& path) {
    const bool opened = sqlite3_open(path.c_str(), &database_) == SQLITE_OK &&
                        sqlite3_exec(database_,
                                     "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
                                     "CREATE TABLE IF NOT EXISTS rows (id INTEGER PRIMARY KEY, bytes BLOB)",
                                     nullptr, nullptr, nullptr) == SQLITE_OK &&
                        sqlite3_prepare_v2(database_, "INSERT INTO rows (bytes) VALUES (?)", -1, &insert_,
                                           nullptr) == SQLITE_OK;
    if (!opened) std::abort();
    thread_ = std::thread([this] { work(); });
  }
  ~Disk() {
    {
      const std::lock_guard lock(mutex_);
      closing_ = true;
    }
    wake_.notify_one();
    thread_.join();
    sqlite3_finalize(insert_);
    sqlite3_close(database_);
  }
  void commit(std::string bytes, std::function<void()> done) {
    {
      const std::lock_guard lock(mutex_);
      waiting_.emplace_back(std::move(bytes), std::move(done));
    }
    wake_.notify_one();
  }

 private:
  void work() {
    std::unique_lock lock(mutex_);
    for (;;) {
      wake_.wait(lock, [this] { return closing_ || !waiting_.empty(); });
      if (waiting_.empty()) return;
      auto [bytes, done] = std::move(waiting_.front());
      waiting_.pop_front();
      lock.unlock();
      sqlite3_bind_blob(insert_, 1, bytes.data(), static_cast<int>(bytes.size()), SQLITE_STATIC);
      if (sqlite3_step(insert_) != SQLITE_DONE) std::abort();
      sqlite3_reset(insert_);
      done();
      lock.lock();
    }
  }

  sqlite3* database_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<std::pair<std::string, std::function<void()>>> waiting_;  // guarded by mutex_
  bool closing_ = false;                                               // guarded by mutex_
  std::thread thread_;
};

std::string textOf(const grpc::ByteBuffer& buffer) {
  std::vector<grpc::Slice> slices;
  buffer.Dump(&slices);
  std::string text;
  for (const grpc::Slice& slice : slices)
    text.append(reinterpret_cast<const char*>(slice.begin()), slice.size());
  return text;
}

class Call;

// The streams that are open.
struct Listeners {
  std::mutex mutex;
  std::set<Call*> calls;  // guarded by mutex
  void send(const grpc::ByteBuffer& bytes);
};

class Call : public grpc::ServerGenericBidiReactor {
 public:
  Call(Disk& disk, Listeners& listeners, std::string method)
      : disk_(disk), listeners_(listeners), method_(std::move(method)) {
    StartRead(&request_);
  }

  void OnReadDone(bool ok) override {
    if (!ok) return endsWith(method_, "/Listen") ? void() : Finish(grpc::Status::CANCELLED);
    if (endsWith(method_, "/Echo")) return answer();
    if (endsWith(method_, "/Commit")) return disk_.commit(textOf(request_), [this] { answer(); });
    if (endsWith(method_, "/Send")) {
      listeners_.send(request_);
      return answer();
    }
    StartSendInitialMetadata();
    const std::lock_guard lock(listeners_.mutex);
    listeners_.calls.insert(this);
  }
  void OnWriteDone(bool) override {
    const std::lock_guard lock(mutex_);
    writing_ = false;
    writeNext();
  }
  void OnCancel() override {
    {
      const std::lock_guard lock(listeners_.mutex);
      listeners_.calls.erase(this);
    }
    Finish(grpc::Status::CANCELLED);
  }
  void OnDone() override { delete this; }

  void push(const grpc::ByteBuffer& bytes) {
    const std::lock_guard lock(mutex_);
    queue_.push_back(bytes);
    writeNext();
  }

 private:
  void answer() { StartWriteAndFinish(&request_, grpc::WriteOptions(), grpc::Status::OK); }
  void writeNext() {
    if (writing_ || queue_.empty()) return;
    message_ = std::move(queue_.front());
    queue_.pop_front();
    writing_ = true;
    StartWrite(&message_);
  }

  Disk& disk_;
  Listeners& listeners_;
  const std::string method_;
  grpc::ByteBuffer request_;
  std::mutex mutex_;
  std::deque<grpc::ByteBuffer> queue_;  // guarded by mutex_
  grpc::ByteBuffer message_;            // in flight
  bool writing_ = false;                // guarded by mutex_
};

void Listeners::send(const grpc::ByteBuffer& bytes) {
  const std::lock_guard lock(mutex);
  for (Call* call : calls) call->push(bytes);
}

class Service : public grpc::CallbackGenericService {
 public:
  explicit Service(const std::string& dataFile) : disk_(dataFile) {}
  grpc::ServerGenericBidiReactor* CreateReactor(grpc::GenericCallbackServerContext* context) override {
    return new Call(disk_, listeners_, context->method());
  }

 private:
  Disk disk_;
  Listeners listeners_;
};

}  // namespace

struct RawServer::State {
  explicit State(const std::string& dataFile) : service(dataFile) {}
  Service service;
  std::unique_ptr<grpc::Server> server;
};

RawServer::RawServer(const std::string& dataFile, const std::string& listen)
    : state_(std::make_unique<State>(dataFile)) {
  grpc::ServerBuilder builder;
  builder.AddListeningPort(listen, grpc::InsecureServerCredentials());
  builder.RegisterCallbackGenericService(&state_->service);
  state_->server = builder.BuildAndStart();
  if (state_->server == nullptr) std::abort();
}

RawServer::~RawServer() {
  state_->server->Shutdown(std::chrono::system_clock::now());
}

}  // namespace suppertide::bench
