#include "server/service/bread_readings.h"

#include <algorithm>

#include "absl/time/time.h"
#include "server/compose/bread_learning.h"
#include "server/service/document_calls.h"
#include "server/service/validate_doughs.h"

namespace suppertide::service {
namespace {

constexpr char kAddBreadReadings[] = "BreadService/AddBreadReadings";
constexpr int kMostObservations = 500;
constexpr int kMostReadings = 50;

// One call under way.
struct Adding {
  Backend& backend;
  Caller caller;
  v1::AddBreadReadingsRequest asked;
  v1::AddBreadReadingsResponse* answer;
  Finish finish;
  int triesLeft = kMostTries;
};

template <typename Message>
Failure readAll(Backend& backend, const std::string& household, int most, std::vector<Message>& all) {
  const auto found = backend.store().list(household, kindOf(Message()), "", most);
  if (!found.ok()) return fromStorage(found.status());
  for (const storage::Document& document : *found) all.push_back(read<Message>(document));
  return {};
}

template <typename Message>
Message* find(std::vector<Message>& all, const std::string& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Message& one) { return one.id() == id; });
  return found == all.end() ? nullptr : &*found;
}

Failure missing(const char* kind, const std::string& id) {
  Failure out =
      failure(absl::NotFoundError(absl::StrCat("there is no ", kind, " '", id, "' in this household")),
              "NO_SUCH_DOCUMENT");
  (*out.detail.mutable_metadata())["id"] = id;
  return out;
}

Failure checkNames(const v1::StarterObservation& seen, compose::BreadDocuments& documents) {
  if (!seen.recipe_id().empty()) {
    const v1::Recipe* recipe = find(documents.recipes, seen.recipe_id());
    if (recipe == nullptr || !recipe->has_formula()) return missing("bread", seen.recipe_id());
  }
  if (seen.place_id().empty()) return {};
  const v1::Kitchen* kitchen = find(documents.kitchens, seen.kitchen_id());
  if (kitchen == nullptr) return missing("kitchen", seen.kitchen_id());
  const bool known = std::any_of(kitchen->places().begin(), kitchen->places().end(),
                                 [&](const v1::Place& place) { return place.id() == seen.place_id(); });
  return known ? Failure() : missing("place", seen.place_id());
}

// Drops the oldest beyond `most`; they stay in order of their times.
template <typename List, typename SecondsOf>
void keepNewest(List& list, int most, SecondsOf secondsOf) {
  std::stable_sort(list.begin(), list.end(),
                   [&](const auto& a, const auto& b) { return secondsOf(a) < secondsOf(b); });
  if (list.size() > most) list.DeleteSubrange(0, list.size() - most);
}

// Whether it was added before: a repeated request teaches nothing new.
template <typename List, typename Message>
bool holds(const List& list, const Message& one) {
  const std::string bytes = one.SerializeAsString();
  return std::any_of(list.begin(), list.end(),
                     [&](const Message& other) { return other.SerializeAsString() == bytes; });
}

Failure append(const Adding& adding, compose::BreadDocuments& documents) {
  for (const v1::StarterReading& reading : adding.asked.observations()) {
    v1::Starter* starter = find(documents.starters, reading.starter_id());
    if (starter == nullptr) return missing("starter", reading.starter_id());
    if (const Failure wrong = checkNames(reading.observation(), documents); wrong.failed()) return wrong;
    if (holds(starter->observations(), reading.observation())) continue;
    *starter->add_observations() = reading.observation();
    keepNewest(*starter->mutable_observations(), kMostObservations,
               [](const v1::StarterObservation& seen) { return seen.observe_time().seconds(); });
  }
  const std::int64_t now = adding.backend.clock().now().time_since_epoch().count();
  for (const v1::RecipeReading& reading : adding.asked.mixings()) {
    v1::Recipe* recipe = find(documents.recipes, reading.recipe_id());
    if (recipe == nullptr || !recipe->has_formula()) return missing("bread", reading.recipe_id());
    v1::MixReading added = reading.reading();
    if (!added.has_time()) added.mutable_time()->set_seconds(now);
    if (holds(recipe->formula().mix_readings(), added)) continue;
    *recipe->mutable_formula()->add_mix_readings() = added;
    keepNewest(*recipe->mutable_formula()->mutable_mix_readings(), kMostReadings,
               [](const v1::MixReading& mixed) { return mixed.time().seconds(); });
  }
  return {};
}

Failure readDocuments(const Adding& adding, compose::BreadDocuments& documents, absl::TimeZone& zone) {
  Backend& backend = adding.backend;
  const std::string& id = adding.caller.householdId;
  const auto household = backend.store().get(id, {"household", id});
  if (!household.ok()) return fromStorage(household.status());
  if (!absl::LoadTimeZone(read<v1::Household>(*household).time_zone(), &zone)) zone = absl::UTCTimeZone();
  if (const Failure wrong = readAll(backend, id, kMostStarters, documents.starters); wrong.failed())
    return wrong;
  if (const Failure wrong = readAll(backend, id, kMostKitchens, documents.kitchens); wrong.failed())
    return wrong;
  return readAll(backend, id, kMostRecipes, documents.recipes);
}

// The documents that differ from how they were read.
template <typename Message>
void addChanged(const std::vector<Message>& before, const std::vector<Message>& after,
                storage::WriteRequest& write) {
  for (std::size_t i = 0; i < after.size(); ++i)
    if (after[i].SerializeAsString() != before[i].SerializeAsString())
      write.puts.push_back(putOf(after[i], storage::Expect::kPresent));
}

void tell(const compose::BreadLessons& lessons, v1::AddBreadReadingsResponse& answer) {
  answer.Clear();
  for (const v1::LearnedEffect& effect : lessons.effects) *answer.add_effects() = effect;
  for (const compose::WaterLesson& lesson : lessons.waters) {
    v1::RecipeWater& water = *answer.add_waters();
    water.set_recipe_id(lesson.recipeId);
    water.set_friction_k(lesson.friction);
    water.set_correction_k(lesson.correction.kelvin);
    water.set_correction_spread_k(lesson.correction.spread);
    water.set_reading_count(lesson.correction.readings);
  }
  answer.set_used_count(lessons.used);
  answer.set_unused_count(lessons.unused);
}

void tryOnce(const std::shared_ptr<Adding>& adding) {
  compose::BreadDocuments documents;
  absl::TimeZone zone;
  if (const Failure wrong = readDocuments(*adding, documents, zone); wrong.failed())
    return adding->finish(wrong);
  const compose::BreadDocuments before = documents;
  if (const Failure wrong = append(*adding, documents); wrong.failed()) return adding->finish(wrong);
  const auto lessons = compose::learnFromDoughs(documents, zone);
  if (!lessons.ok()) return adding->finish(failure(lessons.status(), "CANNOT_LEARN"));
  tell(*lessons, *adding->answer);
  if (adding->asked.validate_only()) return adding->finish({});
  auto write = writeRequest(adding->caller, kAddBreadReadings, adding->asked.request_id(), adding->asked,
                            /*validateOnly=*/false);
  addChanged(before.starters, documents.starters, write);
  addChanged(before.kitchens, documents.kitchens, write);
  addChanged(before.recipes, documents.recipes, write);
  if (write.puts.empty()) {
    adding->answer->set_revision(adding->backend.store().revision(adding->caller.householdId).value_or(0));
    return adding->finish({});
  }
  adding->backend.queue().writeNow(std::move(write), [adding](absl::StatusOr<storage::WriteResult> result) {
    const auto code = result.status().code();
    const bool raced = code == absl::StatusCode::kAborted || code == absl::StatusCode::kNotFound;
    if (raced && --adding->triesLeft > 0)
      return adding->backend.calculators().post([adding] { tryOnce(adding); }, adding->caller.householdId);
    if (!result.ok()) return adding->finish(fromStorage(result.status()));
    adding->answer->set_revision(result->revision);
    adding->finish({});
  });
}

}  // namespace

void addBreadReadings(Backend& backend, const Caller& caller, const v1::AddBreadReadingsRequest& asked,
                      v1::AddBreadReadingsResponse* answer, const Finish& finish) {
  if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
  if (const auto wrong = compose::validate(asked); !wrong.empty()) return finish(invalid(wrong));
  const auto adding = std::make_shared<Adding>(Adding{backend, caller, asked, answer, finish});
  backend.calculators().post([adding] { tryOnce(adding); }, caller.householdId);
}

}  // namespace suppertide::service
