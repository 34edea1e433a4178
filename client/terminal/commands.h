// What each command does once its options are read. Each returns an exit code.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "client/terminal/environment.h"

namespace suppertide::terminal {

struct PlanCommand {
  std::string bundle;  // a file; empty: an event of a known server
  std::string eventId;
  std::string server;
  std::uint64_t seed = 0;      // 0: the server's own
  std::int64_t workLimit = 0;  // 0: no limit but time
  int timeLimitSeconds = 0;    // 0: the server's own
  std::string output;          // where to write the plan as JSON; empty: nowhere
  bool instructions = false;
  bool json = false;
};
int runPlan(const PlanCommand& command, Environment& environment);

struct RemediesCommand {
  std::string bundle;  // a file; empty: an event of a known server
  std::string eventId;
  std::string server;
  bool json = false;
};
int runRemedies(const RemediesCommand& command, Environment& environment);

struct AuditCommand {
  std::string bundle;
  std::string plan;
  std::string eventId;
  bool json = false;
};
int runAudit(const AuditCommand& command, Environment& environment);

struct CheckCommand {
  std::string bundle;
  bool json = false;
};
int runCheck(const CheckCommand& command, Environment& environment);

struct JoinCommand {
  std::string target;
  std::string hostCode;    // makes the household
  std::string invitation;  // or joins one
  std::string memberName;
  std::string householdName;
  std::string timeZone;
  std::string deviceName;
  std::string saveAs;
  std::string certificate;  // a file
  bool json = false;
};
int runJoin(const JoinCommand& command, Environment& environment);

struct ImportCommand {
  std::string bundle;
  std::string server;
  bool json = false;
};
int runImport(const ImportCommand& command, Environment& environment);

struct ExportCommand {
  std::string file;  // "-": the standard output
  std::string eventId;
  std::string server;
  bool json = false;  // failures only; what is exported is JSON anyway
};
int runExport(const ExportCommand& command, Environment& environment);

struct EventsCommand {
  std::string server;
  bool json = false;
};
int runEvents(const EventsCommand& command, Environment& environment);

struct InviteCommand {
  std::string role = "cook";
  std::string memberName;  // who it is for; empty: somebody new
  int days = 0;            // 0: the server's own
  std::string server;
  bool json = false;
};
int runInvite(const InviteCommand& command, Environment& environment);

struct OvenFitCommand {
  std::string readings;  // a table or a bundle; empty: the kitchen of a known server
  std::string ovenId;
  std::string server;
  int highestCelsius = 250;  // of a table's oven
  std::string eventId;       // learn from the readings of this day, by what its plan had the oven do
  bool keep = false;         // and store it in the kitchen
  bool json = false;
};
int runOvenFit(const OvenFitCommand& command, Environment& environment);

struct MenuCommand {
  std::string bundle;  // a file; empty: an event of a known server
  std::string eventId;
  std::string server;
  bool json = false;
};
int runMenuCheck(const MenuCommand& command, Environment& environment);

// Measures: "metric", "us", "imperial", "australian"; empty: the household's.
struct ShoppingCommand : MenuCommand {
  std::vector<std::string> atHand;  // lines: "500 g butter"
  std::vector<std::string> buyers;  // "Ana=produce,dairy"; "Ben" buys the rest
  std::string shownIn;
  bool planned = false;  // a file's event is planned first
  // Noted for everybody who shops. Lines by name or id; packets as lines: "250 g butter".
  std::vector<std::string> ticks;
  std::vector<std::string> unticks;
  std::vector<std::string> added;    // "12 candles"
  std::vector<std::string> dropped;  // of those added
  std::vector<std::string> usedUp;   // no longer at hand
  std::vector<std::string> packets;
  bool keep = false;  // what is at hand and who buys, too
};
int runShopping(const ShoppingCommand& command, Environment& environment);

struct MenuChangeCommand : MenuCommand {
  std::vector<std::string> without;  // dishes, by id or name
  std::vector<std::string> serves;   // "dish=count"
  std::vector<std::string> times;    // "course=HH:MM"
};
int runMenuChange(const MenuChangeCommand& command, Environment& environment);

// The rule sets of food safety side by side.
struct SafetyRulesCommand : MenuCommand {
  bool all = false;    // also where they agree
  std::string choose;  // what plans are to keep from now on: home, food-service, uk
};
int runSafetyRules(const SafetyRulesCommand& command, Environment& environment);

struct ScaleCommand : MenuCommand {
  std::string recipe;
  std::optional<double> servings;
  std::optional<int> pieces;
  double pieceMass = 0;
  std::string pan;  // "330x230", "2x330x230"
  std::string shownIn;
};
int runScale(const ScaleCommand& command, Environment& environment);

struct IngredientCommand {
  std::vector<std::string> lines;
  std::string measures = "metric";  // whose cups and spoons
  std::string shownIn;
  bool json = false;
};
int runIngredient(const IngredientCommand& command, Environment& environment);

struct ReplanCommand {
  std::string bundle;  // a file; empty: an event of a known server
  std::string plan;    // the plan that runs, a file; empty: the stored one
  std::string eventId;
  std::string server;
  std::string at;  // "18:40" or "2026-06-20 18:40" in the event's time zone; empty: now
  // Steps as "dish/step".
  std::vector<std::pair<int, std::string>> late;  // minutes, step
  std::vector<std::string> started;
  std::vector<std::string> finished;
  std::vector<std::string> skipped;
  // What was seen just now: step, value.
  std::vector<std::pair<std::string, std::string>> rises;  // times the volume at the stage's start
  std::vector<std::pair<std::string, std::string>> doughCelsius;
  std::vector<std::pair<std::string, std::string>> coreCelsius;
  std::vector<std::pair<std::string, std::string>> ovenCelsius;
  std::vector<std::pair<std::string, std::string>> dents;  // "springs-back", "slow", "stays"
  std::vector<std::string> withoutCook;                    // names or ids
  std::vector<std::string> broken;                         // ovens, equipment
  bool keep = false;                                       // stores reports, event and plan
  std::string output;
  bool json = false;
};
int runReplan(const ReplanCommand& command, Environment& environment);

struct WhyCommand {
  std::string eventId;
  std::string step;  // "dish/step"
  std::string server;
  int earlierMinutes = 0;
  int laterMinutes = 0;
  bool json = false;
};
int runWhy(const WhyCommand& command, Environment& environment);

struct ShowCommand {
  std::string eventId;
  std::string server;
  std::string cookName;
  // Only these parts; none: everything.
  bool ovens = false;
  bool breads = false;
  bool clashes = false;
  bool firstActions = false;
  bool instructions = false;
  bool json = false;
};
int runShow(const ShowCommand& command, Environment& environment);

struct WatchCommand {
  std::string server;
  int changes = 0;  // end after so many; 0: never
  bool json = false;
};
int runWatch(const WatchCommand& command, Environment& environment);

}  // namespace suppertide::terminal
