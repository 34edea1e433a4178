// A small dinner with one mistake at a time, and the parts of it that mistakes are made in.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

#include "server/compose/validate.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::compose {

inline std::vector<std::string> pathsOf(const Violations& violations) {
  std::vector<std::string> paths;
  for (const auto& violation : violations) paths.push_back(violation.field_path());
  return paths;
}

inline std::string told(const Violations& violations) {
  std::string text;
  for (const auto& violation : violations) text += violation.ShortDebugString() + "\n";
  return text;
}

struct Mistake {
  const char* path;
  std::function<void(v1::Bundle&)> make;
};

// Each mistake alone is told at its path, and nowhere else.
inline void expectEach(const std::vector<Mistake>& mistakes) {
  for (const Mistake& mistake : mistakes) {
    v1::Bundle bundle = smallDinner();
    mistake.make(bundle);
    const Violations found = validate(bundle, true);
    EXPECT_THAT(pathsOf(found), testing::ElementsAre(mistake.path)) << told(found);
    for (const auto& violation : found) EXPECT_FALSE(violation.description().empty());
  }
}

inline v1::Household& household(v1::Bundle& b) {
  return *b.mutable_household();
}
inline v1::Member& ana(v1::Bundle& b) {
  return *household(b).mutable_members(0);
}
inline v1::Kitchen& kitchen(v1::Bundle& b) {
  return *b.mutable_kitchens(0);
}
inline v1::Oven& oven(v1::Bundle& b) {
  return *kitchen(b).mutable_ovens(0);
}
inline v1::Starter& starter(v1::Bundle& b) {
  return *b.mutable_starters(0);
}
inline v1::Recipe& rolls(v1::Bundle& b) {
  return *b.mutable_recipes(0);
}
inline v1::BreadFormula& formula(v1::Bundle& b) {
  return *rolls(b).mutable_formula();
}
inline v1::Step& step(v1::Bundle& b, int i) {
  return *rolls(b).mutable_steps(i);
}
inline v1::OvenNeed& bake(v1::Bundle& b) {
  return *step(b, 7).mutable_oven();
}
inline v1::FermentNeed& bulk(v1::Bundle& b) {
  return *step(b, 3).mutable_ferment();
}
inline v1::Event& event(v1::Bundle& b) {
  return *b.mutable_events(0);
}

}  // namespace suppertide::compose
