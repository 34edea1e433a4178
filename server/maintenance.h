// What an operator does with a data file beside serving it: copies, and a look
// inside. Each prints to the standard output and gives the program's exit code.
#pragma once

#include <string>

namespace suppertide {

inline constexpr int kDone = 0;
inline constexpr int kFailed = 1;
inline constexpr int kUsage = 2;
inline constexpr int kFoundWrong = 3;

// Prints one line to the error output and gives `exitCode` back.
int complain(const std::string& line, int exitCode);

// kFailed with one line when the copy cannot be made.
int backUpFile(const std::string& dataFile, const std::string& copy);
int restoreFile(const std::string& copy, const std::string& dataFile, bool replace);
// kDone when all is well, kFoundWrong when something was found, kFailed when the
// file cannot be looked at.
int examineFile(const std::string& dataFile, bool json);

}  // namespace suppertide
