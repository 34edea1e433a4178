// Names for things that may be made anywhere, also offline: RFC 4122 version 4.
#pragma once

#include <string>
#include <string_view>

namespace suppertide {

// A fresh random id, 36 characters, lower case, from the system's generator.
std::string newId();

// Whether `text` may be an id in a document: 1 to 64 characters out of
// a-z A-Z 0-9 - _ . Short hand-written ids ("roast") are welcome in bundles.
bool isId(std::string_view text);

}  // namespace suppertide
