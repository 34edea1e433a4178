#include "tests/bench/service_bench/raw_server.h"

#include <grpcpp/generic/async_generic_service.h>
#include <grpcpp/grpcpp.h>
#include <sqlite3.h>

#include <array>
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

// A prepared statement; aborts the bench when it cannot be made or run.
class Prepared {
 public:
  void make(sqlite3* database, const char* sql) {
    if (sqlite3_prepare_v2(database, sql, -1, &statement_, nullptr) != SQLITE_OK) std::abort();
  }
  // `bytes` is the only thing that statements of the bench are given.
  void run(const std::string& bytes) {
    if (sqlite3_bind_parameter_count(statement_) > 0)
      sqlite3_bind_blob(statement_, 1, bytes.data(), static_cast<int>(bytes.size()), SQLITE_STATIC);
    if (sqlite3_step(statement_) != SQLITE_DONE) std::abort();
    sqlite3_reset(statement_);
  }
  void end() { sqlite3_finalize(statement_); }

 private:
  sqlite3_stmt* statement_ = nullptr;
};

// One thread, one commit at a time with full sync: of one row, or of the least that
// a document is that others watch and that is written exactly once.
class Disk {
 public:
  enum class What {
    kOneRow,
    kDocument,  // the document, its place in the log, the request's id, the household's revision
  };
  using Done = std::function<void()>;

  explicit Disk(const std::string& path) {
    const bool opened =
        sqlite3_open(path.c_str(), &database_) == SQLITE_OK &&
        sqlite3_exec(database_,
                     "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
                     "CREATE TABLE IF NOT EXISTS rows (id INTEGER PRIMARY KEY, bytes BLOB);"
                     "CREATE TABLE IF NOT EXISTS documents (id INTEGER PRIMARY KEY, bytes BLOB);"
                     "CREATE TABLE IF NOT EXISTS log (revision INTEGER PRIMARY KEY, bytes BLOB);"
                     "CREATE TABLE IF NOT EXISTS requests (id BLOB PRIMARY KEY) WITHOUT ROWID;"
                     "CREATE TABLE IF NOT EXISTS households (id INTEGER PRIMARY KEY, revision INTEGER);"
                     "INSERT INTO households VALUES (1, 0)",
                     nullptr, nullptr, nullptr) == SQLITE_OK;
    if (!opened) std::abort();
    row_.make(database_, "INSERT INTO rows (bytes) VALUES (?)");
    document_[0].make(database_, "BEGIN IMMEDIATE");
    document_[1].make(database_, "INSERT OR REPLACE INTO documents VALUES (1, ?)");
    document_[2].make(database_, "INSERT INTO log (bytes) VALUES (?)");
    document_[3].make(database_, "INSERT INTO requests VALUES (randomblob(16))");
    document_[4].make(database_, "UPDATE households SET revision = revision + 1 WHERE id = 1");
    document_[5].make(database_, "COMMIT");
    thread_ = std::thread([this] { work(); });
  }
  ~Disk() {
    {
      const std::lock_guard lock(mutex_);
      closing_ = true;
    }
    wake_.notify_one();
    thread_.join();
    row_.end();
    for (Prepared& step : document_) step.end();
    sqlite3_close(database_);
  }
  void commit(What what, std::string bytes, Done done) {
    {
      const std::lock_guard lock(mutex_);
      waiting_.push_back({what, std::move(bytes), std::move(done)});
    }
    wake_.notify_one();
  }

 private:
  struct Commit {
    What what;
    std::string bytes;
    Done done;
  };

  void work() {
    std::unique_lock lock(mutex_);
    for (;;) {
      wake_.wait(lock, [this] { return closing_ || !waiting_.empty(); });
      if (waiting_.empty()) return;
      const Commit commit = std::move(waiting_.front());
      waiting_.pop_front();
      lock.unlock();
      if (commit.what == What::kOneRow)
        row_.run(commit.bytes);
      else
        for (Prepared& step : document_) step.run(commit.bytes);
      commit.done();
      lock.lock();
    }
  }

  sqlite3* database_ = nullptr;
  Prepared row_;
  std::array<Prepared, 6> document_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<Commit> waiting_;  // guarded by mutex_
  bool closing_ = false;        // guarded by mutex_
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
    if (endsWith(method_, "/Commit")) return commit(Disk::What::kOneRow);
    if (endsWith(method_, "/CommitDocument")) return commit(Disk::What::kDocument);
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
  void commit(Disk::What what) {
    disk_.commit(what, textOf(request_), [this] { answer(); });
  }
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
