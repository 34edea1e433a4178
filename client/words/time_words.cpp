#include "client/words/time_words.h"

#include <QtCore/qdatetime.h>

#include <cmath>

namespace suppertide {
namespace {
constexpr long kHour = 60;
constexpr long kDay = 24 * 60;
}  // namespace

TimeWords::TimeWords(const std::string& ianaName, const QLocale& locale)
    : zone_(QByteArray::fromStdString(ianaName)), locale_(locale) {
  if (!zone_.isValid()) zone_ = QTimeZone::utc();
  const QString own = locale_.timeFormat(QLocale::ShortFormat);
  const bool halfDays = own.contains(QLatin1String("AP"), Qt::CaseInsensitive);
  clockFormat_ = halfDays ? QStringLiteral("h:mm AP") : QStringLiteral("HH:mm");
}

QDateTime TimeWords::local(Instant time) const {
  return QDateTime::fromSecsSinceEpoch(time.time_since_epoch().count(), zone_);
}

QString TimeWords::clock(Instant time) const {
  return locale_.toString(local(time).time(), clockFormat_);
}

QString TimeWords::dayClock(Instant time) const {
  //: A short day name and a time: "Sat 17:40".
  return tr("%1 %2").arg(locale_.toString(local(time).date(), QStringLiteral("ddd")), clock(time));
}

QString TimeWords::day(Instant time) const {
  //: How Qt is to write a short day and its date: "Sat 20 June".
  return locale_.toString(local(time).date(), tr("ddd d MMMM"));
}

QString TimeWords::longDay(Instant time) const {
  //: How Qt is to write a day and its date: "Saturday 20 June".
  return locale_.toString(local(time).date(), tr("dddd d MMMM"));
}

bool TimeWords::sameDay(Instant a, Instant b) const {
  return local(a).date() == local(b).date();
}

QString TimeWords::span(Instant start, Instant limit) const {
  if (start == limit) return clock(start);
  if (sameDay(start, limit)) return tr("%1–%2").arg(clock(start), clock(limit));
  return tr("%1–%2").arg(dayClock(start), dayClock(limit));
}

QString TimeWords::spokenSpan(Instant start, Instant limit) const {
  if (start == limit) return clock(start);
  if (sameDay(start, limit)) return tr("%1 to %2").arg(clock(start), clock(limit));
  return tr("%1 to %2").arg(dayClock(start), dayClock(limit));
}

QString TimeWords::length(double minutes) const {
  const long whole = std::lround(std::abs(minutes));
  if (whole < kHour) return tr("%1 min").arg(whole);
  if (whole < kDay) {
    return whole % kHour == 0 ? tr("%1 h").arg(whole / kHour)
                              : tr("%1 h %2 min").arg(whole / kHour).arg(whole % kHour);
  }
  const long hours = whole % kDay / kHour;
  const QString days = whole / kDay == 1 ? tr("1 day") : tr("%1 days").arg(whole / kDay);
  return hours == 0 ? days : tr("%1 %2 h").arg(days).arg(hours);
}

}  // namespace suppertide
