#include "tests/storage/fault_vfs.h"

#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <new>

namespace suppertide {

namespace {

std::string contentsOf(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

struct FaultVfs::State {
  sqlite3_vfs vfs{};
  sqlite3_vfs* real = nullptr;
  sqlite3_io_methods methods{};
  Fault fault = Fault::kWriteErrorOnce;
  int countdown = 0;  // 0: not armed
  bool struck = false;
  int syncs = 0;
  std::map<std::string, std::string> synced;  // contents by path, as of the last sync

  // Counts one operation; true when it is to fail.
  bool fails(bool once) {
    if (countdown == 0) return struck && !once;
    if (--countdown > 0) return false;
    struck = true;
    return true;
  }
  bool writeFails(bool isWrite) {
    if (fault == Fault::kWriteErrorOnce) return fails(true);
    if (fault == Fault::kDiskFull) return isWrite && fails(false);
    return fault == Fault::kPowerCut && fails(false);
  }
};

namespace {

// What SQLite sees as its file; the real one lies right behind.
struct File {
  sqlite3_file base;
  FaultVfs::State* state;
  const char* path;
  sqlite3_file* real;
};

File& self(sqlite3_file* file) {
  return *reinterpret_cast<File*>(file);
}
sqlite3_file* realOf(sqlite3_file* file) {
  return self(file).real;
}

int write(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at) {
  FaultVfs::State& state = *self(file).state;
  const bool wasWhole = !state.struck;
  if (!state.writeFails(true)) return realOf(file)->pMethods->xWrite(realOf(file), bytes, size, at);
  if (state.fault == FaultVfs::Fault::kDiskFull) return SQLITE_FULL;
  if (state.fault == FaultVfs::Fault::kPowerCut && wasWhole) {
    realOf(file)->pMethods->xWrite(realOf(file), bytes, size / 2, at);
  }
  return SQLITE_IOERR_WRITE;
}

int read(sqlite3_file* file, void* bytes, int size, sqlite3_int64 at) {
  FaultVfs::State& state = *self(file).state;
  if (state.fault == FaultVfs::Fault::kReadErrorOnce && state.fails(true)) return SQLITE_IOERR_READ;
  return realOf(file)->pMethods->xRead(realOf(file), bytes, size, at);
}

int sync(sqlite3_file* file, int) {
  FaultVfs::State& state = *self(file).state;
  if (state.writeFails(false)) return SQLITE_IOERR_FSYNC;
  if (state.fault == FaultVfs::Fault::kSyncErrorOnce && state.fails(true)) return SQLITE_IOERR_FSYNC;
  if (self(file).path == nullptr) return SQLITE_OK;
  ++state.syncs;
  state.synced[self(file).path] = contentsOf(self(file).path);
  return SQLITE_OK;
}

int truncate(sqlite3_file* file, sqlite3_int64 size) {
  if (self(file).state->writeFails(true)) return SQLITE_IOERR_TRUNCATE;
  return realOf(file)->pMethods->xTruncate(realOf(file), size);
}

// Everything else goes straight through.
sqlite3_io_methods methodsOver() {
  sqlite3_io_methods methods{};
  methods.iVersion = 2;
  methods.xClose = [](sqlite3_file* f) { return realOf(f)->pMethods->xClose(realOf(f)); };
  methods.xRead = read;
  methods.xWrite = write;
  methods.xTruncate = truncate;
  methods.xSync = sync;
  methods.xFileSize = [](sqlite3_file* f, sqlite3_int64* s) {
    return realOf(f)->pMethods->xFileSize(realOf(f), s);
  };
  methods.xLock = [](sqlite3_file* f, int l) { return realOf(f)->pMethods->xLock(realOf(f), l); };
  methods.xUnlock = [](sqlite3_file* f, int l) { return realOf(f)->pMethods->xUnlock(realOf(f), l); };
  methods.xCheckReservedLock = [](sqlite3_file* f, int* r) {
    return realOf(f)->pMethods->xCheckReservedLock(realOf(f), r);
  };
  methods.xFileControl = [](sqlite3_file* f, int op, void* arg) {
    return realOf(f)->pMethods->xFileControl(realOf(f), op, arg);
  };
  methods.xSectorSize = [](sqlite3_file* f) { return realOf(f)->pMethods->xSectorSize(realOf(f)); };
  methods.xDeviceCharacteristics = [](sqlite3_file* f) {
    return realOf(f)->pMethods->xDeviceCharacteristics(realOf(f));
  };
  methods.xShmMap = [](sqlite3_file* f, int page, int size, int extend, void volatile** out) {
    return realOf(f)->pMethods->xShmMap(realOf(f), page, size, extend, out);
  };
  methods.xShmLock = [](sqlite3_file* f, int offset, int n, int flags) {
    return realOf(f)->pMethods->xShmLock(realOf(f), offset, n, flags);
  };
  methods.xShmBarrier = [](sqlite3_file* f) { realOf(f)->pMethods->xShmBarrier(realOf(f)); };
  methods.xShmUnmap = [](sqlite3_file* f, int remove) {
    return realOf(f)->pMethods->xShmUnmap(realOf(f), remove);
  };
  return methods;
}

int open(sqlite3_vfs* vfs, const char* path, sqlite3_file* file, int flags, int* outFlags) {
  auto& state = *static_cast<FaultVfs::State*>(vfs->pAppData);
  File& opened = *new (file) File{};
  opened.state = &state;
  opened.path = path;  // SQLite keeps it as long as the file
  opened.real = reinterpret_cast<sqlite3_file*>(&opened + 1);
  if (state.fault == FaultVfs::Fault::kReadOnly && state.countdown > 0 &&
      (flags & SQLITE_OPEN_READWRITE) != 0) {
    return SQLITE_CANTOPEN;  // SQLite then tries again for reading only
  }
  if (state.fault == FaultVfs::Fault::kOpenErrorOnce && state.fails(true)) return SQLITE_CANTOPEN;
  const int code = state.real->xOpen(state.real, path, opened.real, flags, outFlags);
  if (opened.real->pMethods != nullptr) opened.base.pMethods = &state.methods;
  return code;
}

int remove(sqlite3_vfs* vfs, const char* path, int syncFolder) {
  auto& state = *static_cast<FaultVfs::State*>(vfs->pAppData);
  if (state.writeFails(false)) return SQLITE_IOERR_DELETE;
  state.synced.erase(path);
  return state.real->xDelete(state.real, path, syncFolder);
}

}  // namespace

FaultVfs::FaultVfs() : state_(std::make_unique<State>()) {
  state_->real = sqlite3_vfs_find(nullptr);
  state_->methods = methodsOver();
  state_->vfs = *state_->real;  // time, randomness and paths come from the real one
  state_->vfs.pNext = nullptr;
  state_->vfs.zName = "fault";
  state_->vfs.szOsFile = static_cast<int>(sizeof(File)) + state_->real->szOsFile;
  state_->vfs.pAppData = state_.get();
  state_->vfs.xOpen = open;
  state_->vfs.xDelete = remove;
  sqlite3_vfs_register(&state_->vfs, 1);
}

FaultVfs::~FaultVfs() {
  sqlite3_vfs_unregister(&state_->vfs);
  sqlite3_vfs_register(state_->real, 1);
}

void FaultVfs::arm(Fault fault, int n) {
  state_->fault = fault;
  state_->countdown = n;
  state_->struck = false;
}

void FaultVfs::disarm() {
  arm(Fault::kWriteErrorOnce, 0);
}

bool FaultVfs::struck() const {
  return state_->struck;
}

int FaultVfs::syncs() const {
  return state_->syncs;
}

void FaultVfs::loseUnsynced() {
  for (const auto& [path, contents] : state_->synced) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << contents;
    std::filesystem::remove(path + "-shm");
  }
}

}  // namespace suppertide
