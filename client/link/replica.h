// A household as this client last knew it: an immutable value, replaced whole on each change.
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "suppertide/v1/calendar.pb.h"
#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/household.pb.h"
#include "suppertide/v1/kitchen.pb.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/progress.pb.h"
#include "suppertide/v1/recipe.pb.h"
#include "suppertide/v1/reminder.pb.h"
#include "suppertide/v1/review.pb.h"
#include "suppertide/v1/shopping.pb.h"
#include "suppertide/v1/starter.pb.h"

namespace suppertide::link {

struct Replica {
  std::int64_t revision = 0;  // everything up to here is in it; 0: nothing yet
  v1::Household household;
  std::map<std::string, v1::Kitchen> kitchens;  // by id, as the others
  std::map<std::string, v1::Starter> starters;
  std::map<std::string, v1::Recipe> recipes;
  std::map<std::string, v1::Event> events;
  std::map<std::string, v1::Plan> plans;                // by event
  std::map<std::string, v1::Progress> progresses;       // by event
  std::map<std::string, v1::PlanProposal> proposals;    // by event
  std::map<std::string, v1::Review> reviews;            // by event
  std::map<std::string, v1::ReminderLog> reminderLogs;  // by member
  std::map<std::string, v1::CalendarAddress> calendarAddresses;
  std::map<std::string, v1::Shopping> shoppings;  // by event
};

}  // namespace suppertide::link
