// What the program tells the shell; the help text lists the same.
#pragma once

namespace suppertide::terminal {

enum ExitCode : int {
  kOk = 0,
  kFailed = 1,
  kBadInput = 2,        // a mistake in a file or on the command line
  kPlanFallsShort = 3,  // a plan breaks a rule or leaves a dish unserved
  kUnreachable = 4,     // no answer from the server
  kRefused = 5,         // the server knows us not, or does not let us
};

}  // namespace suppertide::terminal
