// suppertide: the client without a display.
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <iostream>

#include "client/link/credentials.h"
#include "client/terminal/run.h"

namespace {

std::atomic<bool> interrupted{false};

// The first one asks to end well; the next one ends at once.
void onInterrupt(int) {
  if (interrupted.exchange(true)) std::_Exit(130);
}

int columns() {
  if (const char* set = std::getenv("COLUMNS"); set != nullptr && std::atoi(set) > 0) return std::atoi(set);
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  return 80;
}

bool colourWanted() {
  const char* no = std::getenv("NO_COLOR");
  const char* terminal = std::getenv("TERM");
  const bool dumb = terminal != nullptr && std::string(terminal) == "dumb";
  return ::isatty(STDOUT_FILENO) == 1 && (no == nullptr || no[0] == '\0') && !dumb;
}

}  // namespace

int main(int argc, char** argv) {
  std::signal(SIGINT, onInterrupt);
  std::signal(SIGPIPE, SIG_IGN);
  suppertide::terminal::Environment environment{
      .out = std::cout,
      .err = std::cerr,
      .width = std::max(60, columns()),
      .colour = colourWanted(),
      .progressLine = ::isatty(STDERR_FILENO) == 1,
      .credentials = suppertide::link::credentialsPath(),
      .startServer = suppertide::EmbeddedServer::start,
      .interrupted = &interrupted,
  };
  const int exitCode = suppertide::terminal::run({argv + 1, argv + argc}, environment);
  std::cout.flush();
  return exitCode;
}
