// Whole copies of a data file: made while a server serves it, and put back.
#pragma once

#include <cstdint>
#include <string>

#include "absl/status/status.h"
#include "absl/status/statusor.h"

namespace suppertide::storage {

struct CopyReport {
  std::int64_t bytes = 0;
  std::int64_t households = 0;
  std::int64_t documents = 0;  // without tombstones
  std::string setAside;        // where restore() keeps the file that was there; empty: there was none
};

// Copies the file at `from` to `to`, as it is at one moment; a server may go on
// writing to it. The copy is one file, checked, on disk, and readable by its
// owner alone. `to` appears whole or not at all. ALREADY_EXISTS when it is there;
// the errors of Store::open() for `from`, and UNAVAILABLE when `to` cannot be
// written.
absl::StatusOr<CopyReport> backUp(const std::string& from, const std::string& to);

// Puts the copy at `from` in place of the data file at `to`. With `replace` a file
// that is there is kept as "TO.before-restore" (or "TO.before-restore-2" and so on, over nothing that is
// there), without it that is ALREADY_EXISTS. INVALID_ARGUMENT when both are one file. FAILED_PRECONDITION
// when a server has `to`, or when `from` is no data file that this program knows; DATA_LOSS when it is
// damaged.
//
// Revisions jump ahead and the change logs are dropped, so that devices which saw
// more than the copy has start over with a snapshot instead of mixing two
// histories. Invitations and the host code are dropped: they may have been used.
// Known devices stay, as the copy has them.
absl::StatusOr<CopyReport> restore(const std::string& from, const std::string& to, bool replace);

}  // namespace suppertide::storage
