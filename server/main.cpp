// The server program: flags in, objects wired, served until told to stop.
#include <pthread.h>
#include <signal.h>
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <CLI/CLI.hpp>
#include <cstdio>
#include <cstdlib>

#include "server/service/listen_address.h"
#include "server/service/server.h"
#include "server/service/version.h"

namespace {

constexpr int kFailed = 1;
constexpr int kUsage = 2;

struct Flags {
  std::string data = "suppertide.sqlite";
  std::string listen = "127.0.0.1:50710";
  std::string logLevel = "info";
  int planningThreads = 1;
};

void describe(CLI::App& app, Flags& flags) {
  app.description("The Suppertide server: keeps households' documents in one file and plans their dinners.");
  app.set_version_flag("--version", std::string("suppertide-server ") + suppertide::service::kVersion);
  app.add_option("--data", flags.data, "The file with all households; made when it is not there")
      ->envname("SUPPERTIDE_DATA")
      ->capture_default_str();
  app.add_option("--listen", flags.listen,
                 "Where to serve: HOST:PORT on this machine's loopback, or unix:PATH")
      ->envname("SUPPERTIDE_LISTEN")
      ->capture_default_str();
  app.add_option("--log-level", flags.logLevel, "How much to log")
      ->check(CLI::IsMember({"debug", "info", "warn", "error", "off"}))
      ->envname("SUPPERTIDE_LOG_LEVEL")
      ->capture_default_str();
  app.add_option("--planning-threads", flags.planningThreads, "How many dinners may be planned at once")
      ->check(CLI::Range(1, 16))
      ->envname("SUPPERTIDE_PLANNING_THREADS")
      ->capture_default_str();
  app.footer(
      "The first start prints a host code: it makes the household with\n"
      "  suppertide join 127.0.0.1:50710 --host-code CODE\n"
      "For now only this machine is served (a loopback address or a Unix socket).\n"
      "SIGTERM or Ctrl-C stops in order: streams end, writes finish.\n"
      "Exit codes: 0 stopped in order, 1 could not start, 2 wrong usage.\n"
      "Examples:\n"
      "  suppertide-server --data household.sqlite\n"
      "  suppertide-server --data household.sqlite --listen unix:/run/user/1000/suppertide.sock");
}

void startLog(const std::string& level) {
  auto log = spdlog::stderr_logger_mt("suppertide");
  log->set_pattern("%Y-%m-%dT%H:%M:%S.%e%z level=%l %v");
  log->set_level(spdlog::level::from_str(level));
  spdlog::set_default_logger(log);
}

int complain(const std::string& line, int exitCode) {
  std::fprintf(stderr, "suppertide-server: %s\n", line.c_str());
  return exitCode;
}

// Waits on this thread for one of the signals that were blocked everywhere.
int waitForSignal(const sigset_t& signals) {
  int signal = 0;
  sigwait(&signals, &signal);
  return signal;
}

}  // namespace

int main(int argc, char** argv) {
  Flags flags;
  CLI::App app;
  describe(app, flags);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& asked) {
    return app.exit(asked);
  } catch (const CLI::ParseError& error) {
    return complain(std::string(error.what()) + " (see suppertide-server --help)", kUsage);
  }
  if (const auto status = suppertide::service::checkListenAddress(flags.listen); !status.ok())
    return complain(std::string(status.message()), kUsage);
  sigset_t signals;
  sigemptyset(&signals);
  sigaddset(&signals, SIGTERM);
  sigaddset(&signals, SIGINT);
  pthread_sigmask(SIG_BLOCK, &signals, nullptr);  // before gRPC starts threads
  setenv("GRPC_VERBOSITY", "NONE", 0);            // what goes wrong is told in our own words
  startLog(flags.logLevel);

  const suppertide::SystemClock clock;
  suppertide::service::Server::Options options;
  options.dataFile = flags.data;
  options.listen = flags.listen;
  options.backend.planningThreads = flags.planningThreads;
  auto server = suppertide::service::Server::start(options, clock);
  if (!server.ok()) return complain(std::string(server.status().message()), kFailed);
  if (const std::string code = (*server)->hostCode(); !code.empty())
    std::printf("No household yet. Host code: %s\n", code.c_str());
  std::printf("Listening on %s\n", (*server)->target().c_str());
  std::fflush(stdout);
  spdlog::info("event=started target={} data={}", (*server)->target(), flags.data);
  const int signal = waitForSignal(signals);
  spdlog::info("event=stopping signal={}", signal);
  (*server)->drain();
  spdlog::info("event=stopped");
  return 0;
}
