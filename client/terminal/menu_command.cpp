// What follows from a menu: who can eat what, what to buy, sizes, and lines of recipes read.
#include <algorithm>
#include <array>
#include <iostream>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "client/link/error_detail.h"
#include "client/link/request_id.h"
#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/report.h"
#include "client/terminal/shopping_notes.h"

namespace suppertide::terminal {
namespace {

std::optional<EventTask> taskOf(const MenuCommand& command, Environment& environment, int& exitCode,
                                bool eventOptional = false) {
  return eventTask({command.bundle, command.eventId, command.server, command.json, eventOptional},
                   environment, exitCode);
}

Page pageOf(const Environment& environment) {
  return {environment.width, environment.colour};
}

// Of the measures that were asked for, else the household's.
Page pageOf(const Environment& environment, const v1::Household& household, const std::string& shownIn) {
  const bool us = shownIn.empty() && household.measure_system() == v1::MEASURE_SYSTEM_US;
  return {environment.width, environment.colour, us || shownIn == "us" || shownIn == "imperial"};
}

v1::KitchenMeasures measuresOf(const std::string& word) {
  if (word == "metric") return v1::KITCHEN_MEASURES_METRIC;
  if (word == "us") return v1::KITCHEN_MEASURES_US;
  if (word == "imperial") return v1::KITCHEN_MEASURES_IMPERIAL;
  return word == "australian" ? v1::KITCHEN_MEASURES_AUSTRALIAN : v1::KITCHEN_MEASURES_UNSPECIFIED;
}

v1::FieldViolation mistake(const std::string& option, const std::string& value, const std::string& allowed) {
  v1::FieldViolation violation;
  violation.set_field_path(option);
  violation.set_value(value);
  violation.set_description(allowed);
  return violation;
}

bool named(const std::string& id, const std::string& name, const std::string& wanted) {
  return id == wanted || absl::AsciiStrToLower(name) == absl::AsciiStrToLower(wanted);
}

// As it was measured: what three onions weigh is for the list to say, where it weighs onions.
v1::Amount amountAsSaid(const v1::ParsedIngredient& line) {
  v1::Amount amount;
  const bool pieces = line.unit().empty() || line.unit() == "piece" || line.unit() == "dozen";
  if (line.mass_source() == "scale" || (line.has_mass_g() && !line.has_volume_ml() && !pieces))
    amount.set_mass_g(line.mass_g());
  else if (line.has_volume_ml())
    amount.set_volume_ml(line.volume_ml());
  else if (line.has_count())
    amount.set_count(line.count());
  return amount;
}

// Lines are read by the server; one without a measure says nothing. `add` takes each with its amount.
template <typename Add>
absl::Status readAmounts(const std::vector<std::string>& texts, const char* option, const EventTask& task,
                         Violations& mistakes, const Add& add) {
  if (texts.empty()) return absl::OkStatus();
  v1::ParseIngredientsRequest lines;
  lines.set_household_id(task.connection.householdId);
  for (const std::string& line : texts) lines.add_lines(line);
  const auto parsed = task.connection.session->parseIngredients(lines);
  if (!parsed.ok()) return parsed.status();
  for (const v1::ParsedIngredient& one : parsed->ingredients()) {
    const v1::Amount amount = amountAsSaid(one);
    if (amount.kind_case() == v1::Amount::KIND_NOT_SET)
      mistakes.push_back(mistake(option, one.line(), "say how much of it, like \"500 g butter\""));
    add(one.name(), amount);
  }
  return absl::OkStatus();
}

absl::Status readAtHand(const ShoppingCommand& command, const EventTask& task,
                        v1::MakeShoppingListRequest& request, Violations& mistakes) {
  return readAmounts(command.atHand, "--at-hand", task, mistakes,
                     [&](const std::string& name, const v1::Amount& amount) {
                       v1::AtHand& there = *request.add_at_hand();
                       there.set_name(name);
                       *there.mutable_amount() = amount;
                     });
}

// Notes what the options ask for; what was noted is on the list from then on.
absl::Status noteEdits(const ShoppingCommand& command, const EventTask& task,
                       v1::MakeShoppingListRequest& request, Violations& mistakes) {
  const auto list = task.connection.session->makeShoppingList(request);
  if (!list.ok()) return list.status();
  v1::EditShoppingRequest edit;
  edit.set_household_id(task.connection.householdId);
  edit.set_event_id(task.event.id());
  edit.set_request_id(link::newRequestId());
  const auto status = readAmounts(command.packets, "--packet", task, mistakes,
                                  [&](const std::string& name, const v1::Amount& amount) {
                                    v1::Packet& packet = *edit.add_edits()->mutable_packet();
                                    packet.set_name(name);
                                    *packet.mutable_size() = amount;
                                  });
  if (!status.ok()) return status;
  for (const v1::ShoppingEdit& one : shoppingEdits(command, request, *list, mistakes))
    *edit.add_edits() = one;
  if (!mistakes.empty() || edit.edits().empty()) return absl::OkStatus();
  const auto edited = task.connection.session->editShopping(edit);
  if (edited.ok() && command.keep) request.clear_at_hand();
  if (edited.ok() && command.keep) request.clear_buyers();
  return edited.status();
}

v1::ShopSection sectionOf(const std::string& word) {
  static constexpr std::pair<const char*, v1::ShopSection> kWords[] = {
      {"produce", v1::SHOP_SECTION_PRODUCE}, {"meat", v1::SHOP_SECTION_MEAT_FISH},
      {"fish", v1::SHOP_SECTION_MEAT_FISH},  {"dairy", v1::SHOP_SECTION_DAIRY_EGGS},
      {"baking", v1::SHOP_SECTION_BAKING},   {"dry", v1::SHOP_SECTION_DRY_GOODS},
      {"spices", v1::SHOP_SECTION_SPICES},   {"frozen", v1::SHOP_SECTION_FROZEN},
      {"drinks", v1::SHOP_SECTION_DRINKS},   {"other", v1::SHOP_SECTION_OTHER}};
  for (const auto& [name, section] : kWords)
    if (word == name) return section;
  return v1::SHOP_SECTION_UNSPECIFIED;
}

void readBuyers(const ShoppingCommand& command, const v1::Household& household,
                v1::MakeShoppingListRequest& request, Violations& mistakes) {
  for (const std::string& text : command.buyers) {
    const std::vector<std::string> parts = absl::StrSplit(text, absl::MaxSplits('=', 1));
    v1::Buyer& buyer = *request.add_buyers();
    for (const v1::Member& member : household.members())
      if (named(member.id(), member.display_name(), parts[0])) buyer.set_member_id(member.id());
    if (buyer.member_id().empty())
      mistakes.push_back(mistake("--buyer", text, "nobody of the household is called so"));
    if (parts.size() < 2) continue;
    for (const std::string& word : std::vector<std::string>(absl::StrSplit(parts[1], ','))) {
      const v1::ShopSection section = sectionOf(word);
      if (section == v1::SHOP_SECTION_UNSPECIFIED)
        mistakes.push_back(mistake("--buyer", word,
                                   "must be one of produce, meat, dairy, baking, dry, spices, frozen, "
                                   "drinks, other"));
      buyer.add_sections(section);
    }
  }
}

absl::StatusOr<v1::Recipe> chosenRecipe(const v1::Bundle& bundle, const std::string& wanted) {
  std::string known;
  for (const v1::Recipe& recipe : bundle.recipes()) {
    if (named(recipe.id(), recipe.display_name(), wanted)) return recipe;
    absl::StrAppend(&known, known.empty() ? "" : ", ", recipe.id());
  }
  return absl::InvalidArgumentError(
      absl::StrCat("there is no recipe ", wanted, known.empty() ? "" : "; there are: ", known));
}

// "330x230", "2x330x230".
bool readPan(const std::string& text, v1::Pan& pan) {
  std::vector<int> numbers;
  for (const std::string& part : std::vector<std::string>(absl::StrSplit(text, 'x'))) {
    int number = 0;
    if (!absl::SimpleAtoi(part, &number) || number <= 0) return false;
    numbers.push_back(number);
  }
  if (numbers.size() == 2) numbers.insert(numbers.begin(), 1);
  if (numbers.size() != 3) return false;
  pan.set_count(numbers[0]);
  pan.set_width_mm(numbers[1]);
  pan.set_depth_mm(numbers[2]);
  return true;
}

// Of the event, or the only one there is.
v1::Kitchen kitchenOf(const EventTask& task) {
  if (task.event.kitchen_id().empty() && task.bundle.kitchens_size() == 1) return task.bundle.kitchens(0);
  for (const v1::Kitchen& one : task.bundle.kitchens())
    if (one.id() == task.event.kitchen_id()) return one;
  return {};
}

// The fields of the request are the options of the command line.
Violations inOptions(const ScaleCommand& command, Violations mistakes) {
  const std::array<std::array<std::string, 3>, 4> kOptions = {
      {{"servingCount", "--guests", absl::StrCat(command.servings.value_or(0))},
       {"pieceCount", "--pieces", absl::StrCat(command.pieces.value_or(0))},
       {"pieceMassG", "--piece-mass", absl::StrCat(command.pieceMass)},
       {"pan", "--pan", command.pan}}};
  for (v1::FieldViolation& mistake : mistakes)
    for (const auto& [field, option, value] : kOptions) {
      if (mistake.field_path() != field && mistake.field_path().rfind(field + ".", 0) != 0) continue;
      mistake.set_field_path(option);
      mistake.set_value(value);
    }
  return mistakes;
}

// A new pan is taken to be as high as the recipe's.
void keepHeight(const v1::Recipe& recipe, v1::Pan& pan) {
  for (const v1::Step& step : recipe.steps())
    if (step.oven().has_pan() && pan.height_mm() == 0) pan.set_height_mm(step.oven().pan().height_mm());
}

std::vector<std::string> linesOf(const IngredientCommand& command, const std::string& input) {
  std::vector<std::string> lines;
  for (const std::string& line : command.lines) {
    if (line != "-") {
      lines.push_back(line);
      continue;
    }
    for (const std::string& one :
         std::vector<std::string>(absl::StrSplit(input, '\n', absl::SkipWhitespace())))
      lines.push_back(one);
  }
  return lines;
}

}  // namespace

int runMenuCheck(const MenuCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task = taskOf(command, environment, exitCode);
  if (!task) return exitCode;
  v1::CheckMenuRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  const auto answer = task->connection.session->checkMenu(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  environment.out << (command.json ? jsonOf(*answer)
                                   : menuCheckText(task->bundle, task->event, *answer, pageOf(environment)));
  return kOk;
}

int runShopping(const ShoppingCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task = taskOf(command, environment, exitCode);
  if (!task) return exitCode;
  v1::MakeShoppingListRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  request.set_shown_in(measuresOf(command.shownIn));
  Violations mistakes;
  if (const auto status = readAtHand(command, *task, request, mistakes); !status.ok())
    return reportFailure(environment, status, command.json);
  readBuyers(command, task->bundle.household(), request, mistakes);
  if (!mistakes.empty()) return reportMistakes(environment, mistakes, command.json);
  if (command.planned)
    if (auto status = planFirst(*task); !status.ok()) return reportFailure(environment, status, command.json);
  const v1::MakeShoppingListRequest asked = request;  // what is noted is taken out of the request
  if (asksForEdits(command)) {
    if (const auto status = noteEdits(command, *task, request, mistakes); !status.ok())
      return reportFailure(environment, status, command.json);
    if (!mistakes.empty()) return reportMistakes(environment, mistakes, command.json);
  }
  const auto answer = task->connection.session->makeShoppingList(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  const auto uncounted = uncountedAtHand(*task, asked);
  if (!uncounted.ok()) return reportFailure(environment, uncounted.status(), command.json);
  const Page page = pageOf(environment, task->bundle.household(), command.shownIn);
  environment.out << shoppingText(task->bundle, task->event, *answer, page)
                  << uncountedText(*uncounted, page);
  return kOk;
}

int runScale(const ScaleCommand& command, Environment& environment) {
  int exitCode = kFailed;
  if (!command.servings && !command.pieces && command.pan.empty())
    return reportMistakes(
        environment, {mistake("--guests", "", "say what size: --guests, --pieces or --pan")}, command.json);
  const auto task = taskOf(command, environment, exitCode, true);
  if (!task) return exitCode;
  const v1::Kitchen kitchen = kitchenOf(*task);
  const auto recipe = chosenRecipe(task->bundle, command.recipe);
  if (!recipe.ok()) return reportFailure(environment, recipe.status(), command.json);
  v1::ScaleRecipeRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_recipe_id(recipe->id());
  request.set_kitchen_id(kitchen.id());
  request.set_shown_in(measuresOf(command.shownIn));
  request.set_piece_mass_g(command.pieceMass);
  if (command.pieces) {
    request.set_piece_count(*command.pieces);
  } else if (!command.pan.empty()) {
    if (!readPan(command.pan, *request.mutable_pan()))
      return reportMistakes(environment, {mistake("--pan", command.pan, "must be like 330x230 or 2x330x230")},
                            command.json);
    keepHeight(*recipe, *request.mutable_pan());
  } else {
    request.set_serving_count(*command.servings);
  }
  const auto answer = task->connection.session->scaleRecipe(request);
  if (const auto detail = link::errorDetail(answer.status()); detail && detail->violations_size() > 0)
    return reportMistakes(environment,
                          inOptions(command, {detail->violations().begin(), detail->violations().end()}),
                          command.json);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  environment.out << (command.json ? jsonOf(*answer)
                                   : scaledText(*recipe, kitchen, *answer, task->bundle.household(),
                                                pageOf(environment)));
  return kOk;
}

int runIngredient(const IngredientCommand& command, Environment& environment) {
  std::string input;
  if (std::find(command.lines.begin(), command.lines.end(), "-") != command.lines.end()) {
    auto text = readFile("-");
    if (!text.ok()) return reportFailure(environment, text.status(), command.json);
    input = *std::move(text);
  }
  auto connection = openLocal(environment, {});
  if (!connection.ok()) return reportFailure(environment, connection.status(), command.json);
  v1::ParseIngredientsRequest request;
  request.set_household_id(connection->householdId);
  for (const std::string& line : linesOf(command, input)) request.add_lines(line);
  request.set_measures(measuresOf(command.measures));
  request.set_shown_in(measuresOf(command.shownIn.empty() ? "metric" : command.shownIn));
  const auto answer = connection->session->parseIngredients(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  environment.out << (command.json ? jsonOf(*answer) : ingredientText(*answer, pageOf(environment)));
  return kOk;
}

}  // namespace suppertide::terminal
