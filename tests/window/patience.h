// How long a test waits for what must come, on however busy a machine.
#pragma once

namespace suppertide::testing {

constexpr int kPatienceMs = 60'000;

}  // namespace suppertide::testing
