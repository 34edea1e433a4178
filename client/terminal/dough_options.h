// The options of the commands about doughs.
#pragma once

#include <functional>

#include "client/terminal/dough_commands.h"

namespace CLI {
class App;
}

namespace suppertide::terminal {

struct DoughOptions {
  DoughCommand dough;
  DoughFitCommand fit;
  DoughScaleCommand scale;
  DoughSeenCommand seen;
  DoughMixedCommand mixed;
  DoughLearnedCommand learned;
  BreadCheckCommand check;
};

// Adds "dough" with what is below it, and "bread check". `options` and `chosen` must outlive the parsing;
// the command that was asked for is put into `chosen`.
void addDoughs(CLI::App& app, DoughOptions& options, std::function<int(Environment&)>& chosen);

}  // namespace suppertide::terminal
