#include "server/service/server.h"

#include <grpc/grpc.h>
#include <grpcpp/ext/proto_server_reflection_plugin.h>
#include <grpcpp/grpcpp.h>
#include <grpcpp/health_check_service_interface.h>

#include "absl/strings/str_cat.h"
#include "absl/strings/strip.h"
#include "server/service/listen_address.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

constexpr int kMostMessageBytes = 8 * 1024 * 1024;
constexpr std::chrono::seconds kDrainTime{5};
constexpr const char* kServices[] = {
    "HouseholdService", "KitchenService",  "StarterService",  "RecipeService", "EventService",
    "PlanService",      "ProgressService", "SyncService",     "BreadService",  "MenuService",
    "ShoppingService",  "ReminderService", "CalendarService", "ReviewService"};

// Storage tells what is wrong; a person must also know where.
absl::Status naming(const std::string& file, const absl::Status& status) {
  const std::string message(absl::StripPrefix(status.message(), "storage: "));
  if (message.find(file) != std::string::npos) return status;
  return absl::Status(status.code(), absl::StrCat("data file ", file, ": ", message));
}

bool listensPlainly(const Server::Options& options) {
  return isUnixAddress(options.listen) || options.plain;
}

// What to show over TLS; none where the server listens without.
absl::StatusOr<std::optional<Certificate>> certificateFor(const Server::Options& options) {
  if (listensPlainly(options) && options.network.empty()) return std::nullopt;
  auto certificate = options.certificateFile.empty()
                         ? selfMadeCertificate(options.dataFile)
                         : ownCertificate(options.certificateFile, options.keyFile);
  if (!certificate.ok()) return certificate.status();
  return *std::move(certificate);
}

std::shared_ptr<grpc::ServerCredentials> credentialsFor(const std::optional<Certificate>& certificate) {
  if (!certificate) return grpc::InsecureServerCredentials();
  grpc::SslServerCredentialsOptions options;
  options.pem_key_cert_pairs.push_back({certificate->keyPem, certificate->certificatePem});
  return grpc::SslServerCredentials(options);
}

}  // namespace

absl::StatusOr<std::unique_ptr<Server>> Server::start(const Options& options, const Clock& clock) {
  if (auto status = checkListenAddress(options.listen, !options.plain); !status.ok()) return status;
  if (auto status = checkSocketIsFree(options.listen); !status.ok()) return status;
  if (!options.network.empty())
    if (auto status = checkListenAddress(options.network, true); !status.ok()) return status;
  storage::Store::Options storeOptions;
  storeOptions.fullSync = options.fullSync;
  storeOptions.keepChanges = options.keepChanges;
  auto store =
      storage::Store::open(options.dataFile.empty() ? ":memory:" : options.dataFile, storeOptions, clock);
  if (!store.ok()) return naming(options.dataFile, store.status());
  // After the file is ours, so that two servers never make one each.
  const auto certificate = certificateFor(options);
  if (!certificate.ok()) return certificate.status();
  Backend::Options backend = options.backend;
  if (certificate->has_value() && (*certificate)->selfMade)
    backend.certificateFingerprint = (*certificate)->fingerprint;
  std::unique_ptr<Server> server(new Server());
  server->backend_ = std::make_unique<Backend>(*std::move(store), clock, std::move(backend));
  if (auto status = server->serveMetrics(options.metrics); !status.ok()) return status;
  if (auto status = server->serveCalendars(options, *certificate); !status.ok()) return status;
  if (auto status = server->makeHostCode(options.anotherHousehold); !status.ok()) return status;
  if (auto status = server->listen(options, *certificate); !status.ok()) return status;
  return server;
}

absl::Status Server::makeHostCode(bool anotherHousehold) {
  const auto households = backend_->store().hasHouseholds();
  if (!households.ok()) return households.status();
  if (*households && !anotherHousehold) return absl::OkStatus();
  hostCode_ = newCode();
  if (auto status = backend_->store().dropCodes(storage::Code::Purpose::kHost); !status.ok()) return status;
  storage::Code code;
  code.purpose = storage::Code::Purpose::kHost;
  code.role = v1::ROLE_HOST;
  return backend_->store().addCode(hashOfCode(hostCode_), code);
}

absl::Status Server::listen(const Options& options, const std::optional<Certificate>& certificate) {
  grpc::EnableDefaultHealthCheckService(true);
  static const bool reflecting = [] {
    // Kept for the life of the program: when its last user goes, gRPC takes itself
    // down and waits for timers that run, up to the ten seconds of a watcher's bookmark.
    grpc_init();
    grpc::reflection::InitProtoReflectionServerBuilderPlugin();
    return true;
  }();
  (void)reflecting;
  for (const auto make :
       {makeHouseholdService, makeKitchenService, makeStarterService, makeRecipeService, makeEventService,
        makePlanService, makeProgressService, makeSyncService, makeBreadService, makeMenuService,
        makeShoppingService, makeReminderService, makeCalendarService, makeReviewService})
    services_.push_back(make(*backend_));
  grpc::ServerBuilder builder;
  builder.AddChannelArgument(GRPC_ARG_ALLOW_REUSEPORT, 0);
  builder.SetMaxReceiveMessageSize(kMostMessageBytes);
  // A watcher whose machine went away without a word is noticed within a minute and a half.
  builder.AddChannelArgument(GRPC_ARG_KEEPALIVE_TIME_MS, 60'000);
  builder.AddChannelArgument(GRPC_ARG_KEEPALIVE_TIMEOUT_MS, 20'000);
  builder.AddChannelArgument(GRPC_ARG_HTTP2_MIN_RECV_PING_INTERVAL_WITHOUT_DATA_MS, 10'000);
  int port = 0;
  const std::string& address = options.listen;
  builder.AddListeningPort(address, credentialsFor(listensPlainly(options) ? std::nullopt : certificate),
                           &port);
  if (!options.network.empty())
    builder.AddListeningPort(options.network, credentialsFor(certificate), &networkPort_);
  for (const auto& service : services_) builder.RegisterService(service.get());
  server_ = builder.BuildAndStart();
  const bool socket = isUnixAddress(address);
  const auto taken = [](const std::string& where) {
    return absl::UnavailableError(
        absl::StrCat("cannot listen on ", where, ": it is taken, or may not be used"));
  };
  if (!options.network.empty() && networkPort_ == 0) return taken(options.network);
  if (server_ == nullptr || (!socket && port == 0)) return taken(address);
  target_ = socket ? address : absl::StrCat(address.substr(0, address.rfind(':')), ":", port);
  for (const char* service : kServices)
    server_->GetHealthCheckService()->SetServingStatus(absl::StrCat("suppertide.v1.", service), true);
  return absl::OkStatus();
}

absl::Status Server::serveMetrics(const std::string& address) {
  if (address.empty()) return absl::OkStatus();
  Backend& backend = *backend_;
  Metrics& metrics = backend.metrics();
  metrics.watch("suppertide_open_streams", "Watches and plannings going on.",
                [&backend] { return static_cast<double>(backend.streams().size()); });
  metrics.watch("suppertide_plannings", "Events being planned or waiting for it.",
                [&backend] { return static_cast<double>(backend.planning().size()); });
  metrics.watch("suppertide_waiting_reads", "Calls that wait for a reading thread.",
                [&backend] { return static_cast<double>(backend.readers().waiting()); });
  metrics.watch("suppertide_waiting_writes", "Writes that wait for the disk.",
                [&backend] { return static_cast<double>(backend.queue().waiting()); });
  return metrics.serve(address);
}

absl::Status Server::serveCalendars(const Options& options, const std::optional<Certificate>& certificate) {
  if (options.calendar.empty()) return absl::OkStatus();
  auto started = CalendarServer::start(*backend_, options.calendar, certificate);
  if (!started.ok()) return started.status();
  calendars_ = *std::move(started);
  backend_->servesCalendars(calendars_->port(), certificate.has_value());
  return absl::OkStatus();
}

std::string Server::hostCode() const {
  if (hostCode_.empty()) return "";
  return backend_->store().findCode(hashOfCode(hostCode_)).ok() ? hostCode_ : "";
}

void Server::drain() {
  if (backend_ != nullptr) backend_->metrics().stopServing();
  calendars_.reset();
  if (server_ == nullptr) return;
  server_->GetHealthCheckService()->SetServingStatus(false);
  backend_->corrections().stop();
  backend_->planning().stopAll();
  backend_->streams().close();
  server_->Shutdown(std::chrono::system_clock::now() + kDrainTime);
  server_->Wait();
  server_.reset();
}

Server::~Server() {
  drain();
  backend_.reset();
}

}  // namespace suppertide::service
