// A document's JSON text into its message, with every mistake found at once.
//
// The text is the standard JSON mapping of the message. A mistake never hides
// another: what is faulty is left out of the message, an element of a list
// leaves an empty one in its place, so that paths stay true for what the server
// finds in the rest.
#pragma once

#include <string>
#include <vector>

#include "google/protobuf/message.h"
#include "suppertide/v1/common.pb.h"

namespace suppertide::terminal {

using Violations = std::vector<v1::FieldViolation>;

struct Reading {
  bool isJson = true;  // false: nothing of it could be read
  Violations mistakes;
  // Where misspelt fields should have been: that these are empty is no mistake of its own.
  std::vector<std::string> misspelt;
};

// Fills `message` from `text`. No mistakes: all of it was understood. Paths are in
// the JSON's own names: "recipes[2].steps[0].kind"; a text that is not JSON has one
// mistake with the path "line 12, column 5" and leaves `message` empty.
Reading readMessage(const std::string& text, google::protobuf::Message& message);

// The mistakes of the text, then those of the server's `found` that are not about
// the same field, one above or one below.
Violations joined(const Reading& reading, const Violations& found);

// "path: value — what is allowed", one line.
std::string lineOf(const v1::FieldViolation& violation);

}  // namespace suppertide::terminal
