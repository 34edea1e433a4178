#include "client/terminal/dough_options.h"

#include <CLI/CLI.hpp>

namespace suppertide::terminal {
namespace {

using Chosen = std::function<int(Environment&)>;

CLI::Option* addBread(CLI::App* sub, BreadChoice& bread) {
  CLI::Option* file = sub->add_option("file", bread.file,
                                      "File with the bread: a bundle, a recipe or only its formula; "
                                      "without it the household's breads")
                          ->type_name("FILE");
  sub->add_option("--recipe", bread.recipe, "Which bread, when there are several")->type_name("ID");
  sub->add_option("--server", bread.server, "Which saved household to ask; without it the one joined last")
      ->type_name("NAME")
      ->excludes(file);
  return file;
}

void addServer(CLI::App* sub, std::string& server) {
  sub->add_option("--server", server, "Which saved household; without it the one joined last")
      ->type_name("NAME");
}

void addFit(CLI::App& group, DoughFitCommand& o, Chosen& chosen) {
  CLI::App* sub = group.add_subcommand("fit", "Ways to have a dough ready at an hour");
  sub->footer(
      "From feeding the levain on, in the kitchen's places, work in the given hours only.\n\n"
      "Examples:\n  suppertide dough fit demo/feast.json --recipe butter-rolls --ready \"2026-06-21 "
      "17:00-17:30\" "
      "\\\n"
      "    --hours 06:30-23:00\n"
      "  suppertide dough fit loaf.json --ready \"2026-06-21 17:00-17:30\" --place counter:22 --place "
      "fridge:4\n"
      "  suppertide dough fit demo/feast.json --recipe butter-rolls --ready \"2026-06-21 17:00-17:30\" "
      "--kitchen "
      "18\n\n"
      "With --kitchen the ways for that temperature are shown, and how they differ from those of the\n"
      "kitchen as it is. Exit code 3 when there is no way; the nearest is shown.");
  addBread(sub, o.bread);
  sub->add_option("--ready", o.ready, "When its proof should end: a day and hours")
      ->type_name("SPAN")
      ->required();
  sub->add_option("--hours", o.hours, "Work only in these hours of a day, like 06:30-23:00")
      ->type_name("HOURS");
  sub->add_option("--place", o.places,
                  "Where it may stand instead of in the kitchen's places: counter, proofer, light, cellar or "
                  "fridge, and its temperature")
      ->type_name("KIND:C")
      ->allow_extra_args(false);
  sub->add_option("--kitchen", o.counterCelsius, "What if the counter has this temperature, °C")
      ->type_name("C");
  sub->add_option("--most", o.most, "How many ways to show; 5 when left out")
      ->type_name("N")
      ->check(CLI::PositiveNumber);
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&] { chosen = [&o](Environment& e) { return runDoughFit(o, e); }; });
}

void addScale(CLI::App& group, DoughScaleCommand& o, Chosen& chosen) {
  CLI::App* sub =
      group.add_subcommand("scale", "What to weigh for so much dough, with changes of the formula");
  sub->footer(
      "Percentages keep the flour's mass, grams keep all other grams; flours stay at 100 % together.\n"
      "Nothing is stored but what --output writes.\n\n"
      "Examples:\n  suppertide dough scale demo/feast.json --recipe butter-rolls --pieces 12x60\n"
      "  suppertide dough scale loaf.json --flour 1000 --set \"water=75%\" --set \"salt=20g\"\n"
      "  suppertide dough scale loaf.json --pan 300x110x60 --pans 2 --room 18\n"
      "  suppertide dough scale loaf.json --guests 10");
  addBread(sub, o.bread);
  sub->add_option("--set", o.sets, "A line's new percentage or grams")
      ->type_name("LINE=75%|20g")
      ->allow_extra_args(false);
  sub->add_option("--remove", o.removes, "A line to leave out")->type_name("LINE")->allow_extra_args(false);
  CLI::Option* pieces =
      sub->add_option("--pieces", o.pieces, "So many pieces, of so many grams each")->type_name("N[xGRAMS]");
  CLI::Option* flour = sub->add_option("--flour", o.flourGrams, "So much flour in all, g")
                           ->type_name("GRAMS")
                           ->check(CLI::PositiveNumber);
  CLI::Option* dough = sub->add_option("--dough", o.doughGrams, "So much dough, g")
                           ->type_name("GRAMS")
                           ->check(CLI::PositiveNumber);
  CLI::Option* pan =
      sub->add_option(
             "--pan", o.pan,
             "To fill a pan of this inner size, mm: length x width x height, or round DIAMETERxHEIGHT; "
             "without a height a flat sheet")
          ->type_name("SIZE");
  sub->add_option("--pans", o.pans, "How many such pans")
      ->type_name("N")
      ->check(CLI::PositiveNumber)
      ->needs(pan);
  CLI::Option* guests =
      sub->add_option("--guests", o.guests, "For so many guests")->type_name("N")->check(CLI::PositiveNumber);
  sub->add_option("--serves", o.serves, "Whom one making serves, where no recipe says so")
      ->type_name("N")
      ->check(CLI::PositiveNumber)
      ->needs(guests);
  for (CLI::Option* one : {pieces, flour, dough, pan, guests})
    for (CLI::Option* other : {pieces, flour, dough, pan, guests})
      if (one != other) one->excludes(other);
  sub->add_option("--room", o.roomCelsius, "Temperature of the room, °C; 21 when left out")->type_name("C");
  sub->add_option("--flour-temperature", o.flourCelsius, "Of the flour, °C; the room's when left out")
      ->type_name("C");
  sub->add_option("--ratio", o.flourPerStarter, "Levain: parts of flour on 1 of starter")->type_name("N");
  sub->add_option("--output", o.output, "Also write the formula as it is then to this file")
      ->type_name("FILE");
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&] { chosen = [&o](Environment& e) { return runDoughScale(o, e); }; });
}

void addSeen(CLI::App& group, DoughSeenCommand& o, Chosen& chosen) {
  CLI::App* sub =
      group.add_subcommand("seen", "Tell what a levain or dough did, so that forecasts get better");
  sub->footer(
      "Kept with the household's starter; all that was seen is learned from together.\n\n"
      "Examples:\n  suppertide dough seen --fed \"2026-06-20 08:00\" --ratio 1:2:2 --rise 2.1 --place "
      "counter\n"
      "  suppertide dough seen --fed \"2026-06-20 08:00\" --ratio 1:2:2 --peak --celsius 23\n"
      "  suppertide dough seen --recipe butter-rolls --stage proof --fed \"2026-06-20 15:10\" --finger fills "
      "--place counter");
  sub->add_option("--starter", o.starter, "Which starter, when there are several")->type_name("ID");
  sub->add_option("--fed", o.fed, "When it was fed; a dough: mixed, or for a proof shaped")
      ->type_name("TIME")
      ->required();
  sub->add_option("--seen", o.seen, "When it was looked at; now when left out")->type_name("TIME");
  sub->add_option("--ratio", o.ratio, "Starter : flour : water of the feeding")->type_name("1:F:W");
  sub->add_option("--recipe", o.recipe, "Of this bread's dough instead of a levain")->type_name("ID");
  sub->add_option("--stage", o.stage, "Of the dough; bulk when left out")
      ->type_name("STAGE")
      ->check(CLI::IsMember({"bulk", "proof"}));
  CLI::Option* rise = sub->add_option("--rise", o.rise, "Times its volume at the start")->type_name("TIMES");
  CLI::Option* warm =
      sub->add_option("--temperature", o.doughCelsius, "Of the dough itself, °C")->type_name("C");
  CLI::Option* finger = sub->add_option("--finger", o.finger, "What a dent does")
                            ->type_name("WHAT")
                            ->check(CLI::IsMember({"springs", "fills", "stays"}));
  CLI::Option* peak = sub->add_flag("--peak", o.peak, "A levain stood highest just then");
  CLI::Option* ready = sub->add_flag("--ready", o.ready, "It was called ready");
  for (CLI::Option* one : {rise, warm, finger, peak, ready})
    for (CLI::Option* other : {rise, warm, finger, peak, ready})
      if (one != other) one->excludes(other);
  CLI::Option* celsius =
      sub->add_option("--celsius", o.celsius, "Mean temperature where it stood, °C")->type_name("C");
  sub->add_option("--place", o.place, "Or the place, by id or name, so that it is learned about, too")
      ->type_name("PLACE")
      ->excludes(celsius);
  sub->add_flag("--try", o.tryOnly, "Only show what it would teach");
  addServer(sub, o.server);
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&] { chosen = [&o](Environment& e) { return runDoughSeen(o, e); }; });
}

void addMixed(CLI::App& group, DoughMixedCommand& o, Chosen& chosen) {
  CLI::App* sub =
      group.add_subcommand("mixed", "Tell how warm a dough came out, so that the next water is right");
  sub->footer("Example:\n  suppertide dough mixed --recipe butter-rolls --room 20 --water 31 --dough 26.5");
  sub->add_option("--recipe", o.recipe, "Which bread, when there are several")->type_name("ID");
  sub->add_option("--room", o.room, "Room, °C")->type_name("C")->required();
  sub->add_option("--flour", o.flour, "Flour, °C; the room's when left out")->type_name("C");
  sub->add_option("--water", o.water, "Water, °C")->type_name("C")->required();
  sub->add_option("--preferment", o.preferment, "Levain or preferment, °C; the room's when left out")
      ->type_name("C");
  sub->add_option("--dough", o.dough, "The mixed dough, °C")->type_name("C")->required();
  sub->add_flag("--try", o.tryOnly, "Only show what it would teach");
  addServer(sub, o.server);
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&] { chosen = [&o](Environment& e) { return runDoughMixed(o, e); }; });
}

void addLearned(CLI::App& group, DoughLearnedCommand& o, Chosen& chosen) {
  CLI::App* sub = group.add_subcommand("learned", "What was learned of starters, places and breads");
  sub->footer("Example:\n  suppertide dough learned");
  addServer(sub, o.server);
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&] { chosen = [&o](Environment& e) { return runDoughLearned(o, e); }; });
}

void addForecast(CLI::App* sub, DoughCommand& o) {
  addBread(sub, o.bread);
  sub->add_option("--start", o.start, "When it begins, in the household's time zone")->type_name("TIME");
  sub->add_option("--stage", o.stage,
                  "What ferments: levain, bulk, proof, or the id of a preferment; bulk when left out")
      ->type_name("STAGE");
  sub->add_option("--stay", o.stays,
                  "Where it stands: degrees or a place of the kitchen, and hours; one after the other")
      ->type_name("C|PLACE:HOURS")
      ->allow_extra_args(false);
  sub->add_option("--ratio", o.flourPerStarter, "Levain: parts of flour on 1 of starter")->type_name("N");
  sub->add_option("--water", o.waterCelsius, "Mixing water, °C; else the formula's dough temperature")
      ->type_name("C");
  sub->add_flag("--json", o.json, "Answer as JSON");
}

}  // namespace

void addDoughs(CLI::App& app, DoughOptions& options, Chosen& chosen) {
  CLI::App* dough = app.add_subcommand("dough", "Forecast a dough through places, as a chart");
  dough->footer(
      "Examples:\n  suppertide dough demo/feast.json --recipe butter-rolls --start \"2026-06-20 10:00\" "
      "--stay 22:1 "
      "--stay 28:4\n"
      "  suppertide dough loaf.json --start \"2026-06-20 10:00\" --stay 24:6\n"
      "  suppertide dough --recipe butter-rolls --start \"2026-06-20 10:00\" --stay counter:1 \\\n"
      "    --stay oven-light:4\n\n"
      "Each part has its own help, as in suppertide dough fit --help.");
  addForecast(dough, options.dough);
  addFit(*dough, options.fit, chosen);
  addScale(*dough, options.scale, chosen);
  addSeen(*dough, options.seen, chosen);
  addMixed(*dough, options.mixed, chosen);
  addLearned(*dough, options.learned, chosen);
  dough->callback([&options, &chosen, dough] {
    if (dough->get_subcommands().empty())
      chosen = [&o = options.dough](Environment& e) { return runDough(o, e); };
  });
  CLI::App* bread = app.add_subcommand("bread", "What the bread model is worth");
  bread->footer("Example:\n  suppertide bread check");
  bread->require_subcommand(1);
  CLI::App* check = bread->add_subcommand("check", "Show the model beside published values and practice");
  check->footer("Example:\n  suppertide bread check --json");
  check->add_flag("--json", options.check.json, "Answer as JSON");
  check->callback([&] { chosen = [&o = options.check](Environment& e) { return runBreadCheck(o, e); }; });
}

}  // namespace suppertide::terminal
