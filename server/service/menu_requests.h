// What menu calls may ask: every field at fault, with its limits.
#pragma once

#include "server/compose/validate.h"
#include "suppertide/v1/menu_service.pb.h"

namespace suppertide::service {

compose::Violations validate(const v1::ParseIngredientsRequest& request);

// `household` for its members.
compose::Violations validate(const v1::MakeShoppingListRequest& request, const v1::Household& household);

// `recipe`: the one to scale, valid; `kitchen` null when there is none of that id.
compose::Violations validate(const v1::ScaleRecipeRequest& request, const v1::Recipe& recipe,
                             const v1::Kitchen* kitchen);

}  // namespace suppertide::service
