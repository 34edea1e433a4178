#include "client/shell/local_household.h"

#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "client/link/joining.h"
#include "client/link/private_file.h"
#include "client/link/request_id.h"
#include "client/link/session.h"
#include "client/shell/sample_event.h"

namespace suppertide {
namespace {

constexpr char kSocket[] = "unix:";

// A household that could not be finished is begun anew in a file of its own.
std::filesystem::path freeFile(const std::filesystem::path& folder) {
  for (int n = 1;; ++n) {
    const auto file = folder / (n == 1 ? "household.sqlite" : absl::StrCat("household-", n, ".sqlite"));
    std::error_code error;
    if (!std::filesystem::exists(file, error)) return file;
  }
}

absl::Status import(const link::KnownServer& known, const v1::Bundle& bundle) {
  link::Session session(
      {.target = known.target, .deviceToken = known.deviceToken, .certificatePem = "", .fingerprint = ""});
  v1::ImportBundleRequest request;
  request.set_household_id(known.householdId);
  *request.mutable_bundle() = bundle;
  request.set_request_id(link::newRequestId());
  return session.importBundle(request).status();
}

}  // namespace

absl::StatusOr<std::unique_ptr<EmbeddedServer>> serve(const link::KnownServer& known) {
  auto server =
      EmbeddedServer::start({.dataFile = known.dataFile, .listen = known.target, .network = known.network});
  if (server.status().code() == absl::StatusCode::kFailedPrecondition &&
      absl::StrContains(server.status().message(), "another server"))
    return std::unique_ptr<EmbeddedServer>();
  return server;
}

absl::StatusOr<LocalHousehold> foundLocally(const v1::Bundle& bundle, const std::filesystem::path& folder,
                                            const std::filesystem::path& credentialsFile) {
  if (absl::Status status = link::makePrivateFolder(folder); !status.ok()) return status;
  const std::filesystem::path file = freeFile(folder);
  LocalHousehold made;
  const std::string target = absl::StrCat(kSocket, file.string(), ".socket");
  auto server = EmbeddedServer::start({.dataFile = file.string(), .listen = target});
  if (!server.ok()) return server.status();
  made.server = *std::move(server);
  link::Joining joining;
  joining.target = target;
  joining.code = made.server->hostCode();
  joining.founds = true;
  joining.memberId = hostOf(bundle);
  for (const v1::Member& member : bundle.household().members())
    if (member.id() == joining.memberId) joining.memberName = member.display_name();
  joining.householdName = bundle.household().display_name();
  joining.timeZone = bundle.household().time_zone();
  joining.dataFile = file.string();
  auto known = link::join(joining, credentialsFile);
  if (!known.ok()) return known.status();
  made.known = *std::move(known);
  if (absl::Status status = import(made.known, bundle); !status.ok()) return status;
  return made;
}

}  // namespace suppertide
