#include "client/terminal/day_options.h"

namespace suppertide::terminal {
namespace {

void addCommon(CLI::App* sub, DayChoice& choice) {
  sub->add_option("--event", choice.eventId, "Which event, when there are several")->type_name("EVENT");
  sub->add_option("--server", choice.server, "Which saved household to ask; without it the one joined last")
      ->type_name("NAME");
  sub->add_flag("--json", choice.json, "Answer as JSON");
}

void addSights(CLI::App* sub, TellCommand& o) {
  sub->add_option("--rise", o.rise, "How far a dough or levain has risen, in times its volume at first: 1.4")
      ->type_name("TIMES")
      ->check(CLI::Range(0.5, 8.0));
  sub->add_option("--dent", o.dent, "What a finger dent in a dough does: springs-back, slow or stays")
      ->type_name("WHAT")
      ->check(CLI::IsMember({"springs-back", "slow", "stays"}));
  sub->add_option("--dough-temperature", o.doughCelsius, "How warm a dough is")->type_name("CELSIUS");
  sub->add_option("--core-temperature", o.coreCelsius, "How warm the centre of a bake is")
      ->type_name("CELSIUS");
  sub->add_option("--oven-temperature", o.ovenCelsius, "How warm the oven really is")->type_name("CELSIUS");
  sub->add_flag("--done", o.done, "By its look it is done, or the dough is ready");
  sub->add_option("--needs", o.needsMinutes, "By its look it needs so much longer from now")
      ->type_name("MINUTES")
      ->check(CLI::Range(1, 1440));
}

void addTell(CLI::App& app, TellCommand& o, std::function<int(Environment&)>& chosen) {
  CLI::App* sub = app.add_subcommand("tell", "Tell what was done or seen; the plan follows by itself");
  sub->footer(
      "Says what moves because of it, or that nothing has to.\n\nExamples:\n"
      "  suppertide tell rolls/shape --finished\n  suppertide tell rolls/shape --late 20\n"
      "  suppertide tell rolls/bulk --rise 1.4 --note \"by the window\"\n"
      "  suppertide tell rolls/bake --needs 10\n  suppertide tell roast/roast --core-temperature 61 --at "
      "17:05\n"
      "  suppertide tell --note \"the good knife is in the drawer\"\n  suppertide tell --undo last\n"
      "  suppertide tell gratin --left-over 3");
  sub->add_option("step", o.step, "Which step, as suppertide day shows it; a dish for --left-over")
      ->type_name("DISH/STEP");
  sub->add_flag("--started", o.started, "It has begun");
  sub->add_flag("--finished", o.finished, "It is over");
  sub->add_flag("--skipped", o.skipped, "It will not be done");
  sub->add_option("--late", o.lateMinutes, "It is later, or takes longer, by so much")
      ->type_name("MINUTES")
      ->check(CLI::Range(1, 10080));
  sub->add_option("--hand-to", o.handTo, "Somebody else does it")->type_name("NAME");
  addSights(sub, o);
  sub->add_option("--left-over", o.leftOver, "So many portions of the dish were left over")
      ->type_name("PORTIONS")
      ->check(CLI::Range(0.0, 200.0));
  sub->add_option("--undo", o.undo, "Take back a report: its id, or \"last\" for your own last one")
      ->type_name("REPORT");
  sub->add_option("--note", o.note, "A word with it, or alone")->type_name("TEXT");
  sub->add_option("--at", o.at, "When it was: HH:MM today, or \"YYYY-MM-DD HH:MM\"; now when left out")
      ->type_name("TIME");
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runTell(o, e); }; });
}

void addCalendar(CLI::App& app, CalendarCommand& o, std::function<int(Environment&)>& chosen) {
  CLI::App* group =
      app.add_subcommand("calendar", "Plans in calendar programs: files, and addresses to follow");
  group->footer(
      "Examples:\n  suppertide calendar export mine.ics --cook Ana\n"
      "  suppertide calendar follow \"Ana's phone\" --cook Ana\n  suppertide calendar addresses\n"
      "  suppertide calendar revoke \"Ana's phone\"");
  group->require_subcommand(1);
  CLI::App* sub = group->add_subcommand("export", "Write the plan as an iCalendar file");
  sub->add_option("file", o.file, "The file; - is the standard output")->type_name("FILE")->required();
  sub->add_option("--cook", o.cook, "Only what this cook does")->type_name("NAME");
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runCalendarExport(o, e); }; });
  sub = group->add_subcommand("follow", "Make a secret address at which a calendar program follows the plan");
  sub->footer("The address is shown once. Whoever has it can read the plan, and nothing else.");
  sub->add_option("name", o.name, "What to call it, to find it again")->type_name("NAME")->required();
  sub->add_option("--cook", o.cook, "Only what this cook does")->type_name("NAME");
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runCalendarFollow(o, e); }; });
  sub = group->add_subcommand("addresses", "Which addresses there are");
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runCalendarAddresses(o, e); }; });
  sub = group->add_subcommand("revoke", "Make an address void, at once");
  sub->add_option("address", o.address, "Its name or id")->type_name("ADDRESS")->required();
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runCalendarRevoke(o, e); }; });
}

void addSheet(CLI::App& app, SheetCommand& o, std::function<int(Environment&)>& chosen) {
  CLI::App* sub =
      app.add_subcommand("sheet", "The run sheet as a PDF to print: a sheet a cook, ovens, breads, shopping");
  sub->footer(
      "Examples:\n  suppertide sheet supper.pdf\n  suppertide sheet ana.pdf --cook Ana --paper letter");
  sub->add_option("file", o.file, "The file")->type_name("FILE.pdf")->required();
  sub->add_option("--cook", o.cook, "Only this cook's sheet")->type_name("NAME");
  sub->add_option("--paper", o.paper, "a4 or letter")
      ->check(CLI::IsMember({"a4", "letter"}))
      ->capture_default_str();
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runSheet(o, e); }; });
}

void addReview(CLI::App& app, ReviewCommand& o, std::function<int(Environment&)>& chosen) {
  CLI::App* sub =
      app.add_subcommand("review", "What really happened against the plan, what it taught, what is left");
  sub->footer(
      "Nothing is learned unless you say so.\n\nExamples:\n  suppertide review\n"
      "  suppertide review --use length/rolls/shape --decline vigour/crock");
  sub->add_option("--use", o.use, "Use this lesson next time, by the id shown")
      ->type_name("LESSON")
      ->allow_extra_args(false);
  sub->add_option("--decline", o.decline, "Do not use it")->type_name("LESSON")->allow_extra_args(false);
  addCommon(sub, o);
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runReview(o, e); }; });
}

void addCopyEvent(CLI::App& app, CopyEventCommand& o, std::function<int(Environment&)>& chosen) {
  CLI::App* sub = app.add_subcommand("copy-event", "A new event like an old one, on another day");
  sub->footer("Example:\n  suppertide copy-event midsummer 2027-06-19 --name \"Midsummer again\"");
  sub->add_option("event", o.from, "Which event to copy")->type_name("EVENT")->required();
  sub->add_option("date", o.date, "The day of its first course")->type_name("YYYY-MM-DD")->required();
  sub->add_option("--name", o.name, "What to call it")->type_name("NAME");
  sub->add_option("--server", o.server, "Which saved household to ask; without it the one joined last")
      ->type_name("NAME");
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&o, &chosen] { chosen = [&o](Environment& e) { return runCopyEvent(o, e); }; });
}

}  // namespace

void addDay(CLI::App& app, DayOptions& options, std::function<int(Environment&)>& chosen) {
  DayCommand& day = options.day;
  CLI::App* sub = app.add_subcommand("day", "What you do now and next, live, with reminders");
  sub->footer(
      "Follows the plan and what everybody reports, counts down to your next step, and rings the\n"
      "terminal's bell when something is due. Ctrl-C ends it. With --json one object a line.\n\n"
      "Examples:\n  suppertide day\n  suppertide day --once\n  suppertide day --settle\n"
      "  suppertide day --snooze 10");
  sub->add_flag("--once", day.once, "Show how things stand and end");
  CLI::Option* settle =
      sub->add_flag("--settle", day.settle, "What was told last is seen to: tell it nowhere again");
  sub->add_option("--snooze", day.snooze, "Tell again in so many minutes what was told last")
      ->type_name("MINUTES")
      ->check(CLI::Range(1, 720))
      ->excludes(settle);
  addCommon(sub, day);
  sub->callback([&day, &chosen] { chosen = [&day](Environment& e) { return runDay(day, e); }; });

  addTell(app, options.tell, chosen);
  addCalendar(app, options.calendar, chosen);
  addSheet(app, options.sheet, chosen);
  addReview(app, options.review, chosen);
  addCopyEvent(app, options.copy, chosen);

  CorrectionCommand& correction = options.correction;
  sub = app.add_subcommand("correction",
                           "The corrected plan that waits for a word, where the event asks first");
  sub->footer("Examples:\n  suppertide correction\n  suppertide correction --accept");
  CLI::Option* accept = sub->add_flag("--accept", correction.accept, "Make it the plan");
  sub->add_flag("--dismiss", correction.dismiss, "Leave the plan as it is")->excludes(accept);
  addCommon(sub, correction);
  sub->callback([&correction, &chosen] {
    chosen = [&correction](Environment& e) { return runCorrection(correction, e); };
  });
}

}  // namespace suppertide::terminal
