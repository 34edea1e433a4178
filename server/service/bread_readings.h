// Adding what was seen of doughs, and learning from all of it.
#pragma once

#include "server/service/backend.h"
#include "suppertide/v1/bread_service.pb.h"

namespace suppertide::service {

// Reads starters, kitchens and recipes, adds, learns and writes what changed in one transaction; again when
// someone else wrote in between. Learning takes its household's turn on the planning threads.
void addBreadReadings(Backend& backend, const Caller& caller, const v1::AddBreadReadingsRequest& asked,
                      v1::AddBreadReadingsResponse* answer, const Finish& finish);

}  // namespace suppertide::service
