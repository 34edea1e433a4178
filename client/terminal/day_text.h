// One cook's day in words: now, next, and what reminders say.
#pragma once

#include <map>
#include <string>

#include "client/terminal/plan_view.h"
#include "suppertide/v1/progress.pb.h"
#include "suppertide/v1/reminder.pb.h"

namespace suppertide::terminal {

enum class StepStage { kStarted, kFinished, kSkipped };

// Of steps that somebody reported, by "dish_id/step_id"; what was taken back does not count.
std::map<std::string, StepStage> stagesOf(const v1::Progress& progress);

// What `memberId` does now and next, and how each course stands. Of everybody with an empty id.
std::string dayText(const PlanView& view, const v1::Progress& progress, const std::string& memberId,
                    absl::Time now);

// "in 12 min: Shape the rolls · Butter rolls"; empty when nothing is to come.
std::string countdownText(const PlanView& view, const v1::Progress& progress, const std::string& memberId,
                          absl::Time now);

// "Due now: Shape the rolls · Butter rolls, 17:40". `view` is of the reminder's event.
std::string reminderText(const PlanView& view, const v1::Reminder& reminder);

}  // namespace suppertide::terminal
