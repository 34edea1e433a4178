// What each command about doughs does once its options are read. Each returns an exit code.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "client/terminal/environment.h"

namespace suppertide::terminal {

// A bread by its file: a bundle, a recipe or a bare formula; empty: a known server's household.
struct BreadChoice {
  std::string file;
  std::string recipe;
  std::string server;
};

struct DoughCommand {
  BreadChoice bread;
  std::string start;               // "2026-06-20 10:00" in the household's time zone
  std::string stage = "bulk";      // or "levain", "proof", or the id of a preferment
  std::vector<std::string> stays;  // "28:3" or "counter:3": degrees or a place, and hours
  double flourPerStarter = 0;      // 0: the formula's first
  std::optional<double> waterCelsius;
  bool json = false;
};
int runDough(const DoughCommand& command, Environment& environment);

struct DoughFitCommand {
  BreadChoice bread;
  std::string ready;                // "2026-06-21 17:00-17:30"
  std::string hours;                // "06:30-23:00"; empty: any
  std::vector<std::string> places;  // "counter:22"; empty: the kitchen's
  std::optional<double> counterCelsius;
  int most = 5;  // ways shown
  bool json = false;
};
int runDoughFit(const DoughFitCommand& command, Environment& environment);

struct DoughScaleCommand {
  BreadChoice bread;
  std::vector<std::string> sets;     // "water=75%", "salt=20g"
  std::vector<std::string> removes;  // names of lines
  std::string pieces;                // "12" or "12x60": count and grams
  double flourGrams = 0;
  double doughGrams = 0;
  std::string pan;  // "300x110x60" or "round 240x50", millimetres; without the last: a flat sheet
  int pans = 1;
  int guests = 0;
  int serves = 0;  // whom one making serves, where no recipe says so
  std::optional<double> roomCelsius;
  std::optional<double> flourCelsius;
  double flourPerStarter = 0;
  std::string output;  // where to write the changed formula; empty: nowhere
  bool json = false;
};
int runDoughScale(const DoughScaleCommand& command, Environment& environment);

struct DoughSeenCommand {
  std::string server;
  std::string starter;  // empty: the only one
  std::string fed;      // "2026-06-20 10:00"
  std::string seen;     // the same; empty: now
  std::string ratio;    // "1:2:2"
  std::string recipe;   // with it: of a dough
  std::string stage = "bulk";
  std::optional<double> rise;
  std::optional<double> doughCelsius;
  std::string finger;  // "springs", "fills", "stays"
  bool peak = false;
  bool ready = false;
  std::optional<double> celsius;
  std::string place;
  bool tryOnly = false;  // learn and show, keep nothing
  bool json = false;
};
int runDoughSeen(const DoughSeenCommand& command, Environment& environment);

struct DoughMixedCommand {
  std::string server;
  std::string recipe;
  double room = 0;
  std::optional<double> flour;
  double water = 0;
  std::optional<double> preferment;
  double dough = 0;
  bool tryOnly = false;
  bool json = false;
};
int runDoughMixed(const DoughMixedCommand& command, Environment& environment);

struct DoughLearnedCommand {
  std::string server;
  bool json = false;
};
int runDoughLearned(const DoughLearnedCommand& command, Environment& environment);

struct BreadCheckCommand {
  bool json = false;
};
int runBreadCheck(const BreadCheckCommand& command, Environment& environment);

}  // namespace suppertide::terminal
