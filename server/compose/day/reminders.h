// What each cook is to be told of a plan, and when: facts, no sentences. Pure.
#pragma once

#include <string>
#include <vector>

#include "suppertide/v1/event.pb.h"
#include "suppertide/v1/household.pb.h"
#include "suppertide/v1/plan.pb.h"
#include "suppertide/v1/progress.pb.h"
#include "suppertide/v1/reminder.pb.h"

namespace suppertide::compose {

struct DayDocuments {
  const v1::Household& household;
  const v1::Event& event;
  const v1::Plan& plan;
  const v1::Progress& progress;  // empty: nothing was told
};

// Of all cooks, by time. What is begun, done or left out by report is not among them. Nothing here
// looks at the present moment: what is past is for the caller to leave out. Where nobody does a step, as
// taking out what bakes by itself, the one is told who does the next of its dish, or its last.
std::vector<v1::Reminder> remindersOf(const DayDocuments& day);

// Puts off, and drops what was seen to, by a member's log. Told ones stay.
std::vector<v1::Reminder> withMarks(std::vector<v1::Reminder> reminders, const v1::ReminderLog& log);

}  // namespace suppertide::compose
