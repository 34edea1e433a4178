// Looking into a window from a test.
#pragma once

#include <QtQuick/qquickitem.h>

namespace suppertide::testing {

// The first visible item of that object name below `root`, or null.
inline QQuickItem* findItem(QQuickItem* root, const QString& objectName) {
  if (!root->isVisible()) return nullptr;
  if (root->objectName() == objectName) return root;
  for (QQuickItem* child : root->childItems()) {
    if (QQuickItem* found = findItem(child, objectName)) return found;
  }
  return nullptr;
}

}  // namespace suppertide::testing
