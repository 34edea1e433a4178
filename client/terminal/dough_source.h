// A bread to ask about, from a file or a household, and what people write of doughs.
#pragma once

#include <optional>
#include <string>

#include "client/terminal/connection.h"
#include "client/terminal/dough_commands.h"
#include "suppertide/v1/recipe.pb.h"
#include "suppertide/v1/starter.pb.h"

namespace suppertide::terminal {

struct AskedBread {
  v1::Bundle bundle;  // with the recipe; a bare formula's is made up around it
  Connection connection;
  v1::Recipe recipe;
  v1::Starter starter;  // of its levain; a bare formula's is a usual one
  std::string zone;
};

// Fills `asked`, or reports what is wrong and gives the exit code. A file may hold a bundle, a recipe or
// only a formula, as its fields tell.
int askBread(const BreadChoice& choice, bool json, Environment& environment, AskedBread& asked);

// "2026-06-20 10:00" in that zone.
std::optional<google::protobuf::Timestamp> readTime(const std::string& text, const std::string& zone);

// Whether what is poured is water; else milk or the like.
bool hasWater(const v1::BreadFormula& formula);

// A mistake on the command line, told as others are.
int wrongOption(Environment& environment, bool json, const char* option, const std::string& value,
                const std::string& allowed);

}  // namespace suppertide::terminal
