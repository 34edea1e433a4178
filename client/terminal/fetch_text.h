// What to take out of freezer and fridge, in words.
#pragma once

#include <string>

#include "client/terminal/names.h"
#include "client/terminal/time_text.h"
#include "google/protobuf/repeated_field.h"
#include "suppertide/v1/menu.pb.h"

namespace suppertide::terminal {

// A line each, indented; `cookId` empty: everyone's. Empty when there is nothing.
std::string fetchLines(const google::protobuf::RepeatedPtrField<v1::Fetch>& fetches, const Names& names,
                       const Clock& clock, const std::string& cookId, int width);

}  // namespace suppertide::terminal
