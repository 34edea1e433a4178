#include "server/service/bundle_import.h"

#include <algorithm>
#include <set>

#include "absl/strings/str_cat.h"
#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

template <typename List>
auto* byId(const List& list, const std::string& id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.id() == id; });
  return found == list.end() ? nullptr : &*found;
}

Failure noSuch(const std::string& kind, const std::string& id) {
  return failure(absl::NotFoundError(absl::StrCat("there is no ", kind, " '", id, "' in this household")),
                 "NO_SUCH_DOCUMENT");
}

// The household under its own id. Nobody is taken off: other events may name them,
// and the importing device would lock itself out.
v1::Household takenOver(const v1::Household& given, const Caller& caller, const v1::Household& stored,
                        std::vector<std::string>& kept) {
  v1::Household household = given;
  household.set_id(caller.householdId);
  household.clear_meta();
  for (const v1::Member& member : stored.members()) {
    if (byId(given.members(), member.id()) != nullptr) continue;
    *household.add_members() = member;
    kept.push_back(member.id());
  }
  for (v1::Member& member : *household.mutable_members())
    if (member.id() == caller.memberId) member.set_role(v1::ROLE_HOST);
  return household;
}

compose::Documents documentsIn(const v1::Bundle& bundle, const v1::Event& event) {
  compose::Documents documents;
  documents.household = bundle.household();
  if (const v1::Kitchen* kitchen = byId(bundle.kitchens(), event.kitchen_id())) documents.kitchen = *kitchen;
  documents.starters.assign(bundle.starters().begin(), bundle.starters().end());
  documents.recipes.assign(bundle.recipes().begin(), bundle.recipes().end());
  documents.event = event;
  return documents;
}

// A plan under way is judged with what was reported of it: in the bundle, else in the household.
compose::RunningPlan runningIn(Backend& backend, const Caller& caller, const v1::Bundle& bundle,
                               const v1::Plan& plan) {
  compose::RunningPlan running{plan, {}, {}};
  running.now.set_seconds(backend.clock().now().time_since_epoch().count());
  if (const v1::Progress* given = byId(bundle.progresses(), plan.id())) {
    running.progress = *given;
  } else if (readProgress(backend, caller.householdId, plan.id(), running.progress).failed()) {
    running.progress.Clear();
  }
  return running;
}

// Plans may be stored only when the auditor finds nothing in them.
compose::Violations auditPlans(Backend& backend, const Caller& caller, const v1::Bundle& bundle) {
  compose::Violations wrong;
  for (int i = 0; i < bundle.plans_size(); ++i) {
    v1::FieldViolation violation;
    violation.set_field_path(absl::StrCat("plans[", i, "]"));
    violation.set_value(bundle.plans(i).id());
    const v1::Event* event = byId(bundle.events(), bundle.plans(i).id());
    if (event == nullptr) {
      violation.set_description("is a plan of an event that is not in the bundle");
      wrong.push_back(violation);
      continue;
    }
    const auto audit = compose::auditRunning(documentsIn(bundle, *event),
                                             runningIn(backend, caller, bundle, bundle.plans(i)));
    if (audit.ok() && audit->breaches.empty()) continue;
    violation.set_description(audit.ok() ? absl::StrCat("breaks ", audit->breaches.size(), " hard rules")
                                         : std::string(audit.status().message()));
    wrong.push_back(violation);
  }
  return wrong;
}

template <typename List>
void addPuts(const List& list, std::vector<storage::Put>& puts) {
  for (const auto& document : list) {
    puts.push_back(putOf(document));
    puts.back().etag.clear();
  }
}

// Keeps of the bundle only what `event` refers to.
void keepReferred(const v1::Event& event, v1::Bundle& bundle) {
  std::set<std::string> recipes;
  for (const v1::Dish& dish : event.dishes()) recipes.insert(dish.recipe_id());
  std::set<std::string> starters;
  const auto drop = [](auto* list, auto unwanted) {
    list->erase(std::remove_if(list->begin(), list->end(), unwanted), list->end());
  };
  drop(bundle.mutable_recipes(), [&](const v1::Recipe& recipe) { return recipes.count(recipe.id()) == 0; });
  for (const v1::Recipe& recipe : bundle.recipes()) starters.insert(recipe.formula().levain().starter_id());
  drop(bundle.mutable_starters(),
       [&](const v1::Starter& starter) { return starters.count(starter.id()) == 0; });
  drop(bundle.mutable_kitchens(),
       [&](const v1::Kitchen& kitchen) { return kitchen.id() != event.kitchen_id(); });
  drop(bundle.mutable_plans(), [&](const v1::Plan& plan) { return plan.id() != event.id(); });
  drop(bundle.mutable_progresses(),
       [&](const v1::Progress& progress) { return progress.id() != event.id(); });
  drop(bundle.mutable_reviews(), [&](const v1::Review& review) { return review.id() != event.id(); });
  drop(bundle.mutable_shoppings(), [&](const v1::Shopping& shopping) { return shopping.id() != event.id(); });
  const v1::Event kept = event;
  bundle.clear_events();
  *bundle.add_events() = kept;
}

// Puts a document where it belongs in a bundle.
void add(const storage::Document& document, v1::Bundle& bundle) {
  const std::string& kind = document.key.kind;
  if (kind == "household") *bundle.mutable_household() = read<v1::Household>(document);
  if (kind == "kitchen") *bundle.add_kitchens() = read<v1::Kitchen>(document);
  if (kind == "starter") *bundle.add_starters() = read<v1::Starter>(document);
  if (kind == "recipe") *bundle.add_recipes() = read<v1::Recipe>(document);
  if (kind == "event") *bundle.add_events() = read<v1::Event>(document);
  if (kind == "plan") *bundle.add_plans() = read<v1::Plan>(document);
  if (kind == "progress") *bundle.add_progresses() = read<v1::Progress>(document);
  if (kind == "review") *bundle.add_reviews() = read<v1::Review>(document);
  if (kind == "shopping") *bundle.add_shoppings() = read<v1::Shopping>(document);
}

// What an event may refer to, at one revision, and the event itself if there is one.
Failure readDocuments(Backend& backend, const std::string& householdId, const std::string& eventId,
                      v1::Bundle& bundle, std::int64_t& revision) {
  const auto snapshot = backend.store().snapshot(householdId);
  if (!snapshot.ok()) return fromStorage(snapshot.status());
  revision = snapshot->revision;
  for (const storage::Document& document : snapshot->documents) {
    const std::string& kind = document.key.kind;
    const bool happens =
        kind == "event" || kind == "plan" || kind == "progress" || kind == "review" || kind == "shopping";
    if (!happens || (kind == "event" && document.key.id == eventId)) add(document, bundle);
  }
  return {};
}

// Whether the household has room for those of `given` that it does not have yet.
template <typename Document, typename List>
Failure checkRoom(Backend& backend, const Caller& caller, const List& given, int most) {
  const auto present = backend.store().list(caller.householdId, kindOf(Document()), "", most);
  if (!present.ok()) return fromStorage(present.status());
  std::set<std::string> ids;
  for (const storage::Document& document : *present) ids.insert(document.key.id);
  for (const Document& document : given) ids.insert(document.id());
  return static_cast<int>(ids.size()) <= most ? Failure() : tooMany(kindOf(Document()), most);
}

}  // namespace

Failure importOf(Backend& backend, const v1::Bundle& bundle, const Caller& caller, Import& import) {
  if (const auto wrong = compose::validate(bundle, false); !wrong.empty()) return invalid(wrong);
  if (const auto wrong = auditPlans(backend, caller, bundle); !wrong.empty()) return invalid(wrong);
  const auto stored = backend.store().get(caller.householdId, {"household", caller.householdId});
  if (!stored.ok()) return fromStorage(stored.status());
  for (const Failure& wrong : {checkRoom<v1::Kitchen>(backend, caller, bundle.kitchens(), kMostKitchens),
                               checkRoom<v1::Starter>(backend, caller, bundle.starters(), kMostStarters),
                               checkRoom<v1::Recipe>(backend, caller, bundle.recipes(), kMostRecipes),
                               checkRoom<v1::Event>(backend, caller, bundle.events(), kMostEvents)})
    if (wrong.failed()) return wrong;
  const v1::Household household =
      takenOver(bundle.household(), caller, read<v1::Household>(*stored), import.keptMemberIds);
  if (const auto wrong = compose::validate(household); !wrong.empty())
    return invalidField(
        "household.members", absl::StrCat(household.members_size()),
        "must have room for those of the household who are not among them: at most 50 together");
  std::vector<storage::Put>& puts = import.puts;
  puts.push_back(putOf(household));
  addPuts(bundle.kitchens(), puts);
  addPuts(bundle.starters(), puts);
  addPuts(bundle.recipes(), puts);
  addPuts(bundle.events(), puts);
  addPuts(bundle.plans(), puts);
  addPuts(bundle.progresses(), puts);
  addPuts(bundle.reviews(), puts);
  addPuts(bundle.shoppings(), puts);
  return {};
}

Failure checkReferences(Backend& backend, const std::string& householdId, const v1::Event& event) {
  v1::Bundle bundle;
  std::int64_t revision = 0;
  if (const Failure wrong = readDocuments(backend, householdId, "", bundle, revision); wrong.failed())
    return wrong;
  *bundle.add_events() = event;
  keepReferred(event, bundle);
  constexpr std::string_view kTop = "events[0].";
  compose::Violations ofEvent;
  for (v1::FieldViolation& violation : compose::validate(bundle, false)) {
    if (violation.field_path().rfind(kTop, 0) != 0) continue;
    violation.set_field_path(violation.field_path().substr(kTop.size()));
    ofEvent.push_back(std::move(violation));
  }
  return ofEvent.empty() ? Failure() : invalid(ofEvent);
}

Failure exportOf(Backend& backend, const std::string& householdId, const std::string& eventId,
                 v1::Bundle& bundle) {
  const auto snapshot = backend.store().snapshot(householdId);
  if (!snapshot.ok()) return fromStorage(snapshot.status());
  for (const storage::Document& document : snapshot->documents) add(document, bundle);
  if (eventId.empty()) return {};
  const v1::Event* event = byId(bundle.events(), eventId);
  if (event == nullptr) return noSuch("event", eventId);
  keepReferred(*event, bundle);
  return {};
}

Failure documentsOf(Backend& backend, const std::string& householdId, const std::string& eventId,
                    compose::Documents& documents, std::int64_t& revision,
                    google::protobuf::Map<std::string, std::string>* etags, const v1::Event* asIf) {
  v1::Bundle bundle;
  if (const Failure wrong = readDocuments(backend, householdId, eventId, bundle, revision); wrong.failed())
    return wrong;
  if (bundle.events().empty()) return noSuch("event", eventId);
  if (asIf != nullptr) *bundle.mutable_events(0) = *asIf;
  keepReferred(v1::Event(bundle.events(0)), bundle);
  if (const auto wrong = compose::validate(bundle, true); !wrong.empty()) return invalid(wrong);
  documents = documentsIn(bundle, bundle.events(0));
  if (etags == nullptr) return {};
  const auto note = [&](const auto& document) {
    (*etags)[absl::StrCat(kindOf(document), "/", document.id())] = document.meta().etag();
  };
  note(documents.household);
  note(documents.kitchen);
  note(documents.event);
  for (const v1::Starter& starter : documents.starters) note(starter);
  for (const v1::Recipe& recipe : documents.recipes) note(recipe);
  return {};
}

}  // namespace suppertide::service
