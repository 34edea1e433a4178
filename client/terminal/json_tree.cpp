#include "client/terminal/json_tree.h"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

using Json = nlohmann::json;
constexpr std::size_t kDeepest = 100;
constexpr int kLongestShown = 60;
constexpr std::size_t kContext = 30;  // bytes shown before a mistake

// Takes the parser's events; the names are the library's.
class TreeBuilder : public nlohmann::json_sax<Json> {
 public:
  bool null() override { return put({}); }
  bool boolean(bool value) override {
    JsonValue v;
    v.kind = JsonValue::Kind::kBool;
    v.truth = value;
    return put(std::move(v));
  }
  bool number_integer(number_integer_t value) override {
    JsonValue v;
    v.kind = JsonValue::Kind::kInteger;
    v.integer = value;
    return put(std::move(v));
  }
  bool number_unsigned(number_unsigned_t value) override {
    JsonValue v;
    v.kind = JsonValue::Kind::kUnsigned;
    v.natural = value;
    return put(std::move(v));
  }
  bool number_float(number_float_t value, const string_t& written) override {
    JsonValue v;
    v.kind = JsonValue::Kind::kReal;
    v.real = value;
    v.text = written;
    return put(std::move(v));
  }
  bool string(string_t& value) override {
    JsonValue v;
    v.kind = JsonValue::Kind::kText;
    v.text = std::move(value);
    return put(std::move(v));
  }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(JsonValue::Kind::kObject); }
  bool start_array(std::size_t) override { return open(JsonValue::Kind::kArray); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool key(string_t& name) override {
    keys_.back() = std::move(name);
    return true;
  }
  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::detail::exception& what) override {
    position_ = position;
    message_ = what.what();
    return false;
  }

  bool tooDeep() const { return tooDeep_; }
  std::size_t position() const { return position_; }
  const std::string& message() const { return message_; }
  JsonValue take() { return std::move(root_); }

 private:
  bool open(JsonValue::Kind kind) {
    tooDeep_ = open_.size() >= kDeepest;
    JsonValue v;
    v.kind = kind;
    open_.push_back(std::move(v));
    keys_.emplace_back();
    return !tooDeep_;
  }
  bool close() {
    JsonValue done = std::move(open_.back());
    open_.pop_back();
    keys_.pop_back();
    return put(std::move(done));
  }
  bool put(JsonValue value) {
    if (open_.empty()) {
      root_ = std::move(value);
    } else if (open_.back().kind == JsonValue::Kind::kArray) {
      open_.back().elements.push_back(std::move(value));
    } else {
      open_.back().members.push_back({keys_.back(), std::move(value)});
    }
    return true;
  }

  JsonValue root_;
  std::vector<JsonValue> open_;    // from the outermost in
  std::vector<std::string> keys_;  // the name being filled in each
  bool tooDeep_ = false;
  std::size_t position_ = 0;
  std::string message_;
};

// The library's words after its own position: "...: syntax error while parsing X - WHY; expected Y".
std::string reasonOf(const std::string& message) {
  for (const char* mark : {"; expected ", " - "}) {
    const std::size_t at = message.find(mark);
    if (at == std::string::npos) continue;
    std::string reason = message.substr(at + std::string(mark).size());
    reason = reason.substr(0, reason.find("; last read"));
    return mark[0] == ';' ? absl::StrCat("JSON wants ", reason, " here") : absl::StrCat("not JSON: ", reason);
  }
  return "not JSON";
}

void locate(const std::string& text, std::size_t position, JsonSyntaxError& error) {
  const std::size_t at = std::min(position == 0 ? 0 : position - 1, text.size());
  error.line =
      1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
  const std::size_t lineBreak = at == 0 ? std::string::npos : text.rfind('\n', at - 1);
  const std::size_t lineStart = lineBreak == std::string::npos ? 0 : lineBreak + 1;
  error.column = 1 + static_cast<int>(at - lineStart);
  if (at == text.size()) {
    error.found = "the end of the file";
    return;
  }
  // The line as far as it could be read, its last letters when it is long.
  const std::size_t start =
      std::max(text.find_first_not_of(" \t", lineStart), at < kContext ? 0 : at - kContext);
  const std::string context = start > at ? "the end of the line" : text.substr(start, at + 1 - start);
  error.found = absl::StrCat(start > lineStart && start + kContext == at ? "…" : "", plainLine(context));
}

std::string quotedShort(const std::string& text) {
  return absl::StrCat("\"", shortened(plainLine(text), kLongestShown), "\"");
}

}  // namespace

std::optional<JsonValue> parseJson(const std::string& text, JsonSyntaxError& error) {
  TreeBuilder builder;
  if (Json::sax_parse(text, &builder)) return builder.take();
  if (builder.tooDeep()) {
    error.expected = absl::StrCat("nested deeper than ", kDeepest, " levels");
    return std::nullopt;
  }
  locate(text, builder.position(), error);
  error.expected = reasonOf(builder.message());
  return std::nullopt;
}

std::string describe(const JsonValue& value) {
  switch (value.kind) {
    case JsonValue::Kind::kNull:
      return "null";
    case JsonValue::Kind::kBool:
      return value.truth ? "true" : "false";
    case JsonValue::Kind::kInteger:
      return absl::StrCat(value.integer);
    case JsonValue::Kind::kUnsigned:
      return absl::StrCat(value.natural);
    case JsonValue::Kind::kReal:
      return shortened(plainLine(value.text), kLongestShown);
    case JsonValue::Kind::kText:
      return quotedShort(value.text);
    case JsonValue::Kind::kArray:
      return absl::StrCat("[", value.elements.size(), " elements]");
    case JsonValue::Kind::kObject:
      return absl::StrCat("{", value.members.size(), " members}");
  }
  return "";
}

}  // namespace suppertide::terminal
