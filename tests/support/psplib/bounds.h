// What is known of published project schedules, as listed in CSV beside them.
#pragma once

#include <istream>
#include <map>
#include <string>

#include "absl/status/statusor.h"

namespace suppertide::planning::psplib {

struct Bounds {
  bool unsat = false;  // proven to have no schedule; the others then mean nothing
  int lower = 0;       // of the makespan
  int upper = 0;       // equal to `lower` where the optimum is known
};

// By instance, without the file's ending. The heading names the columns:
// `instance` or `problem` first, then `lower` and `upper`, or `optimum` with a
// number, a range `4..7` or `unsat`; columns of other names are passed over.
// InvalidArgument names the line that is broken.
absl::StatusOr<std::map<std::string, Bounds>> readBounds(std::istream& in);

}  // namespace suppertide::planning::psplib
