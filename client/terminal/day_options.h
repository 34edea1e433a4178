// The day itself: what to do now, telling what happened, corrected plans that wait for a word.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "client/terminal/environment.h"

namespace suppertide::terminal {

struct DayChoice {
  std::string eventId;
  std::string server;
  bool json = false;
};

struct DayCommand : DayChoice {
  bool once = false;    // show and end
  std::string snooze;   // "MINUTES" for what was told last
  bool settle = false;  // what was told last is seen to
};

// One thing to report.
struct TellCommand : DayChoice {
  std::string step;  // DISH/STEP; a dish for leftovers; empty for a note and an undo
  bool started = false;
  bool finished = false;
  bool skipped = false;
  bool done = false;
  std::optional<int> lateMinutes;
  std::optional<int> needsMinutes;
  std::string handTo;
  std::optional<double> rise;
  std::optional<double> doughCelsius;
  std::optional<double> coreCelsius;
  std::optional<double> ovenCelsius;
  std::string dent;
  std::optional<double> leftOver;
  std::string undo;  // the id of a report, or "last": the caller's own last one
  std::string note;
  std::string at;  // HH:MM today or "YYYY-MM-DD HH:MM"; empty: now
};

struct CorrectionCommand : DayChoice {
  bool accept = false;
  bool dismiss = false;
};

struct CalendarCommand : DayChoice {
  std::string file;     // to export to; "-": the standard output
  std::string cook;     // whose; empty: everybody's
  std::string name;     // of an address to make
  std::string address;  // to revoke: its name or id
};

struct CopyEventCommand : DayChoice {
  std::string from;
  std::string date;
  std::string name;
};

struct SheetCommand : DayChoice {
  std::string file;
  std::string cook;  // whose; empty: everybody's, and ovens, breads and shopping
  std::string paper = "a4";
};

struct ReviewCommand : DayChoice {
  std::vector<std::string> use;      // ids of lessons
  std::vector<std::string> decline;  // likewise
};

struct DayOptions {
  DayCommand day;
  TellCommand tell;
  CorrectionCommand correction;
  CalendarCommand calendar;
  CopyEventCommand copy;
  SheetCommand sheet;
  ReviewCommand review;
};

int runDay(const DayCommand& command, Environment& environment);
int runTell(const TellCommand& command, Environment& environment);
int runCorrection(const CorrectionCommand& command, Environment& environment);
int runCalendarExport(const CalendarCommand& command, Environment& environment);
int runCalendarFollow(const CalendarCommand& command, Environment& environment);
int runCalendarAddresses(const CalendarCommand& command, Environment& environment);
int runCalendarRevoke(const CalendarCommand& command, Environment& environment);
int runSheet(const SheetCommand& command, Environment& environment);
int runReview(const ReviewCommand& command, Environment& environment);
int runCopyEvent(const CopyEventCommand& command, Environment& environment);

// Adds `day`, `tell`, `correction`, `calendar`, `sheet`, `review` and `copy-event`; `chosen` becomes what was
// asked for.
void addDay(CLI::App& app, DayOptions& options, std::function<int(Environment&)>& chosen);

}  // namespace suppertide::terminal
