#include "server/service_manager.h"

#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <cstddef>
#include <cstdlib>
#include <cstring>

namespace suppertide {

void tellServiceManager(const std::string& state) {
  const char* path = std::getenv("NOTIFY_SOCKET");
  sockaddr_un name{};
  name.sun_family = AF_UNIX;
  if (path == nullptr || path[0] == '\0' || std::strlen(path) >= sizeof(name.sun_path)) return;
  std::memcpy(name.sun_path, path, std::strlen(path));
  if (name.sun_path[0] == '@') name.sun_path[0] = '\0';  // a name without a file
  const int manager = socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC, 0);
  if (manager < 0) return;
  const auto size = static_cast<socklen_t>(offsetof(sockaddr_un, sun_path) + std::strlen(path));
  sendto(manager, state.data(), state.size(), MSG_NOSIGNAL, reinterpret_cast<const sockaddr*>(&name), size);
  close(manager);
}

}  // namespace suppertide
