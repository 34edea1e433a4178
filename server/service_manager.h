// Tells the program that started this one, systemd for example, how it is doing.
#pragma once

#include <string>

namespace suppertide {

// Sends `state` ("READY=1") to the socket named by NOTIFY_SOCKET, as sd_notify(3)
// describes. Nothing happens when nobody listens.
void tellServiceManager(const std::string& state);

}  // namespace suppertide
