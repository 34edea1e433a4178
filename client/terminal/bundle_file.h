// A document's JSON text into its message, with every mistake found at once.
//
// The text is the standard JSON mapping of the message. A mistake never hides
// another: where it is plain what was meant (a misspelt name, a number without
// quotes) that goes on into the message, so that the server can look at the rest
// as if it were mended; otherwise the faulty field is left out, or an element of a
// list left empty, so that paths stay true.
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
  // Things whose kind could not be read: what the server finds in them may be due to that alone.
  std::vector<std::string> doubtful;
};

// Fills `message` from `text`. No mistakes: all of it was understood. Paths are in
// the JSON's own names: "recipes[2].steps[0].kind"; a text that is not JSON has one
// mistake with the path "line 12, column 5" and leaves `message` empty.
Reading readMessage(const std::string& text, google::protobuf::Message& message);

// The mistakes of the text, then those of the server's `found` that are not about
// the same field, one above or one below, nor in something doubtful.
Violations joined(const Reading& reading, const Violations& found);

// "path: value — what is allowed", one line.
std::string lineOf(const v1::FieldViolation& violation);

}  // namespace suppertide::terminal
