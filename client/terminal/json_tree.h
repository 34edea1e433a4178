// JSON text as a tree that keeps what a checker needs: the order of members,
// members given twice, and where the text stops being JSON.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace suppertide::terminal {

struct JsonMember;

struct JsonValue {
  enum class Kind { kNull, kBool, kInteger, kUnsigned, kReal, kText, kArray, kObject };
  Kind kind = Kind::kNull;
  bool truth = false;
  std::int64_t integer = 0;
  std::uint64_t natural = 0;  // kUnsigned: not negative
  double real = 0;
  std::string text;                 // kText; for kReal as written
  std::vector<JsonValue> elements;  // kArray
  std::vector<JsonMember> members;  // kObject, a name may come twice
};

struct JsonMember {
  std::string name;
  JsonValue value;
};

// Where and why a text is not JSON. Line and column begin at 1; columns count bytes.
struct JsonSyntaxError {
  int line = 1;
  int column = 1;
  std::string found;     // the line up to there, or what ended
  std::string expected;  // for people
};

// The tree of `text`; absent, with `error` set, when it is not one whole JSON
// value in UTF-8, or nested deeper than 100.
std::optional<JsonValue> parseJson(const std::string& text, JsonSyntaxError& error);

// As it would stand in the file, shortened: "OVENN", 12, [3 elements], {2 members}.
std::string describe(const JsonValue& value);

}  // namespace suppertide::terminal
