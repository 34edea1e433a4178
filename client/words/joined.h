// Lists in a sentence.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>

namespace suppertide {

class Joined {
  Q_DECLARE_TR_FUNCTIONS(suppertide::Joined)
 public:
  // "a", "a and b", "a, b and c".
  static QString words(const QStringList& parts) {
    if (parts.size() < 2) return parts.value(0);
    const QStringList most = parts.mid(0, parts.size() - 1);
    return tr("%1 and %2").arg(most.join(tr(", ")), parts.last());
  }
  // As it begins a sentence.
  static QString capitalised(const QString& words) { return words.left(1).toUpper() + words.mid(1); }
};

}  // namespace suppertide
