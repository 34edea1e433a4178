// What is wrong with reports, all of it at once, before anything is stored.
#pragma once

#include "server/compose/validate.h"
#include "suppertide/v1/household.pb.h"
#include "suppertide/v1/progress_service.pb.h"

namespace suppertide::service {

// Paths from the top of the request: "reports[2].rise". `household` tells who
// there is; a member named in a report must be one of them.
compose::Violations validateReports(const v1::AddReportsRequest& asked, const v1::Household& household);

}  // namespace suppertide::service
