#include "server/service/calendars.h"

#include <sodium.h>

#include <vector>

#include "absl/strings/escaping.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "server/compose/day/calendar.h"
#include "server/service/event_days.h"

namespace suppertide::service {
namespace {

constexpr char kFolder[] = "calendar";

std::map<std::string, std::string> dishNames(Backend& backend, const std::string& householdId,
                                             const v1::Event& event) {
  std::map<std::string, std::string> names;
  for (const v1::Dish& dish : event.dishes()) {
    names[dish.id()] = dish.display_name();
    if (!dish.display_name().empty()) continue;
    const auto recipe = backend.store().get(householdId, {"recipe", dish.recipe_id()});
    if (recipe.ok()) names[dish.id()] = read<v1::Recipe>(*recipe).display_name();
  }
  return names;
}

Failure noSuchCalendar() {
  return failure(absl::NotFoundError("there is no such calendar"), "NO_SUCH_CALENDAR");
}

bool isSame(const std::string& a, const std::string& b) {
  return a.size() == b.size() && !a.empty() && sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

}  // namespace

Failure calendarText(Backend& backend, const std::string& householdId, const std::string& eventId,
                     const std::string& memberId, std::string& text) {
  HouseholdDays days;
  if (const Failure wrong = readDays(backend, householdId, eventId, true, days); wrong.failed()) return wrong;
  if (!eventId.empty() && days.events.empty())
    return failure(absl::NotFoundError(absl::StrCat("the event '", eventId, "' is not there or has no plan")),
                   "NO_SUCH_DOCUMENT");
  if (!memberId.empty() && memberOf(days.household, memberId) == nullptr)
    return invalidField("memberId", memberId, "must be a member of the household");
  std::vector<v1::Kitchen> kitchens(days.events.size());
  std::vector<compose::CalendarEvent> events;
  for (std::size_t e = 0; e < days.events.size(); ++e) {
    const EventDay& day = days.events[e];
    const auto kitchen = backend.store().get(householdId, {"kitchen", day.event.kitchen_id()});
    if (kitchen.ok()) kitchens[e] = read<v1::Kitchen>(*kitchen);
    events.push_back({{days.household, day.event, day.plan, day.progress},
                      kitchens[e],
                      dishNames(backend, householdId, day.event)});
  }
  text = compose::calendarOf(events, memberId);
  return {};
}

std::string hexHashOf(const std::string& secret) {
  return absl::BytesToHexString(hashOfToken(secret));
}

std::string calendarPath(const std::string& householdId, const std::string& addressId,
                         const std::string& secret) {
  return absl::StrCat("/", kFolder, "/", householdId, "/", addressId, "/", secret, ".ics");
}

Failure calendarAt(Backend& backend, const std::string& path, std::string& text) {
  const std::vector<std::string> parts = absl::StrSplit(path, '/');
  if (parts.size() != 5 || !parts[0].empty() || parts[1] != kFolder) return noSuchCalendar();
  std::string secret = parts[4];
  if (secret.size() < 4 || secret.substr(secret.size() - 4) != ".ics") return noSuchCalendar();
  secret.resize(secret.size() - 4);
  const auto stored = backend.store().get(parts[2], {kindOf(v1::CalendarAddress()), parts[3]});
  // Hashed all the same, so that the time taken tells nothing of which addresses there are.
  const std::string hash = hexHashOf(secret);
  if (!stored.ok()) return noSuchCalendar();
  const auto address = read<v1::CalendarAddress>(*stored);
  if (!isSame(hash, address.secret_hash())) return noSuchCalendar();
  return calendarText(backend, parts[2], address.event_id(), address.member_id(), text);
}

}  // namespace suppertide::service
