// Single values of a JSON tree as the standard mapping reads them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "client/terminal/json_tree.h"

namespace suppertide::terminal {

// A finite number, given as a number or as text; absent otherwise.
std::optional<double> numberOf(const JsonValue& value);

// A whole number that fits, given as a number (4.0 and 1e3 are whole, too) or as
// text; absent otherwise. For 32 and 64 bits, signed and not.
template <typename Integer>
std::optional<Integer> integerOf(const JsonValue& value);

// The one of `names` that `name` is a likely typo of; empty when none is near.
std::string nearest(const std::string& name, const std::vector<std::string>& names);

}  // namespace suppertide::terminal
