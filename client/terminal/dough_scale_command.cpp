// A formula changed and scaled: what to weigh, how warm the water, how long it bakes.
#include <algorithm>
#include <cmath>

#include "absl/strings/ascii.h"
#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_split.h"
#include "client/terminal/dough_source.h"
#include "client/terminal/dough_text.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"
#include "client/terminal/units.h"

namespace suppertide::terminal {
namespace {

// "water=75%" or "salt=20g"; false when it is not of that form.
bool readSet(const std::string& text, v1::FormulaEdit& edit) {
  const std::size_t equals = text.rfind('=');
  if (equals == std::string::npos || equals == 0) return false;
  edit.set_line_name(std::string(absl::StripAsciiWhitespace(text.substr(0, equals))));
  std::string amount(absl::StripAsciiWhitespace(text.substr(equals + 1)));
  const bool percent = !amount.empty() && amount.back() == '%';
  const bool grams = !amount.empty() && amount.back() == 'g';
  if (!percent && !grams) return false;
  amount.pop_back();
  double value = 0;
  if (!absl::SimpleAtod(absl::StripAsciiWhitespace(amount), &value)) return false;
  if (percent)
    edit.set_percent(value);
  else
    edit.set_mass_g(value);
  return true;
}

bool readNumbers(const std::string& text, std::vector<double>& numbers) {
  for (const absl::string_view part : absl::StrSplit(text, 'x')) {
    double value = 0;
    if (!absl::SimpleAtod(absl::StripAsciiWhitespace(part), &value)) return false;
    numbers.push_back(value);
  }
  return true;
}

// "12" or "12x60".
bool readPieces(const std::string& text, v1::PieceAmount& pieces) {
  std::vector<double> numbers;
  if (!readNumbers(text, numbers) || numbers.empty() || numbers.size() > 2) return false;
  if (numbers[0] != std::floor(numbers[0]) || std::abs(numbers[0]) > 1e6) return false;
  pieces.set_count(static_cast<int>(numbers[0]));
  if (numbers.size() == 2) pieces.set_mass_g(numbers[1]);
  return true;
}

// "300x110x60", "400x300", "round 240x50" or "round 240".
bool readPan(const std::string& text, v1::PanAmount& pan) {
  constexpr char kRound[] = "round";
  const bool round = text.rfind(kRound, 0) == 0;
  std::vector<double> numbers;
  if (!readNumbers(round ? text.substr(sizeof(kRound) - 1) : text, numbers)) return false;
  const std::size_t flat = round ? 1 : 2;
  if (numbers.size() < flat || numbers.size() > flat + 1) return false;
  if (round) {
    pan.set_diameter_mm(numbers[0]);
  } else {
    pan.set_length_mm(numbers[0]);
    pan.set_width_mm(numbers[1]);
  }
  if (numbers.size() > flat) pan.set_height_mm(numbers[flat]);
  return true;
}

constexpr int kNameColumns = 28;
constexpr int kNumberColumns = 9;
constexpr int kPercentColumns = 10;

std::string percentText(double percent) {
  return absl::StrFormat("%.*f %%", percent < 10 ? 2 : 1, percent);
}

std::string gramsText(double grams) {
  return absl::StrFormat("%.*f g", grams < 10 ? 1 : 0, grams);
}

void printParts(const v1::WorkOutDoughResponse& told, Environment& environment) {
  const Style style(environment.colour);
  for (const v1::DoughPart& part : told.parts()) {
    const std::string heading =
        absl::StrCat(capitalised(plainLine(part.name())), ", ", gramsText(part.mass_g()),
                     part.id() == "levain" ? ", some sticks to the jar" : "");
    environment.out << style.strong(padRight(heading, kNameColumns + kNumberColumns + 2))
                    << padLeft("of flour", kPercentColumns) << "\n";
    for (const v1::DoughPartLine& line : part.lines()) {
      environment.out << "  " << padRight(shortened(plainLine(line.name()), kNameColumns), kNameColumns)
                      << padLeft(gramsText(line.mass_g()), kNumberColumns);
      if (line.percent() > 0) environment.out << padLeft(percentText(line.percent()), kPercentColumns);
      environment.out << "\n";
    }
    environment.out << "\n";
  }
}

std::string waterWords(const v1::WaterAdvice& water, bool hasWater, const Units& units) {
  std::string words = absl::StrCat(hasWater ? "Water at " : "Liquid at ",
                                   units.degrees(water.balance_celsius()), " by heat balance");
  if (water.ice_g() >= 1) absl::StrAppend(&words, ", ", gramsText(water.ice_g()), " of it as ice");
  absl::StrAppend(&words, " (the rule of ", water.rule_factors() == 4 ? "four" : "three", " factors says ",
                  units.degrees(water.rule_celsius()), ").");
  if (water.reading_count() > 0)
    absl::StrAppend(&words, " ", counted(water.reading_count(), "reading", "readings"),
                    " after mixing: doughs come out ",
                    absl::StrFormat("%.1f", std::abs(water.correction_k())), " K ",
                    water.correction_k() >= 0 ? "warmer" : "cooler", " than worked out, give or take ",
                    absl::StrFormat("%.1f", water.correction_spread_k()), "; that is counted in.");
  if (water.too_warm_even_with_ice())
    absl::StrAppend(&words, " Even all of it as ice leaves the dough too warm: cool the flour, too.");
  if (water.harms_yeast())
    absl::StrAppend(&words, " That is more than yeast stands: warm the flour or the room instead.");
  return words;
}

std::string rangeText(double least, double most, const char* unit) {
  return absl::StrCat(std::lround(least), "–", std::lround(most), " ", unit);
}

std::string bakeWords(const v1::BakeAdvice& bake, const Units& units) {
  return absl::StrCat(
      "Where a recipe says nothing else: bake ", rangeText(bake.least_minutes(), bake.most_minutes(), "min"),
      " at ", units.dial(static_cast<int>(std::lround(bake.setpoint_celsius()))), ", until ",
      units.degrees(bake.least_core_celsius()), " to ", units.degrees(bake.most_core_celsius()), " inside",
      bake.far_from_known() ? "; pieces of this mass are beyond what that was worked out from, so measure"
                            : "",
      ". Each weighs ", rangeText(bake.least_baked_g(), bake.most_baked_g(), "g"), " then. Cool ",
      rangeText(bake.least_cooling_minutes(), bake.most_cooling_minutes(), "min"),
      " before cutting. Fresh for ", rangeText(bake.least_fresh_hours(), bake.most_fresh_hours(), "h"),
      " at room temperature; warm it again for ",
      rangeText(bake.least_refresh_minutes(), bake.most_refresh_minutes(), "min"), " at ",
      units.dial(static_cast<int>(std::lround(bake.refresh_celsius()))), ".");
}

std::string sumsWords(const v1::WorkOutDoughResponse& told) {
  std::string words =
      absl::StrCat(gramsText(told.dough_mass_g()), " of dough with ", gramsText(told.flour_mass_g()),
                   " of flour; hydration ", percentText(told.hydration_percent()));
  if (told.free_hydration_percent() < told.hydration_percent() - 0.05)
    absl::StrAppend(&words, ", ", percentText(told.free_hydration_percent()), " without what soakers hold");
  if (told.prefermented_flour_percent() > 0)
    absl::StrAppend(&words, ", ", percentText(told.prefermented_flour_percent()),
                    " of the flour fermented ahead");
  if (told.whole_grain_percent() > 0)
    absl::StrAppend(&words, ", ", percentText(told.whole_grain_percent()), " whole grain");
  absl::StrAppend(&words, ", salt ", percentText(told.salt_percent()));
  if (told.fat_percent() > 0) absl::StrAppend(&words, ", fat ", percentText(told.fat_percent()));
  if (told.sugar_percent() > 0) absl::StrAppend(&words, ", sugar ", percentText(told.sugar_percent()));
  return words + ".";
}

void print(const AskedBread& asked, const v1::WorkOutDoughResponse& told, Environment& environment) {
  const Units units(asked.bundle.household());
  const auto paragraph = [&](const std::string& words) {
    for (const std::string& line : wrapWords(words, environment.width)) environment.out << line << "\n";
  };
  const v1::BreadFormula& formula = told.formula();
  paragraph(absl::StrCat(plainLine(asked.recipe.display_name()), ": ",
                         counted(formula.piece_count(), "piece", "pieces"), " of ",
                         gramsText(formula.piece_mass_g()), ". ", capitalised(sumsWords(told))));
  if (told.pan_ml() > 0)
    paragraph(absl::StrFormat("A pan of %.0f ml, filled by %.2g ml on a gram of dough.", told.pan_ml(),
                              told.ml_per_g()));
  environment.out << "\n";
  printParts(told, environment);
  paragraph(waterWords(told.water(), hasWater(formula), units));
  paragraph(bakeWords(told.bake(), units));
}

// Reports a mistake and returns false, or fills the request.
bool fill(const DoughScaleCommand& command, const AskedBread& asked, Environment& environment,
          v1::WorkOutDoughRequest& request) {
  const auto wrong = [&](const char* option, const std::string& value, const char* allowed) {
    wrongOption(environment, command.json, option, value, allowed);
    return false;
  };
  for (const std::string& set : command.sets)
    if (!readSet(set, *request.add_edits()))
      return wrong("--set", set, "must be a line and its percentage or grams, like water=75% or salt=20g");
  for (const std::string& line : command.removes) {
    v1::FormulaEdit& edit = *request.add_edits();
    edit.set_line_name(line);
    edit.set_remove(true);
  }
  v1::DoughAmount& amount = *request.mutable_amount();
  if (!command.pieces.empty() && !readPieces(command.pieces, *amount.mutable_pieces()))
    return wrong("--pieces", command.pieces, "must be a number, or number and grams like 12x60");
  if (command.flourGrams > 0) amount.set_flour_g(command.flourGrams);
  if (command.doughGrams > 0) amount.set_dough_g(command.doughGrams);
  if (!command.pan.empty()) {
    if (!readPan(command.pan, *amount.mutable_pans()))
      return wrong("--pan", command.pan,
                   "must be inner millimetres like 300x110x60, 400x300 or \"round 240x50\"");
    amount.mutable_pans()->set_count(command.pans);
  }
  if (command.guests > 0) {
    const int serves = command.serves > 0 ? command.serves : asked.recipe.serving_count();
    if (serves <= 0) return wrong("--serves", "", "say whom one making serves: the file does not");
    amount.mutable_guests()->set_count(command.guests);
    amount.mutable_guests()->set_serving_count(serves);
  }
  if (amount.wanted_case() == v1::DoughAmount::WANTED_NOT_SET) request.clear_amount();
  if (command.roomCelsius) request.set_room_celsius(*command.roomCelsius);
  if (command.flourCelsius) request.set_flour_celsius(*command.flourCelsius);
  request.set_flour_per_starter(command.flourPerStarter);
  return true;
}

}  // namespace

int runDoughScale(const DoughScaleCommand& command, Environment& environment) {
  AskedBread asked;
  if (const int code = askBread(command.bread, command.json, environment, asked); code != kOk) return code;
  v1::WorkOutDoughRequest request;
  *request.mutable_formula() = asked.recipe.formula();
  if (asked.recipe.formula().has_levain()) *request.mutable_starter() = asked.starter;
  if (!fill(command, asked, environment, request)) return kBadInput;
  const auto answer = asked.connection.session->workOutDough(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (!command.output.empty()) {
    asked.recipe.mutable_formula()->CopyFrom(answer->formula());
    if (const absl::Status written = writeFile(command.output, jsonOf(answer->formula())); !written.ok())
      return reportFailure(environment, written, command.json);
  }
  if (command.json)
    environment.out << jsonOf(*answer);
  else
    print(asked, *answer, environment);
  return kOk;
}

}  // namespace suppertide::terminal
