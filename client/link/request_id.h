// A fresh name for one thing meant by a person, the same on a retry.
#pragma once

#include <string>

namespace suppertide::link {

// A random UUID (version 4): "f81d4fae-7dec-4d0a-a765-00a0c91e6bf6".
std::string newRequestId();

}  // namespace suppertide::link
