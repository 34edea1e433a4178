// The menu commands on the command line.
#pragma once

#include <CLI/CLI.hpp>

#include <functional>

#include "client/terminal/commands.h"

namespace suppertide::terminal {

// What the options are read into; lives as long as the parsing and what is chosen by it.
struct MenuOptions {
  MenuCommand check;
  ShoppingCommand shopping;
  MenuChangeCommand change;
  ScaleCommand scale;
  IngredientCommand ingredient;
  SafetyRulesCommand rules;
};

// Adds `menu` with all below it; `chosen` becomes what was asked for.
void addMenu(CLI::App& app, MenuOptions& options, std::function<int(Environment&)>& chosen);

}  // namespace suppertide::terminal
