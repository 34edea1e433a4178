// A document's text as the window has it.
#pragma once

#include <string>

#include <QtCore/qstring.h>

namespace suppertide {

inline QString text(const std::string& utf8) {
  return QString::fromStdString(utf8);
}

}  // namespace suppertide
