// A recipe in another size, and lines of a recipe as they were read.
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"
#include "client/terminal/units.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string number(double value) {
  return std::abs(value - std::round(value)) < 0.005 ? absl::StrFormat("%.0f", value)
                                                     : absl::StrFormat("%.2f", value);
}

// Portions and how many times: nobody lays a hundredth of a place.
std::string about(double value) {
  const double tenth = std::round(value * 10) / 10;
  return absl::StrCat(tenth == value ? "" : "about ", tenth);
}

std::string sizeText(const v1::Pan& pan) {
  return absl::StrCat(pan.width_mm(), " x ", pan.depth_mm(), " mm");
}

std::string loadsText(const v1::Oven& oven, const v1::OvenLoads& loads) {
  const std::string name = plainLine(oven.display_name().empty() ? oven.id() : oven.display_name());
  if (loads.load_count() == 1) return absl::StrCat(name, ": all at once");
  const std::string fewer = loads.fewer_may_do() ? absl::StrCat("; fewer ", mayFitWords()) : "";
  if (loads.load_count() > 1) return absl::StrCat(name, ": in ", loads.load_count(), " loads", fewer);
  if (!loads.has_pan_that_would()) return absl::StrCat(name, ": no such pan fits, nor a smaller one");
  return absl::StrCat(name, ": does not fit; one of ", sizeText(loads.pan_that_would()), " would");
}

std::string timeText(const v1::ScaledBake& bake) {
  const std::string least = durationText(bake.least_duration());
  const std::string most = durationText(bake.most_duration());
  const std::string own = durationText(bake.recipe_duration());
  if (least == most && most == own) return absl::StrCat(own, ", as in the recipe");
  return absl::StrCat(least == most ? most : absl::StrCat(least, " to ", most), " instead of ", own,
                      ": look from ", least, " on");
}

std::string bakeText(const v1::ScaledBake& bake, const v1::Kitchen& kitchen, const Units& units, int width) {
  std::string text =
      absl::StrCat(plainLine(bake.title()), ": ", units.dial(bake.setpoint_celsius()), ", ", timeText(bake));
  if (bake.has_pan()) {
    const std::string pan = bake.pan().name().empty() ? "pan" : plainLine(bake.pan().name());
    absl::StrAppend(&text, ". ", bake.pan().count(), " x ", pan, " of ", sizeText(bake.pan()));
  }
  std::string lines = hanging("  ", text + ".", width);
  for (const v1::OvenLoads& loads : bake.ovens())
    for (const v1::Oven& oven : kitchen.ovens())
      if (oven.id() == loads.oven_id()) lines += hanging("    ", loadsText(oven, loads), width);
  return lines;
}

// "1 pinch" is told as it was said.
std::string shownAmount(const v1::ParsedIngredient& line) {
  if (!line.shown().empty() || line.unit().empty()) return line.shown();
  return absl::StrCat(line.has_quantity() ? number(line.quantity()) + " " : "", plainLine(line.unit()));
}

std::string doubtWords(int doubt) {
  switch (doubt) {
    case v1::LINE_DOUBT_NO_QUANTITY:
      return "no amount is said";
    case v1::LINE_DOUBT_VAGUE_AMOUNT:
      return "not a measure, so it stays as it is";
    case v1::LINE_DOUBT_INGREDIENT_NOT_KNOWN:
      return "not in the table of ingredients";
    case v1::LINE_DOUBT_USUAL_KIND_TAKEN:
      return "several are called so; the usual one was taken";
    case v1::LINE_DOUBT_MASS_NOT_KNOWN:
      return "no mass is known for this measure and form";
    case v1::LINE_DOUBT_MASS_SCALED:
      return "the mass is scaled from another measure or form";
    case v1::LINE_DOUBT_MASS_FROM_MEMORY:
      return "the mass is from memory, not from a publication";
    case v1::LINE_DOUBT_COMMA:
      return "comma or point could mean thousands or decimals";
    case v1::LINE_DOUBT_RANGE:
      return "from one amount to another; the lower counts";
    case v1::LINE_DOUBT_MEASURES_DIFFER:
      return "this measure differs between kitchens; --measures says whose";
    case v1::LINE_DOUBT_SIZE_TAKEN:
      return "no size is said; the usual one was taken";
    case v1::LINE_DOUBT_ALTERNATIVE:
      return "only the first of the alternatives was read";
    case v1::LINE_DOUBT_EMPTY:
      return "there is nothing in the line";
    default:
      return "not sure";
  }
}

}  // namespace

std::string scaledText(const v1::Recipe& recipe, const v1::Kitchen& kitchen, const v1::ScaledRecipe& scaled,
                       const v1::Household& household, const Page& page) {
  const Style style(page.colour);
  const Units units(household);
  std::string text = absl::StrCat(style.heading(plainLine(recipe.display_name())), "  for ",
                                  about(scaled.serving_count()), " instead of ", recipe.serving_count(), ": ",
                                  number(scaled.factor()), " times the recipe");
  if (scaled.piece_count() > 0)
    absl::StrAppend(&text, ", ", counted(scaled.piece_count(), "piece", "pieces"), " of ",
                    units.mass(scaled.piece_mass_g()), " dough");
  text += "\n";
  Table table({{.title = "", .least = 12}, {.title = "", .fitted = false}});
  for (const v1::ScaledLine& line : scaled.lines()) {
    std::string name = plainLine(line.name());
    if (!line.note().empty()) absl::StrAppend(&name, ", ", plainLine(line.note()));
    if (line.exact().has_count() && std::abs(line.exact().count() - line.rounded().count()) > 0.005)
      absl::StrAppend(&name, "  (by the numbers ", number(line.exact().count()),
                      line.far_off() ? "; far off, so taste, or choose other numbers)" : ")");
    table.add({{absl::StrCat("  ", padLeft(line.shown(), 10))}, {name}});
  }
  text += table.text(page.width, style, false);
  for (const v1::ScaledBake& bake : scaled.bakes()) text += bakeText(bake, kitchen, units, page.width);
  return text;
}

std::string ingredientText(const v1::ParseIngredientsResponse& parsed, const Page& page) {
  const Style style(page.colour);
  std::string text;
  for (const v1::ParsedIngredient& one : parsed.ingredients()) {
    absl::StrAppend(&text, style.heading(plainLine(one.line())), "\n");
    const std::string amount = shownAmount(one);
    std::string line = absl::StrCat(amount, amount.empty() ? "" : " ",
                                    plainLine(one.ingredient().empty() ? one.name() : one.ingredient()));
    if (!one.form().empty()) absl::StrAppend(&line, ", ", plainLine(one.form()));
    if (!one.note().empty()) absl::StrAppend(&line, "; ", plainLine(one.note()));
    if (one.has_mass_g() && !one.mass_source().empty() && one.mass_source() != "scale")
      absl::StrAppend(&line, "  (mass by ", plainLine(one.mass_source()), ")");
    text += hanging("  ", line, page.width);
    for (const int doubt : one.doubts()) {
      const bool nameless = doubt == v1::LINE_DOUBT_INGREDIENT_NOT_KNOWN && one.name().empty();
      text += hanging("  ? ", nameless ? "no ingredient is named" : doubtWords(doubt), page.width);
    }
  }
  return text;
}

}  // namespace suppertide::terminal
