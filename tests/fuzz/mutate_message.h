// Changes in messages as careless or hostile programs make them: fuzzers that change bytes hardly ever
// get past the parser.
#pragma once

#include <google/protobuf/message.h>

#include "tests/support/dice.h"

namespace suppertide::fuzz {

// Changes one field somewhere in `message`: a value at an end of its range or beyond, a text of another
// field, an element too many or too few, a part left out.
void mutate(google::protobuf::Message& message, Dice& dice);

}  // namespace suppertide::fuzz
