#include "client/translations/languages.h"

#include <QtCore/qcoreapplication.h>

namespace suppertide {

Languages::~Languages() {
  QCoreApplication::removeTranslator(&words_);
}

void Languages::use(const QString& language, const QLocale& locale) {
  QCoreApplication::removeTranslator(&words_);
  QLocale::setDefault(locale);
  const QLocale spoken = language.isEmpty() ? locale : QLocale(language);
  const QString folder = QStringLiteral(":/suppertide/translations");
  const bool loaded = words_.load(spoken, QStringLiteral("suppertide"), QStringLiteral("_"), folder) ||
                      words_.load(QStringLiteral("suppertide_en"), folder);
  if (loaded) QCoreApplication::installTranslator(&words_);
}

}  // namespace suppertide
