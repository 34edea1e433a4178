// What the server is started with: flags, or the environment in their place.
#pragma once

#include <string>

namespace suppertide {

struct CommandLine {
  enum class Command { kServe, kBackup, kRestore, kDoctor };
  Command command = Command::kServe;

  std::string data = "suppertide.sqlite";
  std::string listen = "127.0.0.1:50710";
  std::string certificate;
  std::string key;
  bool plain = false;
  bool anotherHousehold = false;
  std::string calendar;
  std::string metrics;
  std::string logLevel = "info";
  int planningThreads = 1;

  // Of the commands beside serving.
  std::string file;
  bool replace = false;
  bool json = false;
};

// Fills in `line` and gives -1, or, when there is nothing left to do, what the
// program ends with: help and version were printed, or a mistake told in one line.
int parseCommandLine(int argc, char** argv, CommandLine& line);

}  // namespace suppertide
