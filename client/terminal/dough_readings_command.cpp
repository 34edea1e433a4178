// What was seen of levains and doughs, and what it taught.
#include <cmath>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_split.h"
#include "absl/time/clock.h"
#include "client/link/request_id.h"
#include "client/terminal/connection.h"
#include "client/terminal/dough_source.h"
#include "client/terminal/dough_text.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

// The household's documents and a connection to it.
struct Asked {
  Connection connection;
  v1::Bundle bundle;
  std::string zone;
};

int ask(const std::string& server, bool json, Environment& environment, Asked& asked) {
  const auto known = knownServer(environment, server);
  if (!known.ok()) return reportFailure(environment, known.status(), json);
  asked.connection = openKnown(*known);
  v1::ExportBundleRequest request;
  request.set_household_id(asked.connection.householdId);
  auto bundle = asked.connection.session->exportBundle(request);
  if (!bundle.ok()) return reportFailure(environment, bundle.status(), json);
  asked.bundle = *std::move(bundle);
  asked.zone = asked.bundle.household().time_zone();
  return kOk;
}

template <typename List>
std::string nameIn(const List& all, const std::string& id) {
  for (const auto& one : all)
    if (one.id() == id && !one.display_name().empty()) return plainLine(one.display_name());
  return id;
}

std::string nameOf(const v1::Bundle& bundle, v1::EffectKind kind, const std::string& id) {
  if (kind == v1::EFFECT_KIND_PACE) return nameIn(bundle.recipes(), id);
  if (kind != v1::EFFECT_KIND_WARMTH) return nameIn(bundle.starters(), id);
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    if (const std::string name = nameIn(kitchen.places(), id); name != id) return name;
  return id;
}

// "how fast Crock is".
std::string effectWords(const v1::Bundle& bundle, v1::EffectKind kind, const std::string& id) {
  const std::string name = nameOf(bundle, kind, id);
  switch (kind) {
    case v1::EFFECT_KIND_VIGOUR:
      return absl::StrCat("how fast ", name, " is");
    case v1::EFFECT_KIND_WAKING:
      return absl::StrCat("how long ", name, " takes to wake");
    case v1::EFFECT_KIND_WARMTH:
      return absl::StrCat("how warm it is in ", name);
    default:
      return absl::StrCat("how much gas the dough of ", name, " gives");
  }
}

std::string valueWords(const v1::LearnedEffect& effect) {
  if (effect.kind() == v1::EFFECT_KIND_WARMTH && std::abs(effect.value()) < 0.05)
    return absl::StrFormat("as stated, give or take %.1f K", effect.spread());
  if (effect.kind() == v1::EFFECT_KIND_WARMTH)
    return absl::StrFormat("%.1f K %s than stated, give or take %.1f K", std::abs(effect.value()),
                           effect.value() >= 0 ? "warmer" : "cooler", effect.spread());
  const char* what = effect.kind() == v1::EFFECT_KIND_WAKING ? "as long as usual"
                     : effect.kind() == v1::EFFECT_KIND_PACE ? "what its composition should give"
                                                             : "as fast as stated";
  return absl::StrFormat("%.2f times %s, give or take %.0f %%", effect.value(), what, effect.spread() * 100);
}

std::string tellingWords(const v1::Bundle& bundle, const v1::LearnedEffect& effect) {
  switch (effect.telling()) {
    case v1::EFFECT_TELLING_TOLD:
      return "known better now";
    case v1::EFFECT_TELLING_TIED:
      return absl::StrCat("what was seen cannot tell it from ",
                          effectWords(bundle, effect.tied_kind(), effect.tied_subject_id()));
    default:
      return "what was seen says little of it";
  }
}

void print(const v1::Bundle& bundle, const v1::AddBreadReadingsResponse& told, Environment& environment) {
  const auto paragraph = [&](const std::string& words) {
    for (const std::string& line : wrapWords(words, environment.width)) environment.out << line << "\n";
  };
  if (told.effects().empty() && told.waters().empty())
    return paragraph("Nothing was seen yet: tell with suppertide dough seen or dough mixed.");
  if (told.used_count() + told.unused_count() > 0)
    paragraph(absl::StrCat(
        "Learned from ", counted(told.used_count(), "observation", "observations"),
        told.unused_count() > 0
            ? absl::StrCat("; ", told.unused_count(), " not used: too old, or what they name is gone")
            : "",
        "."));
  const auto point = [&](const std::string& words) {
    std::string start = "• ";
    for (const std::string& line : wrapWords(words, environment.width - 2)) {
      environment.out << start << line << "\n";
      start = "  ";
    }
  };
  for (const v1::LearnedEffect& effect : told.effects())
    point(absl::StrCat(capitalised(effectWords(bundle, effect.kind(), effect.subject_id())), ": ",
                       valueWords(effect), "; ", tellingWords(bundle, effect), "."));
  for (const v1::RecipeWater& water : told.waters())
    point(
        absl::StrFormat("Doughs of %s come out %.1f K %s than worked out, give or take %.1f K, by %s: the "
                        "next water is corrected by that.",
                        nameIn(bundle.recipes(), water.recipe_id()), std::abs(water.correction_k()),
                        water.correction_k() >= 0 ? "warmer" : "cooler", water.correction_spread_k(),
                        counted(water.reading_count(), "reading", "readings")));
}

int send(Asked& asked, v1::AddBreadReadingsRequest& request, bool tryOnly, bool json,
         Environment& environment) {
  request.set_household_id(asked.connection.householdId);
  request.set_request_id(link::newRequestId());
  request.set_validate_only(tryOnly);
  const auto answer = asked.connection.session->addBreadReadings(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), json);
  if (json)
    environment.out << jsonOf(*answer);
  else
    print(asked.bundle, *answer, environment);
  return kOk;
}

// The only one, or that of the id or name; empty when there is none or it is not clear.
template <typename List>
std::string chosen(const List& all, const std::string& wanted) {
  if (wanted.empty()) return all.size() == 1 ? all[0].id() : "";
  for (const auto& one : all)
    if (one.id() == wanted || one.display_name() == wanted) return one.id();
  return "";
}

template <typename List>
std::string choices(const List& all) {
  std::string known;
  for (const auto& one : all)
    absl::StrAppend(&known, known.empty() ? "" : ", ", one.id(), " (", plainLine(one.display_name()), ")");
  return known.empty() ? "there is none" : absl::StrCat("there are: ", known);
}

// "1:2:2" of any parts.
bool readRatio(const std::string& text, v1::StarterObservation& seen) {
  const std::vector<std::string> parts = absl::StrSplit(text, ':');
  double starter = 0, flour = 0, water = 0;
  if (parts.size() != 3 || !absl::SimpleAtod(parts[0], &starter) || !absl::SimpleAtod(parts[1], &flour) ||
      !absl::SimpleAtod(parts[2], &water) || !(starter > 0))
    return false;
  seen.set_flour_per_starter(flour / starter);
  seen.set_water_per_starter(water / starter);
  return true;
}

// False when nothing was said to be seen.
bool setSeen(const DoughSeenCommand& command, v1::StarterObservation& seen) {
  if (command.rise) {
    seen.set_rise(*command.rise);
    return true;
  }
  if (command.doughCelsius) {
    seen.set_seen(v1::SEEN_KIND_DOUGH_CELSIUS);
    seen.set_dough_celsius(*command.doughCelsius);
  }
  if (command.peak) seen.set_seen(v1::SEEN_KIND_PEAK);
  if (command.ready) seen.set_seen(v1::SEEN_KIND_READY);
  if (command.finger == "springs") seen.set_seen(v1::SEEN_KIND_SPRINGS_BACK);
  if (command.finger == "fills") seen.set_seen(v1::SEEN_KIND_RECEDES_SLOWLY);
  if (command.finger == "stays") seen.set_seen(v1::SEEN_KIND_COLLAPSES);
  return seen.seen() != v1::SEEN_KIND_UNSPECIFIED;
}

bool setPlace(const std::string& wanted, const v1::Bundle& bundle, v1::StarterObservation& seen) {
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Place& place : kitchen.places()) {
      if (place.id() != wanted && place.display_name() != wanted) continue;
      seen.set_kitchen_id(kitchen.id());
      seen.set_place_id(place.id());
      return true;
    }
  return false;
}

v1::Bundle onlyBreads(const v1::Bundle& bundle) {
  v1::Bundle breads;
  for (const v1::Recipe& recipe : bundle.recipes())
    if (recipe.has_formula()) *breads.add_recipes() = recipe;
  return breads;
}

// What the documents keep of earlier lessons.
void addKept(const v1::Bundle& bundle, v1::AddBreadReadingsResponse& kept) {
  for (const v1::Starter& starter : bundle.starters()) {
    if (starter.has_learned_vigour()) *kept.add_effects() = starter.learned_vigour();
    if (starter.has_learned_waking()) *kept.add_effects() = starter.learned_waking();
  }
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    for (const v1::Place& place : kitchen.places())
      if (place.has_learned_warmth()) *kept.add_effects() = place.learned_warmth();
  for (const v1::Recipe& recipe : bundle.recipes())
    if (recipe.formula().has_learned_pace()) *kept.add_effects() = recipe.formula().learned_pace();
}

// Reports a mistake and returns its exit code, or fills the reading.
int fill(const DoughSeenCommand& command, const Asked& asked, Environment& environment,
         v1::StarterReading& reading) {
  const auto wrong = [&](const char* option, const std::string& value, const std::string& allowed) {
    return wrongOption(environment, command.json, option, value, allowed);
  };
  v1::StarterObservation& seen = *reading.mutable_observation();
  reading.set_starter_id(chosen(asked.bundle.starters(), command.starter));
  if (reading.starter_id().empty())
    return wrong("--starter", command.starter, "say which starter; " + choices(asked.bundle.starters()));
  const auto fed = readTime(command.fed, asked.zone);
  if (!fed) return wrong("--fed", command.fed, "must be like \"2026-06-20 08:00\"");
  *seen.mutable_feed_time() = *fed;
  seen.mutable_observe_time()->set_seconds(absl::ToUnixSeconds(absl::Now()));
  if (!command.seen.empty()) {
    const auto looked = readTime(command.seen, asked.zone);
    if (!looked) return wrong("--seen", command.seen, "must be like \"2026-06-20 13:30\"");
    *seen.mutable_observe_time() = *looked;
  }
  if (!command.recipe.empty()) {
    const v1::Bundle breads = onlyBreads(asked.bundle);
    seen.set_recipe_id(chosen(breads.recipes(), command.recipe));
    if (seen.recipe_id().empty())
      return wrong("--recipe", command.recipe, "must be a bread; " + choices(breads.recipes()));
    seen.set_stage(command.stage == "proof" ? v1::FERMENT_STAGE_PROOF : v1::FERMENT_STAGE_BULK);
  } else if (!readRatio(command.ratio, seen)) {
    return wrong("--ratio", command.ratio, "must be starter : flour : water, like 1:2:2");
  }
  if (!setSeen(command, seen))
    return wrong("--rise", "", "say what was seen: --rise, --temperature, --finger, --peak or --ready");
  if (command.celsius) seen.set_celsius(*command.celsius);
  if (!command.place.empty() && !setPlace(command.place, asked.bundle, seen))
    return wrong("--place", command.place, "must be a place of a kitchen, by its id or name");
  if (!command.celsius && command.place.empty())
    return wrong("--celsius", "", "say how warm it stood, or with --place where");
  return kOk;
}

}  // namespace

int runDoughSeen(const DoughSeenCommand& command, Environment& environment) {
  Asked asked;
  if (const int code = ask(command.server, command.json, environment, asked); code != kOk) return code;
  v1::AddBreadReadingsRequest request;
  if (const int code = fill(command, asked, environment, *request.add_observations()); code != kOk)
    return code;
  return send(asked, request, command.tryOnly, command.json, environment);
}

int runDoughMixed(const DoughMixedCommand& command, Environment& environment) {
  Asked asked;
  if (const int code = ask(command.server, command.json, environment, asked); code != kOk) return code;
  v1::AddBreadReadingsRequest request;
  v1::RecipeReading& reading = *request.add_mixings();
  const v1::Bundle breads = onlyBreads(asked.bundle);
  reading.set_recipe_id(chosen(breads.recipes(), command.recipe));
  if (reading.recipe_id().empty())
    return wrongOption(environment, command.json, "--recipe", command.recipe,
                       "say which bread; " + choices(breads.recipes()));
  v1::MixReading& mixed = *reading.mutable_reading();
  mixed.set_room_celsius(command.room);
  mixed.set_flour_celsius(command.flour.value_or(command.room));
  mixed.set_water_celsius(command.water);
  if (command.preferment) mixed.set_preferment_celsius(*command.preferment);
  mixed.set_dough_celsius(command.dough);
  return send(asked, request, command.tryOnly, command.json, environment);
}

int runDoughLearned(const DoughLearnedCommand& command, Environment& environment) {
  Asked asked;
  if (const int code = ask(command.server, command.json, environment, asked); code != kOk) return code;
  v1::AddBreadReadingsResponse kept;
  addKept(asked.bundle, kept);
  for (const v1::Recipe& recipe : asked.bundle.recipes()) {
    if (recipe.formula().mix_readings().empty()) continue;
    v1::WorkOutDoughRequest request;
    *request.mutable_formula() = recipe.formula();
    const auto answer = asked.connection.session->workOutDough(request);
    if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
    v1::RecipeWater& water = *kept.add_waters();
    water.set_recipe_id(recipe.id());
    water.set_friction_k(answer->water().friction_k());
    water.set_correction_k(answer->water().correction_k());
    water.set_correction_spread_k(answer->water().correction_spread_k());
    water.set_reading_count(answer->water().reading_count());
  }
  if (command.json)
    environment.out << jsonOf(kept);
  else
    print(asked.bundle, kept, environment);
  return kOk;
}

}  // namespace suppertide::terminal
