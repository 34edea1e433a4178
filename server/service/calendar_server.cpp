#include "server/service/calendar_server.h"

#include <httplib.h>
#include <openssl/pem.h>

#include <thread>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "server/service/backend.h"
#include "server/service/calendars.h"
#include "server/service/listen_address.h"

namespace suppertide::service {
namespace {

constexpr int kThreads = 2;
constexpr int kWrongTriesPerMinute = 30;
constexpr int kSeconds = 5;  // for a client to send its request, and to take the answer

struct FreeBio {
  void operator()(BIO* bio) const { BIO_free(bio); }
};
using Bio = std::unique_ptr<BIO, FreeBio>;
struct FreeCertificate {
  void operator()(X509* certificate) const { X509_free(certificate); }
};
struct FreeKey {
  void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
};

std::unique_ptr<httplib::Server> encrypted(const Certificate& certificate) {
  const Bio pem(BIO_new_mem_buf(certificate.certificatePem.data(),
                                static_cast<int>(certificate.certificatePem.size())));
  const Bio keyPem(BIO_new_mem_buf(certificate.keyPem.data(), static_cast<int>(certificate.keyPem.size())));
  const std::unique_ptr<X509, FreeCertificate> own(PEM_read_bio_X509(pem.get(), nullptr, nullptr, nullptr));
  const std::unique_ptr<EVP_PKEY, FreeKey> key(
      PEM_read_bio_PrivateKey(keyPem.get(), nullptr, nullptr, nullptr));
  auto server = std::make_unique<httplib::SSLServer>(own.get(), key.get());
  // The rest of an owner's chain.
  while (server->is_valid()) {
    const std::unique_ptr<X509, FreeCertificate> next(
        PEM_read_bio_X509(pem.get(), nullptr, nullptr, nullptr));
    if (next == nullptr || SSL_CTX_add1_chain_cert(server->ssl_context(), next.get()) != 1) break;
  }
  return server;
}

class Serving : public CalendarServer {
 public:
  Serving(Backend& backend, std::unique_ptr<httplib::Server> server)
      : backend_(backend), server_(std::move(server)), wrongTries_(backend.clock(), kWrongTriesPerMinute) {}

  ~Serving() override {
    server_->stop();
    if (thread_.joinable()) thread_.join();
  }

  bool listen(const std::string& host, int port) {
    server_->new_task_queue = [] { return new httplib::ThreadPool(kThreads); };
    server_->set_read_timeout(kSeconds);
    server_->set_write_timeout(kSeconds);
    server_->set_keep_alive_timeout(kSeconds);
    server_->set_payload_max_length(1024);
    // A server of another program on the same port would share its callers.
    server_->set_socket_options([](int socket) {
      const int yes = 1;
      setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof(yes));
    });
    server_->Get(".*", [this](const httplib::Request& request, httplib::Response& response) {
      answer(request, response);
    });
    if (!server_->is_valid()) return false;
    port_ = port == 0 ? server_->bind_to_any_port(host) : (server_->bind_to_port(host, port) ? port : -1);
    if (port_ <= 0) return false;
    thread_ = std::thread([this] { server_->listen_after_bind(); });
    return true;
  }

  int port() const override { return port_; }

 private:
  void answer(const httplib::Request& request, httplib::Response& response) {
    if (!wrongTries_.mayTry(request.remote_addr)) {
      response.status = 429;
      return;
    }
    std::string text;
    const Failure wrong = calendarAt(backend_, request.path, text);
    if (wrong.status.code() == absl::StatusCode::kNotFound) wrongTries_.failed(request.remote_addr);
    if (wrong.failed()) {
      response.status = wrong.status.code() == absl::StatusCode::kNotFound ? 404 : 503;
      return;
    }
    response.set_header("Cache-Control", "private, no-cache");
    response.set_header("Referrer-Policy", "no-referrer");
    response.set_content(text, "text/calendar; charset=utf-8");
  }

  Backend& backend_;
  std::unique_ptr<httplib::Server> server_;
  RateLimit wrongTries_;
  int port_ = 0;
  std::thread thread_;
};

}  // namespace

absl::StatusOr<std::unique_ptr<CalendarServer>> CalendarServer::start(
    Backend& backend, const std::string& address, const std::optional<Certificate>& certificate) {
  if (isUnixAddress(address))
    return absl::InvalidArgumentError("calendars are served over TCP: give HOST:PORT");
  if (auto status = checkListenAddress(address, certificate.has_value()); !status.ok()) return status;
  const std::size_t colon = address.rfind(':');
  std::string host = address.substr(0, colon);
  if (host.size() > 2 && host.front() == '[') host = host.substr(1, host.size() - 2);
  int port = 0;
  (void)absl::SimpleAtoi(address.substr(colon + 1), &port);
  auto server = certificate ? encrypted(*certificate) : std::make_unique<httplib::Server>();
  auto serving = std::make_unique<Serving>(backend, std::move(server));
  if (!serving->listen(host, port))
    return absl::UnavailableError(
        absl::StrCat("cannot serve calendars on ", address, ": it is taken, or may not be used"));
  return serving;
}

}  // namespace suppertide::service
