#include "server/embedded.h"

#include <unistd.h>

#include <cstdlib>
#include <filesystem>

#include "absl/strings/str_cat.h"
#include "server/service/server.h"

namespace suppertide {
namespace {

// A folder only this user can enter, gone with its owner.
class PrivateFolder {
 public:
  static absl::StatusOr<std::unique_ptr<PrivateFolder>> make() {
    std::string path = (std::filesystem::temp_directory_path() / "suppertide-XXXXXX").string();
    if (mkdtemp(path.data()) == nullptr)
      return absl::UnavailableError(absl::StrCat("cannot make a folder like ", path));
    return std::unique_ptr<PrivateFolder>(new PrivateFolder(path));
  }
  ~PrivateFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  const std::string& path() const { return path_; }

 private:
  explicit PrivateFolder(std::string path) : path_(std::move(path)) {}
  std::string path_;
};

class Embedded : public EmbeddedServer {
 public:
  Embedded(std::unique_ptr<SystemClock> clock, std::unique_ptr<PrivateFolder> folder,
           std::unique_ptr<service::Server> server)
      : clock_(std::move(clock)), folder_(std::move(folder)), server_(std::move(server)) {}
  std::string target() const override { return server_->target(); }
  int networkPort() const override { return server_->networkPort(); }
  std::string hostCode() const override { return server_->hostCode(); }

 private:
  std::unique_ptr<SystemClock> clock_;
  std::unique_ptr<PrivateFolder> folder_;
  std::unique_ptr<service::Server> server_;
};

}  // namespace

absl::StatusOr<std::unique_ptr<EmbeddedServer>> EmbeddedServer::start(const Options& options) {
  auto clock = std::make_unique<SystemClock>();
  std::unique_ptr<PrivateFolder> folder;
  service::Server::Options server;
  server.dataFile = options.dataFile;
  server.listen = options.listen;
  server.plain = true;  // only this machine can reach it there
  server.network = options.network;
  if (server.listen.empty()) {
    auto made = PrivateFolder::make();
    if (!made.ok()) return made.status();
    folder = *std::move(made);
    server.listen = absl::StrCat("unix:", folder->path(), "/server.sock");
  }
  auto started = service::Server::start(server, *clock);
  if (!started.ok()) return started.status();
  return std::make_unique<Embedded>(std::move(clock), std::move(folder), *std::move(started));
}

}  // namespace suppertide
