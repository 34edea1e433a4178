#include "client/terminal/run.h"

#include <algorithm>
#include <functional>

#include <CLI/CLI.hpp>

#include "client/terminal/commands.h"
#include "client/terminal/day_options.h"
#include "client/terminal/device_command.h"
#include "client/terminal/dough_options.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/menu_options.h"

namespace suppertide::terminal {
namespace {

constexpr char kVersion[] = "suppertide " SUPPERTIDE_VERSION;

constexpr char kAbout[] =
    "Plans a dinner with fresh bread for several cooks: who does what, when, where, and which oven is how "
    "hot.";

constexpr char kFooter[] = R"(Examples:
  suppertide plan demo/feast.json                  plan a file, nothing else needed
  suppertide join 127.0.0.1:50710 --host-code CODE --name Ana
  suppertide import demo/feast.json                put it into the household
  suppertide plan --event midsummer                plan it there, for everybody
  suppertide remedies --event midsummer            when it does not fit: what would help
  suppertide show --cook Ben                       what Ben does, and when
  suppertide replan --late 20 rolls/shape          what moves if the shaping is late
  suppertide day                                   what you do now and next, live
  suppertide tell rolls/shape --finished           tell what was done or seen
  suppertide menu check demo/feast.json            who can eat what

Exit codes:
  0  done
  1  failed for another reason
  2  a mistake in a file or on the command line; each is listed as "path: value — what is allowed"
  3  the plan breaks a rule or leaves a dish unserved
  4  no answer from the server
  5  the server refused

Text goes to the standard output, mistakes to the standard error; with --json both go to the
standard output as JSON. NO_COLOR is respected; COLUMNS sets the width, 60 at least.)";

// Everything the options are read into; lives as long as the parsing.
struct Options {
  PlanCommand plan;
  RemediesCommand remedies;
  AuditCommand audit;
  CheckCommand check;
  JoinCommand join;
  ImportCommand import;
  ExportCommand exportTo;
  EventsCommand events;
  InviteCommand invite;
  ReplanCommand replan;
  WhyCommand why;
  ShowCommand show;
  WatchCommand watch;
  OvenFitCommand ovenFit;
  DayOptions day;
  DeviceOptions devices;
  MenuOptions menu;
  DoughOptions dough;
  std::function<int(Environment&)> chosen;
};

CLI::App* command(CLI::App& app, const char* name, const char* about, const char* examples) {
  CLI::App* sub = app.add_subcommand(name, about);
  sub->footer(examples);
  return sub;
}

CLI::Option* addServer(CLI::App* sub, std::string& server) {
  return sub->add_option("--server", server, "Which saved household to ask; without it the one joined last")
      ->type_name("NAME");
}

void addEvent(CLI::App* sub, std::string& event, const char* about) {
  sub->add_option("--event", event, about)->type_name("ID");
}

void addJson(CLI::App* sub, bool& json) {
  sub->add_flag("--json", json, "Answer as JSON");
}

void addPlan(CLI::App& app, Options& options) {
  PlanCommand& o = options.plan;
  CLI::App* sub =
      command(app, "plan", "Plan an event and print the run sheet",
              "A BUNDLE is planned inside this program and kept nowhere; without one, an event of the\n"
              "household is planned on its server. Ctrl-C ends the search and keeps the best so far.\n\n"
              "Examples:\n  suppertide plan demo/feast.json\n"
              "  suppertide plan demo/feast.json --time-limit 60 --output plan.json\n"
              "  suppertide plan --event midsummer\n\n"
              "Exit code 3 when a dish is left unserved or a rule is broken.");
  CLI::Option* bundle =
      sub->add_option("bundle", o.bundle,
                      "File with the household, kitchen, recipes and event; - reads the standard input")
          ->type_name("BUNDLE");
  addEvent(sub, o.eventId, "Which event, when there are several");
  addServer(sub, o.server)->excludes(bundle);
  sub->add_option("--seed", o.seed, "Same seed and work, same plan; 1 when left out")->type_name("N");
  sub->add_option("--work", o.workLimit, "Search effort; with it the plan is the same on every machine")
      ->type_name("N")
      ->check(CLI::NonNegativeNumber);
  sub->add_option("--time-limit", o.timeLimitSeconds, "Longest search in seconds; 20 when left out")
      ->type_name("S")
      ->check(CLI::Range(1, 300));
  sub->add_option("--output", o.output, "Also write the plan to this file as JSON")->type_name("FILE");
  sub->add_flag("--instructions", o.instructions, "Print the recipes' own words below each step");
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.plan](Environment& e) { return runPlan(o, e); }; });
}

void addRemedies(CLI::App& app, Options& options) {
  RemediesCommand& o = options.remedies;
  CLI::App* sub =
      command(app, "remedies", "Tell what cannot all be had, and try what would help",
              "Up to five changes, each planned and audited, the smallest first; nothing is stored.\n\n"
              "Examples:\n  suppertide remedies crowded.json\n"
              "  suppertide remedies --event midsummer\n\n"
              "Exit code 0 when something helps or nothing needs to, 3 when nothing does.");
  CLI::Option* bundle =
      sub->add_option("bundle", o.bundle,
                      "File with the household, kitchen, recipes and event; - reads the standard input")
          ->type_name("BUNDLE");
  addEvent(sub, o.eventId, "Which event, when there are several");
  addServer(sub, o.server)->excludes(bundle);
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.remedies](Environment& e) { return runRemedies(o, e); }; });
}

void addAudit(CLI::App& app, Options& options) {
  AuditCommand& o = options.audit;
  CLI::App* sub =
      command(app, "audit", "Check a plan against every rule, with nothing of the search used",
              "Examples:\n  suppertide plan demo/feast.json --output plan.json\n"
              "  suppertide audit demo/feast.json plan.json\n\n"
              "Exit code 0 when every rule is kept, 3 when not; each rule that is broken is listed.");
  sub->add_option("bundle", o.bundle, "File that the plan was made from")->type_name("BUNDLE")->required();
  sub->add_option("plan", o.plan, "The plan as JSON")->type_name("PLAN")->required();
  addEvent(sub, o.eventId, "Which event; without it the plan's own");
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.audit](Environment& e) { return runAudit(o, e); }; });
}

void addCheck(CLI::App& app, Options& options) {
  CheckCommand& o = options.check;
  CLI::App* sub = command(app, "check", "List every mistake in a bundle, planning nothing",
                          "Example:\n  suppertide check demo/feast.json\n\n"
                          "Exit code 0 without mistakes, else 2.");
  sub->add_option("bundle", o.bundle, "The file; - reads the standard input")
      ->type_name("BUNDLE")
      ->required();
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.check](Environment& e) { return runCheck(o, e); }; });
}

void addJoin(CLI::App& app, Options& options) {
  JoinCommand& o = options.join;
  CLI::App* sub = command(
      app, "join", "Make this device a member of a household on a server",
      "Examples:\n  suppertide join 127.0.0.1:50710 --host-code CODE --name Ana --household \"Elm Lane\"\n"
      "  suppertide join 192.168.1.4:50710 --code CODE --name Ben\n\n"
      "The host code is printed by a new server and makes the household; an invitation code comes\n"
      "from suppertide invite. A code is one word: what stands after its dot lets this device check\n"
      "that it reached the right server. What is needed to come back is saved for this user alone.");
  sub->add_option("target", o.target, "HOST:PORT, or unix:PATH")->type_name("TARGET")->required();
  CLI::Option* host = sub->add_option("--host-code", o.hostCode, "Code of a new server: makes its household")
                          ->type_name("CODE");
  CLI::Option* code =
      sub->add_option("--code", o.invitation, "Invitation code")->type_name("CODE")->excludes(host);
  sub->add_option("--name", o.memberName, "Your name, as the others see it")->type_name("NAME");
  sub->add_option("--household", o.householdName, "Name of a new household")
      ->type_name("NAME")
      ->excludes(code);
  sub->add_option("--time-zone", o.timeZone, "Time zone of a new household, like Europe/Lisbon")
      ->type_name("ZONE")
      ->excludes(code);
  sub->add_option("--device", o.deviceName, "What the others see this device called")->type_name("NAME");
  sub->add_option("--save-as", o.saveAs, "Name for --server later; home when left out")->type_name("NAME");
  sub->add_option("--certificate", o.certificate,
                  "Certificate of the server or its issuer, to trust it alone")
      ->type_name("FILE");
  addJson(sub, o.json);
  sub->callback([&options, host, code] {
    if (host->count() + code->count() == 0) throw CLI::RequiredError("--host-code or --code");
    if (host->count() > 0 && options.join.memberName.empty())
      throw CLI::RequiredError("--name with --host-code");
    options.chosen = [&o = options.join](Environment& e) { return runJoin(o, e); };
  });
}

void addDocuments(CLI::App& app, Options& options) {
  ImportCommand& in = options.import;
  CLI::App* sub = command(app, "import", "Write a bundle's documents into the household",
                          "Example:\n  suppertide import demo/feast.json\n\n"
                          "All of it or nothing: with any mistake, each is listed and nothing is written.");
  sub->add_option("bundle", in.bundle, "The file; - reads the standard input")
      ->type_name("BUNDLE")
      ->required();
  addServer(sub, in.server);
  addJson(sub, in.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.import](Environment& e) { return runImport(o, e); }; });

  ExportCommand& out = options.exportTo;
  sub = command(app, "export", "Write the household, or one event, to a file that can be imported",
                "Examples:\n  suppertide export household.json\n  suppertide export - --event midsummer");
  sub->add_option("file", out.file, "The file; - writes to the standard output")
      ->type_name("FILE")
      ->required();
  addEvent(sub, out.eventId, "Only this event and what it needs");
  addServer(sub, out.server);
  addJson(sub, out.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.exportTo](Environment& e) { return runExport(o, e); }; });
}

void addEvents(CLI::App& app, Options& options) {
  EventsCommand& events = options.events;
  CLI::App* sub = command(app, "events", "List the events of the household",
                          "Example:\n  suppertide events --server home");
  addServer(sub, events.server);
  addJson(sub, events.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.events](Environment& e) { return runEvents(o, e); }; });

  InviteCommand& invite = options.invite;
  sub = command(app, "invite", "Make a code for somebody to join the household with",
                "Examples:\n  suppertide invite --role cook\n  suppertide invite --for Ben --days 3");
  sub->add_option("--role", invite.role,
                  "reader: sees; cook: also reports and own hours; host: changes everything")
      ->type_name("ROLE")
      ->check(CLI::IsMember({"reader", "cook", "host"}))
      ->capture_default_str();
  sub->add_option("--for", invite.memberName, "Who it is for; without it the joiner is somebody new")
      ->type_name("NAME");
  sub->add_option("--days", invite.days, "How long it is good; 1 when left out")
      ->type_name("N")
      ->check(CLI::Range(1, 14));
  addServer(sub, invite.server);
  addJson(sub, invite.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.invite](Environment& e) { return runInvite(o, e); }; });
}

void addReplan(CLI::App& app, Options& options) {
  ReplanCommand& o = options.replan;
  CLI::App* sub =
      command(app, "replan", "What has to move now that things went otherwise than planned",
              "Says that nothing needs to move, or lists what moves with old and new times and why.\n"
              "Nothing is stored without --keep. With a BUNDLE and its PLAN no server is needed.\n\n"
              "Examples:\n  suppertide replan --event midsummer --late 20 rolls/shape\n"
              "  suppertide replan --finished rolls/bulk --broken \"Large oven\" --keep\n"
              "  suppertide replan --rise rolls/bulk 1.3 --core-temperature lamb/roast 61\n"
              "  suppertide replan demo/feast.json plan.json --at 17:10 --without-cook Ben\n\n"
              "Exit code 3 when a dish cannot be served any more.");
  CLI::Option* bundle =
      sub->add_option("bundle", o.bundle, "File that the plan was made from")->type_name("BUNDLE");
  CLI::Option* plan = sub->add_option("plan", o.plan, "The plan that runs, as JSON")->type_name("PLAN");
  bundle->needs(plan);
  addEvent(sub, o.eventId, "Which event, when there are several");
  addServer(sub, o.server)->excludes(bundle);
  sub->add_option("--at", o.at,
                  "The moment to plan from: HH:MM on the day, or \"YYYY-MM-DD HH:MM\"; now when left out")
      ->type_name("TIME");
  sub->add_option("--late", o.late, "A step is later, or takes longer, by so many minutes")
      ->type_name("MINUTES DISH/STEP")
      ->allow_extra_args(false);
  const auto steps = [&](const char* name, std::vector<std::string>& list, const char* about,
                         const char* type) {
    sub->add_option(name, list, about)->type_name(type)->allow_extra_args(false);
  };
  steps("--started", o.started, "A step has begun just now", "DISH/STEP");
  steps("--finished", o.finished, "A step is over just now", "DISH/STEP");
  steps("--skipped", o.skipped, "A step will not be done", "DISH/STEP");
  const auto seen = [&](const char* name, auto& list, const char* about, const char* type) {
    return sub->add_option(name, list, about)->type_name(type)->allow_extra_args(false);
  };
  seen("--rise", o.rises, "How far a dough or levain has risen, in times its volume at first: 1.4",
       "DISH/STEP TIMES");
  seen("--dough-temperature", o.doughCelsius, "How warm a dough is, in degrees Celsius", "DISH/STEP CELSIUS");
  seen("--dent", o.dents, "What a finger dent in a dough does: springs-back, slow or stays",
       "DISH/STEP WHAT");
  seen("--core-temperature", o.coreCelsius, "How warm the centre of a bake is", "DISH/STEP CELSIUS");
  seen("--oven-temperature", o.ovenCelsius, "How warm the oven of a bake really is", "DISH/STEP CELSIUS");
  steps("--without-cook", o.withoutCook, "Somebody cannot cook any more", "NAME");
  steps("--broken", o.broken, "An oven or a thing cannot be used any more", "NAME");
  sub->add_flag("--keep", o.keep, "Store the reports, the changed event and the plan")->excludes(bundle);
  sub->add_option("--output", o.output, "Also write the new plan to this file as JSON")->type_name("FILE");
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.replan](Environment& e) { return runReplan(o, e); }; });
}

void addWhy(CLI::App& app, Options& options) {
  WhyCommand& o = options.why;
  CLI::App* sub = command(app, "why", "Why a step lies where it does, and what another time would take",
                          "Examples:\n  suppertide why midsummer rolls/bake\n"
                          "  suppertide why midsummer rolls/bake --earlier 30");
  sub->add_option("event", o.eventId, "Which event")->type_name("EVENT")->required();
  sub->add_option("step", o.step, "Which step, as dish/step")->type_name("DISH/STEP")->required();
  CLI::Option* earlier =
      sub->add_option("--earlier", o.earlierMinutes, "What if it began so many minutes earlier")
          ->type_name("MINUTES")
          ->check(CLI::Range(1, 1440));
  sub->add_option("--later", o.laterMinutes, "The same, later")
      ->type_name("MINUTES")
      ->check(CLI::Range(1, 1440))
      ->excludes(earlier);
  addServer(sub, o.server);
  addJson(sub, o.json);
  sub->callback([&options] { options.chosen = [&o = options.why](Environment& e) { return runWhy(o, e); }; });
}

void addShow(CLI::App& app, Options& options) {
  ShowCommand& o = options.show;
  CLI::App* sub = command(
      app, "show", "Print the current plan of an event",
      "Examples:\n  suppertide show\n  suppertide show --cook Ben\n"
      "  suppertide show --ovens --breads\n\n"
      "Without a part chosen, all of it. Exit code 3 when a dish is left unserved or a rule is broken.");
  addEvent(sub, o.eventId, "Which event, when there are several");
  addServer(sub, o.server);
  sub->add_option("--cook", o.cookName, "Only what this cook does")->type_name("NAME");
  sub->add_flag("--ovens", o.ovens, "The oven programs");
  sub->add_flag("--breads", o.breads, "The doughs and how they rise");
  sub->add_flag("--clashes", o.clashes, "Dishes that wanted an oven at the same time");
  sub->add_flag("--first-actions", o.firstActions, "What each cook begins each day with");
  sub->add_flag("--instructions", o.instructions, "Print the recipes' own words below each step");
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.show](Environment& e) { return runShow(o, e); }; });

  WatchCommand& watch = options.watch;
  sub = command(app, "watch", "Follow the household live: a line a change, with who and what",
                "Examples:\n  suppertide watch\n  suppertide watch --changes 1 --json\n\n"
                "Comes back by itself after a lost connection. With --json one object a line.");
  addServer(sub, watch.server);
  sub->add_option("--changes", watch.changes, "End after so many")
      ->type_name("N")
      ->check(CLI::PositiveNumber);
  addJson(sub, watch.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.watch](Environment& e) { return runWatch(o, e); }; });
}

void addOven(CLI::App& app, Options& options) {
  OvenFitCommand& o = options.ovenFit;
  CLI::App* group =
      command(app, "oven", "What is known of an oven",
              "Example:\n  suppertide oven fit readings.csv\n\nSee suppertide oven fit --help.");
  group->require_subcommand(1);
  CLI::App* sub = group->add_subcommand("fit", "Fit an oven's curve to stopwatch and thermometer readings");
  sub->footer(
      "READINGS is a table, or a bundle with the readings in its kitchen; without it, the\n"
      "household's kitchen is asked. Nothing is stored. A table looks like this:\n\n"
      "  part,minutes,celsius      fahrenheit, if that is what was read\n"
      "  heating,0,21              from switching on, at the highest setting\n"
      "  heating,5,96\n  heating,12,182\n"
      "  cooling,0,200             switched off, door closed; ajar: door ajar\n"
      "  rise,14,200,22            on a cooking day: 14 minutes to 200 from 22 degrees\n\n"
      "Examples:\n  suppertide oven fit readings.csv\n"
      "  suppertide oven fit readings.csv --highest 275 --json\n"
      "  suppertide oven fit --oven range-oven\n"
      "  suppertide oven fit --event midsummer --oven range-oven\n\n"
      "A reading far from all others is left out and said so; one that no oven can give is refused.");
  CLI::Option* file =
      sub->add_option("readings", o.readings, "The file; - reads the standard input")->type_name("READINGS");
  sub->add_option("--oven", o.ovenId, "Which oven of the kitchen, when there are several")->type_name("ID");
  sub->add_option("--highest", o.highestCelsius, "Highest setting of a table's oven, °C; 250 when left out")
      ->type_name("N")
      ->check(CLI::Range(100, 350));
  CLI::Option* event = sub->add_option("--event", o.eventId,
                                       "Learn from the oven temperatures that were reported at this event")
                           ->type_name("ID")
                           ->excludes(file);
  sub->add_flag("--keep", o.keep, "Store what was learned in the kitchen, for the next plans")->needs(event);
  addServer(sub, o.server)->excludes(file);
  addJson(sub, o.json);
  sub->callback(
      [&options] { options.chosen = [&o = options.ovenFit](Environment& e) { return runOvenFit(o, e); }; });
}

}  // namespace

int run(const std::vector<std::string>& arguments, Environment& environment) {
  CLI::App app(kAbout, "suppertide");
  app.footer(kFooter);
  app.set_version_flag("--version", kVersion);
  app.require_subcommand(1);
  Options options;
  addPlan(app, options);
  addRemedies(app, options);
  addAudit(app, options);
  addCheck(app, options);
  addJoin(app, options);
  addDocuments(app, options);
  addEvents(app, options);
  addReplan(app, options);
  addWhy(app, options);
  addShow(app, options);
  addOven(app, options);
  addDay(app, options.day, options.chosen);
  addDevices(app, options.devices, options.chosen);
  addMenu(app, options.menu, options.chosen);
  addDoughs(app, options.dough, options.chosen);
  try {
    // The parser takes them from the last to the first.
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::Success& asked) {
    app.exit(asked, environment.out, environment.err);
    return kOk;
  } catch (const CLI::ParseError& mistake) {
    environment.err << mistake.what() << "\nSee suppertide --help.\n";
    return kBadInput;
  }
  return options.chosen(environment);
}

}  // namespace suppertide::terminal
