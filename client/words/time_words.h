// Instants and lengths in words: in the event's time zone, in the reader's language.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qlocale.h>
#include <QtCore/qtimezone.h>

#include <string>

#include "client/words/instant.h"

namespace suppertide {

class TimeWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::TimeWords)
 public:
  // An unknown zone is read as UTC.
  explicit TimeWords(const std::string& ianaName = "", const QLocale& locale = QLocale());

  const QTimeZone& zone() const { return zone_; }
  QDateTime local(Instant time) const;

  QString clock(Instant time) const;     // "17:40", "5:40 PM"
  QString dayClock(Instant time) const;  // "Sat 17:40"
  QString day(Instant time) const;       // "Sat 20 June"
  QString longDay(Instant time) const;   // "Saturday 20 June"
  // "17:40–18:05"; with the days when it runs over midnight: "Sat 22:30–Sun 07:00".
  QString span(Instant start, Instant limit) const;
  // As span, but to be spoken: "14:05 to 14:30".
  QString spokenSpan(Instant start, Instant limit) const;
  // "25 min", "1 h 20 min", "2 days 3 h". The sign is left out.
  QString length(double minutes) const;

  friend bool operator==(const TimeWords& a, const TimeWords& b) {
    return a.zone_ == b.zone_ && a.locale_ == b.locale_;
  }

 private:
  bool sameDay(Instant a, Instant b) const;

  QTimeZone zone_;
  QLocale locale_;
  QString clockFormat_;
};

}  // namespace suppertide
