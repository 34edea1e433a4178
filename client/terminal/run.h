// The program without a process: arguments in, text and an exit code out.
#pragma once

#include <string>
#include <vector>

#include "client/terminal/environment.h"

namespace suppertide::terminal {

// `arguments` without the program's name. Never throws.
int run(const std::vector<std::string>& arguments, Environment& environment);

}  // namespace suppertide::terminal
