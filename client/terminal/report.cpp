#include "client/terminal/report.h"

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <iostream>
#include <sstream>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "client/link/error_detail.h"
#include "client/terminal/text.h"
#include "google/protobuf/util/json_util.h"

namespace suppertide::terminal {
namespace {

using Json = nlohmann::ordered_json;
constexpr std::size_t kLargestFile = 32 * 1024 * 1024;

std::string dumped(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json toJson(const Violations& mistakes) {
  Json list = Json::array();
  for (const v1::FieldViolation& violation : mistakes) {
    list.push_back({{"fieldPath", violation.field_path()},
                    {"value", violation.value()},
                    {"description", violation.description()}});
  }
  return list;
}

int exitCodeOf(absl::StatusCode code) {
  switch (code) {
    case absl::StatusCode::kInvalidArgument:
    case absl::StatusCode::kNotFound:
      return kBadInput;
    case absl::StatusCode::kUnavailable:
    case absl::StatusCode::kDeadlineExceeded:
      return kUnreachable;
    case absl::StatusCode::kUnauthenticated:
    case absl::StatusCode::kPermissionDenied:
    case absl::StatusCode::kResourceExhausted:
      return kRefused;
    default:
      return kFailed;
  }
}

// Not with a file's name, which is written as it is.
bool beginsWithAWord(const std::string& message) {
  const std::string first = message.substr(0, message.find(' '));
  return std::all_of(first.begin(), first.end(), [](unsigned char c) { return std::isalpha(c) != 0; });
}

// The network library tells its whole way to the cause, which comes last.
std::string networkWords(const std::string& message) {
  if (message.rfind("failed to connect", 0) != 0) return message;
  const std::size_t cause = message.rfind(": ");
  const std::string why =
      cause == std::string::npos ? "" : absl::StrCat(" (", message.substr(cause + 2), ")");
  return absl::StrCat("is it running, and is the address right?", why);
}

std::string wordsOf(const absl::Status& status) {
  const std::string message = plainLine(std::string(status.message()));
  switch (exitCodeOf(status.code())) {
    case kUnreachable:
      return absl::StrCat("No answer from the server: ", networkWords(message));
    case kRefused:
      return absl::StrCat("The server refused: ", message);
    default:
      return beginsWithAWord(message) ? capitalised(message) : message;
  }
}

}  // namespace

std::string jsonOf(const google::protobuf::Message& message) {
  google::protobuf::util::JsonPrintOptions options;
  options.add_whitespace = true;
  std::string text;
  const auto status = google::protobuf::util::MessageToJsonString(message, &text, options);
  return status.ok() ? text : "{}\n";
}

int reportMistakes(Environment& environment, const Violations& mistakes, bool json) {
  if (json) {
    environment.out << dumped({{"violations", toJson(mistakes)}});
  } else {
    for (const v1::FieldViolation& mistake : mistakes) environment.err << lineOf(mistake) << "\n";
  }
  return kBadInput;
}

int reportFailure(Environment& environment, const absl::Status& status, bool json) {
  const auto detail = link::errorDetail(status);
  if (detail && detail->violations_size() > 0) {
    return reportMistakes(environment, {detail->violations().begin(), detail->violations().end()}, json);
  }
  if (json) {
    Json error = {{"code", absl::StatusCodeToString(status.code())},
                  {"message", std::string(status.message())}};
    if (detail) error["reason"] = detail->reason();
    environment.out << dumped({{"error", error}});
  } else {
    environment.err << wordsOf(status) << "\n";
  }
  return exitCodeOf(status.code());
}

absl::StatusOr<std::string> readFile(const std::string& path) {
  std::stringstream text;
  if (path == "-") {
    text << std::cin.rdbuf();
  } else {
    std::ifstream file(path, std::ios::binary);
    if (!file) return absl::InvalidArgumentError(absl::StrCat(path, ": ", std::strerror(errno)));
    text << file.rdbuf();
    if (file.bad() || text.bad()) return absl::InvalidArgumentError(absl::StrCat(path, ": cannot be read"));
  }
  std::string content = text.str();
  if (content.size() > kLargestFile) {
    return absl::InvalidArgumentError(
        absl::StrCat(path, ": larger than ", kLargestFile / (1024 * 1024), " MiB"));
  }
  return content;
}

absl::Status writeFile(const std::string& path, const std::string& text) {
  const std::string next = path + ".new";
  std::ofstream file(next, std::ios::binary | std::ios::trunc);
  file << text;
  file.close();
  if (!file || std::rename(next.c_str(), path.c_str()) != 0) {
    const std::string why = std::strerror(errno);
    std::remove(next.c_str());
    return absl::InternalError(absl::StrCat("write ", path, ": ", why));
  }
  return absl::OkStatus();
}

}  // namespace suppertide::terminal
