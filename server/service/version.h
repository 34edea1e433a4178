// The version that programs tell.
#pragma once

namespace suppertide::service {

inline constexpr char kVersion[] = "0.1.0";

}  // namespace suppertide::service
