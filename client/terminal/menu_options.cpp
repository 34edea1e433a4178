#include "client/terminal/menu_options.h"

namespace suppertide::terminal {
namespace {

using Chosen = std::function<int(Environment&)>;

// From a file, or from a known server.
template <typename Command>
void addHousehold(CLI::App* sub, Command& o) {
  CLI::Option* bundle =
      sub->add_option("bundle", o.bundle,
                      "File with the household, kitchen, recipes and event; - reads the standard input")
          ->type_name("BUNDLE");
  sub->add_option("--server", o.server, "Which saved household to ask; without it the one joined last")
      ->type_name("NAME")
      ->excludes(bundle);
  sub->add_flag("--json", o.json, "Answer as JSON");
}

template <typename Command>
void addSource(CLI::App* sub, Command& o, const char* event = "Which event, when there are several") {
  sub->add_option("--event", o.eventId, event)->type_name("ID");
  addHousehold(sub, o);
}

void addShownIn(CLI::App* sub, std::string& shownIn) {
  sub->add_option("--show", shownIn, "Measures to show amounts in; the household's when left out")
      ->type_name("KIND")
      ->check(CLI::IsMember({"metric", "us", "imperial", "australian"}));
}

void addCheck(CLI::App* menu, MenuCommand& o, Chosen& chosen) {
  CLI::App* sub =
      menu->add_subcommand("check", "Who can eat what, course by course, and whether it is enough");
  sub->footer(
      "What is not known is told as unknown, never as free of anything. No medical advice: ask the\n"
      "guests and read the labels.\n\n"
      "Examples:\n  suppertide menu check demo/feast.json\n  suppertide menu check --event midsummer --json");
  addSource(sub, o);
  sub->callback([&] { chosen = [&o](Environment& e) { return runMenuCheck(o, e); }; });
}

void addShopping(CLI::App* menu, ShoppingCommand& o, Chosen& chosen) {
  CLI::App* sub =
      menu->add_subcommand("shopping", "What to buy, by day and section, and what to take out in time");
  sub->footer(
      "Amounts of all dishes together, for what their guests eat. With a plan, the day is that of the\n"
      "first step that uses it. Sections: produce, meat, dairy, baking, dry, spices, frozen,\n"
      "drinks, other.\n\n"
      "Examples:\n  suppertide menu shopping demo/feast.json --at-hand \"500 g butter\"\n"
      "  suppertide menu shopping --event midsummer --buyer Ana=produce,dairy --buyer Ben --keep\n"
      "  suppertide menu shopping --event midsummer --tick butter --add \"12 candles\"\n\n"
      "What is noted is kept on the server: everybody who watches sees it at once.");
  addSource(sub, o);
  sub->add_option("--at-hand", o.atHand, "What is in the house already, as a line: \"500 g butter\"")
      ->type_name("LINE")
      ->allow_extra_args(false);
  sub->add_option("--buyer", o.buyers, "Who buys which sections; without sections, all that nobody else buys")
      ->type_name("NAME[=SECTION,...]")
      ->allow_extra_args(false);
  sub->add_flag("--planned", o.planned, "Plan a BUNDLE first, for the days and hours");
  const auto noted = [&](const char* name, std::vector<std::string>& into, const char* about,
                         const char* type) {
    sub->add_option(name, into, about)
        ->type_name(type)
        ->allow_extra_args(false)
        ->group("Noted for everybody");
  };
  noted("--tick", o.ticks, "This line is in the basket", "NAME");
  noted("--untick", o.unticks, "It is not, after all", "NAME");
  noted("--add", o.added, "A line that no recipe asks for: \"12 candles\"", "TEXT");
  noted("--drop", o.dropped, "Take an added line off again", "NAME");
  noted("--packet", o.packets, "How it is sold, as a line: \"250 g butter\"; bought in whole ones", "LINE");
  noted("--used-up", o.usedUp, "No longer at hand", "NAME");
  sub->add_flag("--keep", o.keep, "Note what is --at-hand and each --buyer, too")
      ->group("Noted for everybody");
  addShownIn(sub, o.shownIn);
  sub->callback([&] { chosen = [&o](Environment& e) { return runShopping(o, e); }; });
}

void addChange(CLI::App* menu, MenuChangeCommand& o, Chosen& chosen) {
  CLI::App* sub =
      menu->add_subcommand("change", "What another menu would change: guests, shopping and the plan");
  sub->footer(
      "Nothing is stored. A BUNDLE without a plan is planned first.\n\n"
      "Examples:\n  suppertide menu change demo/feast.json --without hazelnut-cake\n"
      "  suppertide menu change --event midsummer --serves berry-kissel=20 --time main=19:45\n\n"
      "Exit code 3 when a dish could not be served any more.");
  addSource(sub, o);
  sub->add_option("--without", o.without, "A dish is left out")->type_name("DISH")->allow_extra_args(false);
  sub->add_option("--serves", o.serves, "A dish is made for so many portions; 0: for all guests")
      ->type_name("DISH=COUNT")
      ->allow_extra_args(false);
  sub->add_option("--time", o.times, "A course is served at another hour of its day")
      ->type_name("COURSE=HH:MM")
      ->allow_extra_args(false);
  sub->callback([&] { chosen = [&o](Environment& e) { return runMenuChange(o, e); }; });
}

void addScale(CLI::App* menu, ScaleCommand& o, Chosen& chosen) {
  CLI::App* sub = menu->add_subcommand("scale", "A recipe for other guests, pieces or another pan");
  sub->footer(
      "Eggs and packets come out whole, and it says so where that is far off. Times follow the mass\n"
      "and thickness of a piece, never their number; more pans may need several loads of an oven.\n\n"
      "Examples:\n  suppertide menu scale demo/feast.json --recipe hazelnut-cake --guests 16\n"
      "  suppertide menu scale demo/feast.json --recipe butter-rolls --pieces 40 --piece-mass 45\n"
      "  suppertide menu scale demo/feast.json --recipe swede-gratin --pan 330x230");
  addSource(sub, o, "Whose kitchen the pans are for, when there are several");
  sub->add_option("--recipe", o.recipe, "Which recipe, by its id or name")->type_name("RECIPE")->required();
  CLI::Option* guests = sub->add_option("--guests", o.servings, "For so many adult portions")->type_name("N");
  CLI::Option* pieces =
      sub->add_option("--pieces", o.pieces, "Breads: so many pieces")->type_name("N")->excludes(guests);
  sub->add_option("--piece-mass", o.pieceMass, "Breads: of so much dough each")
      ->type_name("GRAMS")
      ->needs(pieces);
  sub->add_option("--pan", o.pan,
                  "In this pan, filled as deep: width x depth in millimetres, 2x for two of them")
      ->type_name("[COUNTx]WIDTHxDEPTH")
      ->excludes(guests)
      ->excludes(pieces);
  addShownIn(sub, o.shownIn);
  sub->callback([&] { chosen = [&o](Environment& e) { return runScale(o, e); }; });
}

void addRules(CLI::App* menu, SafetyRulesCommand& o, Chosen& chosen) {
  CLI::App* sub =
      menu->add_subcommand("rules", "The limits of food safety, rule set beside rule set, with sources");
  sub->footer(
      "Only where they differ, unless --all is given. Plans keep the household's own set; local codes and\n"
      "licensed practice come first.\n\nExamples:\n  suppertide menu rules\n"
      "  suppertide menu rules demo/feast.json --all\n  suppertide menu rules --choose uk");
  addHousehold(sub, o);
  sub->add_flag("--all", o.all, "Also where they say the same");
  sub->add_option("--choose", o.choose, "Which the household's plans keep from now on (hosts only)")
      ->type_name("SET")
      ->check(CLI::IsMember({"home", "food-service", "uk"}));
  sub->callback([&] { chosen = [&o](Environment& e) { return runSafetyRules(o, e); }; });
}

void addIngredient(CLI::App* menu, IngredientCommand& o, Chosen& chosen) {
  CLI::App* sub =
      menu->add_subcommand("ingredient", "Read lines of a recipe, and say what is not sure in them");
  sub->footer(
      "Examples:\n  suppertide menu ingredient \"2 1/4 cups flour, sifted\" --measures us\n"
      "  suppertide menu ingredient \"1,5 dl cream\" \"3 large eggs\" --json\n"
      "  suppertide menu ingredient - < recipe.txt");
  sub->add_option("lines", o.lines, "The lines, each in quotes; - reads them from the standard input")
      ->type_name("LINE")
      ->required();
  sub->add_option("--measures", o.measures, "Whose cups, spoons and pints: metric, us, imperial, australian")
      ->type_name("KIND")
      ->check(CLI::IsMember({"metric", "us", "imperial", "australian"}))
      ->capture_default_str();
  addShownIn(sub, o.shownIn);
  sub->add_flag("--json", o.json, "Answer as JSON");
  sub->callback([&] { chosen = [&o](Environment& e) { return runIngredient(o, e); }; });
}

}  // namespace

void addMenu(CLI::App& app, MenuOptions& options, Chosen& chosen) {
  CLI::App* menu = app.add_subcommand("menu", "What follows from a menu: guests, shopping, portions, sizes");
  menu->footer("Example:\n  suppertide menu check demo/feast.json\n\nMore: suppertide menu check --help.");
  menu->require_subcommand(1);
  addCheck(menu, options.check, chosen);
  addShopping(menu, options.shopping, chosen);
  addChange(menu, options.change, chosen);
  addScale(menu, options.scale, chosen);
  addIngredient(menu, options.ingredient, chosen);
  addRules(menu, options.rules, chosen);
}

}  // namespace suppertide::terminal
