// What a played household cannot do without.
#pragma once

#include <cstdlib>
#include <iostream>
#include <utility>

#include "absl/status/statusor.h"

namespace suppertide::testing {

template <class Answer>
Answer must(absl::StatusOr<Answer> answer, const char* doing) {
  if (answer.ok()) return *std::move(answer);
  std::cerr << doing << ": " << answer.status() << "\n";
  std::abort();
}

}  // namespace suppertide::testing
