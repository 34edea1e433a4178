// A disk that fails on command, between SQLite and the real one.
//
// While one exists it is SQLite's default. It knows itself what was synced, so the
// real disk is not asked to. Operations on files are counted from
// arm() on; the chosen one fails. Not for use from several threads at once.
#pragma once

#include <memory>
#include <string>

namespace suppertide {

class FaultVfs {
 public:
  enum class Fault {
    kWriteErrorOnce,  // the n-th write, sync or truncation reports an error
    kDiskFull,        // from the n-th write on there is no room; syncs work
    kPowerCut,        // from the n-th on nothing reaches the disk; the n-th write is torn
    kReadErrorOnce,   // the n-th read reports an error
    kSyncErrorOnce,   // the n-th sync reports an error
    kOpenErrorOnce,   // the n-th file cannot be opened
    kReadOnly,        // files open for reading only
  };

  FaultVfs();
  ~FaultVfs();

  void arm(Fault fault, int n);
  void disarm();
  // Whether the fault has struck since arm().
  bool struck() const;
  int syncs() const;

  // Puts every file back to what its last successful sync had, as a power cut
  // may. Only while no store is open.
  void loseUnsynced();

  struct State;

 private:
  std::unique_ptr<State> state_;
};

}  // namespace suppertide
