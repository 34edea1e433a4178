// The small dinner on a real server of this process, with several people's devices.
#pragma once

#include <memory>
#include <string>

#include "client/link/link.h"
#include "client/link/session.h"
#include "server/embedded.h"
#include "tests/support/temp_dir.h"

namespace suppertide::testing {

class RealHousehold {
 public:
  // Serves on a socket of its own, from a file, so that it can be stopped and started.
  RealHousehold();

  void stop() { server_.reset(); }
  void start();

  // A device of Ana, who is the host.
  link::LinkOptions host() const { return options(hostToken_); }
  // A new device of another member: "rui", a cook.
  link::LinkOptions deviceOf(const std::string& memberId);
  // A folder for what one device keeps.
  std::string folder(const std::string& device) const { return folder_.file(device); }
  // Plans the event "supper", in a few seconds.
  void plan();
  // Single calls as the host.
  link::Session& calls() { return *calls_; }
  const std::string& id() const { return id_; }
  std::string target() const { return "unix:" + folder_.file("s.sock"); }

 private:
  link::LinkOptions options(const std::string& token) const;

  TempDir folder_;
  std::unique_ptr<EmbeddedServer> server_;
  std::string id_;
  std::string hostToken_;
  std::unique_ptr<link::Session> calls_;
};

}  // namespace suppertide::testing
