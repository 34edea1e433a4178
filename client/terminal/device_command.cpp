#include "client/terminal/device_command.h"

#include <algorithm>
#include <vector>

#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"
#include "client/terminal/connection.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"
#include "client/terminal/time_text.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

// What a household's devices are told with.
struct People {
  Connection connection;
  v1::Household household;
  std::string ownDeviceId;
  v1::ListDevicesResponse devices;
};

absl::StatusOr<People> askPeople(const Environment& environment, const std::string& server) {
  const auto known = knownServer(environment, server);
  if (!known.ok()) return known.status();
  People people{openKnown(*known), {}, "", {}};
  v1::GetHouseholdRequest householdRequest;
  householdRequest.set_household_id(people.connection.householdId);
  auto household = people.connection.session->household(householdRequest);
  if (!household.ok()) return household.status();
  v1::ListDevicesRequest request;
  request.set_household_id(people.connection.householdId);
  auto devices = people.connection.session->listDevices(request);
  if (!devices.ok()) return devices.status();
  const auto self = people.connection.session->whoAmI();
  if (!self.ok()) return self.status();
  people.household = *std::move(household);
  people.devices = *std::move(devices);
  people.ownDeviceId = self->device_id();
  return people;
}

std::string memberName(const People& people, const std::string& id) {
  for (const v1::Member& member : people.household.members())
    if (member.id() == id) return plainLine(member.display_name());
  return "nobody any more";
}

std::string stateOf(const People& people, const v1::Device& device) {
  if (device.revoked()) return "taken off";
  return device.id() == people.ownDeviceId ? "this one" : "";
}

// The number is its place in the list, which never changes: devices are listed as they joined.
int runDevices(const DeviceOptions& options, Environment& environment) {
  const auto people = askPeople(environment, options.server);
  if (!people.ok()) return reportFailure(environment, people.status(), options.json);
  if (options.json) {
    environment.out << jsonOf(people->devices);
    return kOk;
  }
  Table table({{.title = "No."},
               {.title = "Device", .fitted = false},
               {.title = "Whose"},
               {.title = "Joined"},
               {.title = "Last seen"},
               {.title = ""}});
  const Clock clock(people->household.time_zone());
  int number = 0;
  for (const v1::Device& device : people->devices.devices()) {
    const absl::Time joined = toTime(device.create_time());
    const absl::Time seen = toTime(device.last_seen_time());
    table.add({{absl::StrCat(++number)},
               {plainLine(device.display_name())},
               {memberName(*people, device.member_id())},
               {clock.day(joined)},
               {absl::StrCat(clock.day(seen), " ", clock.hour(seen))},
               {stateOf(*people, device)}});
  }
  environment.out << table.text(environment.width, Style(environment.colour), true);
  return kOk;
}

// By its number in the list, its id, or a name that only one device in use has.
absl::StatusOr<const v1::Device*> deviceCalled(const People& people, const std::string& word) {
  std::vector<const v1::Device*> named;
  int number = 0;
  for (const v1::Device& device : people.devices.devices()) {
    if (absl::StrCat(++number) == word || device.id() == word) return &device;
    if (!device.revoked() && device.display_name() == word) named.push_back(&device);
  }
  if (named.size() == 1) return named.front();
  if (named.size() > 1)
    return absl::InvalidArgumentError(absl::StrCat(named.size(), " devices are called ", word,
                                                   ": give the number that suppertide devices shows"));
  return absl::InvalidArgumentError(absl::StrCat("no device is called ", word, ": see suppertide devices"));
}

int runRemove(const DeviceOptions& options, Environment& environment) {
  const auto people = askPeople(environment, options.server);
  if (!people.ok()) return reportFailure(environment, people.status(), options.json);
  const auto device = deviceCalled(*people, options.device);
  if (!device.ok()) return reportFailure(environment, device.status(), options.json);
  v1::RevokeDeviceRequest request;
  request.set_household_id(people->connection.householdId);
  request.set_device_id((*device)->id());
  request.set_request_id(link::newRequestId());
  const auto answer = people->connection.session->revokeDevice(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), options.json);
  if (options.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  environment.out << plainLine((*device)->display_name()) << " of "
                  << memberName(*people, (*device)->member_id())
                  << " is taken off the household; what it showed has stopped.\n";
  return kOk;
}

void addCommon(CLI::App* sub, DeviceOptions& options) {
  sub->add_option("--server", options.server, "Which saved household to ask; without it the one joined last")
      ->type_name("NAME");
  sub->add_flag("--json", options.json, "Answer as JSON");
}

}  // namespace

void addDevices(CLI::App& app, DeviceOptions& options, std::function<int(Environment&)>& chosen) {
  CLI::App* devices =
      app.add_subcommand("devices", "The household's devices, and taking one off (hosts only)");
  devices->footer(
      "Examples:\n  suppertide devices\n  suppertide devices remove 3\n  suppertide devices remove \"Ben's "
      "phone\"");
  addCommon(devices, options);
  CLI::App* remove = devices->add_subcommand("remove", "Take a device off: it is known no more, at once");
  remove->add_option("device", options.device, "Its number in the list, or its name")
      ->type_name("DEVICE")
      ->required();
  addCommon(remove, options);
  remove->callback([&] { chosen = [&options](Environment& e) { return runRemove(options, e); }; });
  devices->callback([&, devices] {
    if (devices->get_subcommands().empty())
      chosen = [&options](Environment& e) { return runDevices(options, e); };
  });
}

}  // namespace suppertide::terminal
