// Files of this user alone, where the desktop keeps them.
#pragma once

#include <filesystem>
#include <string>

#include "absl/status/status.h"

namespace suppertide::link {

// The folder "suppertide" below the one that the environment's `variable` names or, when that is no
// absolute path, below `otherwise` in the home folder: ("XDG_DATA_HOME", ".local/share").
std::filesystem::path ownFolder(const char* variable, const char* otherwise);

// What is kept of a household on this device: below XDG_DATA_HOME, one folder a household.
std::filesystem::path householdFolder(const std::string& householdId);

// Makes the folder (mode 0700) when it is not there.
absl::Status makePrivateFolder(const std::filesystem::path& folder);

// Writes the file whole or not at all, on disk when it returns; mode 0600. Makes its folder when needed.
absl::Status writePrivately(const std::filesystem::path& path, const std::string& bytes);

}  // namespace suppertide::link
