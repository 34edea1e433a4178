#include "server/command_line.h"

#include <CLI/CLI.hpp>

#include "server/maintenance.h"
#include "server/service/listen_address.h"
#include "server/service/metrics.h"
#include "server/service/version.h"

namespace suppertide {
namespace {

CLI::Option* addData(CLI::App& app, CommandLine& flags) {
  return app.add_option("--data", flags.data, "The file with all households; made when it is not there")
      ->type_name("FILE")
      ->envname("SUPPERTIDE_DATA")
      ->capture_default_str();
}

void describeCommands(CLI::App& app, CommandLine& flags) {
  CLI::App* backup = app.add_subcommand("backup", "Copy the data file, also while a server serves it");
  addData(*backup, flags)->description("The data file");
  backup->add_option("copy", flags.file, "The copy; must not be there yet")->type_name("COPY")->required();
  CLI::App* restore =
      app.add_subcommand("restore", "Put a copy in place of the data file; no server may have it");
  addData(*restore, flags)->description("The data file");
  restore->add_flag(
      "--replace", flags.replace,
      "Set a data file that is there aside, as FILE.before-restore, or with -2, -3 ... after it");
  restore->add_option("copy", flags.file, "The copy")->type_name("COPY")->required();
  CLI::App* doctor =
      app.add_subcommand("doctor", "Look for damage and foreign things in a data file, changing nothing");
  doctor->add_flag("--json", flags.json, "As JSON");
  doctor->add_option("file", flags.file, "The data file, or a copy of one")->type_name("FILE")->required();
}

void describe(CLI::App& app, CommandLine& flags) {
  app.description("The Suppertide server: keeps households' documents in one file and plans their dinners.");
  app.set_version_flag("--version", std::string("suppertide-server ") + service::kVersion);
  addData(app, flags);
  app.add_option("--listen", flags.listen,
                 "Where to serve: HOST:PORT (0.0.0.0:50710 is every network), or unix:PATH")
      ->envname("SUPPERTIDE_LISTEN")
      ->capture_default_str();
  CLI::Option* certificate =
      app.add_option("--certificate", flags.certificate,
                     "Your own certificate (PEM, chain and all); without it the server makes one")
          ->type_name("FILE")
          ->envname("SUPPERTIDE_CERTIFICATE");
  CLI::Option* key = app.add_option("--key", flags.key, "The key of --certificate (PEM)")
                         ->type_name("FILE")
                         ->envname("SUPPERTIDE_KEY");
  certificate->needs(key);
  key->needs(certificate);
  app.add_flag("--plain", flags.plain, "No encryption over TCP; for this machine's loopback alone")
      ->envname("SUPPERTIDE_PLAIN")
      ->excludes(certificate);
  app.add_flag("--another-household", flags.anotherHousehold,
               "Print a host code though there is a household: it makes one more");
  app.add_option(
         "--calendar", flags.calendar,
         "Where calendar programs follow plans, 0.0.0.0:50711; encrypted as --listen is, nowhere when "
         "left out")
      ->type_name("HOST:PORT")
      ->envname("SUPPERTIDE_CALENDAR");
  app.add_option("--metrics", flags.metrics,
                 "Where to serve Prometheus's metrics, 127.0.0.1:9464; loopback alone, nowhere when left out")
      ->type_name("HOST:PORT")
      ->envname("SUPPERTIDE_METRICS");
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
      "  suppertide join 127.0.0.1:50710 --host-code CODE --name NAME\n"
      "Over TCP all is encrypted. The server's own certificate and key are kept beside the\n"
      "data (DATA.cert.pem, DATA.key.pem); codes carry its fingerprint, so keep both.\n"
      "SIGTERM or Ctrl-C stops in order: streams end, writes finish.\n"
      "Exit codes: 0 done or stopped in order, 1 could not, 2 wrong usage, 3 doctor found something.\n"
      "Examples:\n"
      "  suppertide-server --data household.sqlite\n"
      "  suppertide-server --data household.sqlite --listen 0.0.0.0:50710\n"
      "  suppertide-server --data household.sqlite --listen unix:/run/user/1000/suppertide.sock\n"
      "  suppertide-server backup --data household.sqlite monday.sqlite\n"
      "  suppertide-server restore --replace --data household.sqlite monday.sqlite\n"
      "  suppertide-server doctor household.sqlite");
  app.require_subcommand(0, 1);
  describeCommands(app, flags);
}

CommandLine::Command commandOf(const CLI::App& app) {
  if (app.got_subcommand("backup")) return CommandLine::Command::kBackup;
  if (app.got_subcommand("restore")) return CommandLine::Command::kRestore;
  if (app.got_subcommand("doctor")) return CommandLine::Command::kDoctor;
  return CommandLine::Command::kServe;
}

absl::Status checkAddresses(const CommandLine& line) {
  const absl::Status listen = service::checkListenAddress(line.listen, !line.plain);
  if (!listen.ok() || line.metrics.empty()) return listen;
  return service::checkMetricsAddress(line.metrics);
}

}  // namespace

int parseCommandLine(int argc, char** argv, CommandLine& line) {
  CLI::App app;
  describe(app, line);
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& asked) {
    return app.exit(asked);
  } catch (const CLI::ParseError& error) {
    return complain(std::string(error.what()) + " (see suppertide-server --help)", kUsage);
  }
  line.command = commandOf(app);
  if (line.command != CommandLine::Command::kServe) return -1;
  const absl::Status addresses = checkAddresses(line);
  return addresses.ok() ? -1 : complain(std::string(addresses.message()), kUsage);
}

}  // namespace suppertide
