// The languages that the window speaks, one at a time.
#pragma once

#include <QtCore/qlocale.h>
#include <QtCore/qtranslator.h>

namespace suppertide {

// Installed for the whole program as long as this lives.
class Languages {
 public:
  Languages() = default;
  ~Languages();
  Languages(const Languages&) = delete;
  Languages& operator=(const Languages&) = delete;

  // Times and numbers as in `locale`; words in `language` ("de"), or in the locale's when that is empty;
  // English where there is no translation.
  void use(const QString& language, const QLocale& locale);

 private:
  QTranslator words_;
};

}  // namespace suppertide
