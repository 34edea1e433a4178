// Who may call what: one table, asked in one place.
#pragma once

#include <span>
#include <string_view>

#include "suppertide/v1/household.pb.h"

namespace suppertide::service {

// A call by its path without the package: "RecipeService/GetRecipe".
struct Access {
  std::string_view method;
  v1::Role least;  // ROLE_UNSPECIFIED: free, no token needed
};

std::span<const Access> accessTable();

// The least role for `method`; ROLE_HOST for a method that the table lacks.
v1::Role leastRole(std::string_view method);

}  // namespace suppertide::service
