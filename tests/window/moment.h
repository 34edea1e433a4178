// Moments as tests write them.
#pragma once

#include <chrono>
#include <string>

#include "client/words/instant.h"
#include "tests/window/sample.h"

namespace suppertide {

// "2026-06-20T12:00:00Z"
inline Instant at(const std::string& text) {
  return Instant(std::chrono::seconds(testing::secondsAt(text)));
}

}  // namespace suppertide
