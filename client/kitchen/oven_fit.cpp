#include "client/kitchen/oven_fit.h"

#include <QtGui/qpainter.h>
#include <QtGui/qpainterpath.h>

#include <algorithm>
#include <cmath>

#include "client/kitchen/ask_write.h"
#include "client/kitchen/units.h"
#include "client/link/error_detail.h"
#include "client/words/time_words.h"

namespace suppertide {
namespace {

constexpr int kFitAfterMs = 250;
constexpr double kMargin = 30;
constexpr double kLeastMinutes = 30;

// Air after so many minutes from cold at full setting: it levels off with one time constant.
double heated(const v1::OvenCurve& curve, double minutes) {
  if (curve.heat_minutes() <= 0) return curve.room_celsius();
  return curve.maximum_celsius() -
         (curve.maximum_celsius() - curve.room_celsius()) * std::exp(-minutes / curve.heat_minutes());
}

}  // namespace

OvenFit::OvenFit(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  timer_.setSingleShot(true);
  timer_.setInterval(kFitAfterMs);
  connect(&timer_, &QTimer::timeout, this, &OvenFit::ask);
  connect(this, &OvenFit::coloursChanged, this, [this] { update(); });
}

void OvenFit::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) connect(draft_, &Draft::changed, &timer_, qOverload<>(&QTimer::start));
  Q_EMIT sourceChanged();
  timer_.start(0);
}

void OvenFit::setPath(const QString& path) {
  if (path == path_) return;
  path_ = path;
  Q_EMIT sourceChanged();
  timer_.start(0);
}

const v1::Oven* OvenFit::oven() const {
  const auto* kitchen = draft_ == nullptr ? nullptr : dynamic_cast<const v1::Kitchen*>(&draft_->document());
  if (kitchen == nullptr) return nullptr;
  for (int i = 0; i < kitchen->ovens_size(); ++i) {
    if (path_ == QStringLiteral("ovens[%1]").arg(i)) return &kitchen->ovens(i);
  }
  return nullptr;
}

bool OvenFit::fahrenheit() const {
  return draft_ != nullptr && draft_->session() != nullptr && draft_->session()->replica() != nullptr &&
         draft_->session()->replica()->household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT;
}

void OvenFit::ask() {
  const v1::Oven* one = oven();
  if (one == nullptr || one->SerializeAsString() == askedFor_) return;
  const v1::HeatCurve& curve = one->heat_curve();
  if (curve.heating_size() + curve.cooling_size() + curve.cooling_ajar_size() + curve.rises_size() == 0) {
    answered_ = false;
    askedFor_.clear();
    words_.clear();
    trouble_ =
        tr("No readings yet: plans count on a usual oven. Read a thermometer in the oven every few minutes "
           "while it heats, and write it down here.");
    Q_EMIT fitChanged();
    return;
  }
  HouseholdSession* session = draft_->session();
  if (session == nullptr || session->state() != HouseholdSession::Live) return;
  v1::FitOvenRequest request;
  request.set_household_id(householdIdOf(*session));
  *request.mutable_oven() = *one;
  askedFor_ = one->SerializeAsString();
  session->ask<v1::FitOvenResponse>(
      this, [request](link::Session& server) { return server.fitOven(request); },
      [this, asked = askedFor_](const absl::StatusOr<v1::FitOvenResponse>& answer) {
        if (asked != askedFor_) return;
        if (answer.ok()) return show(*answer);
        const auto detail = link::errorDetail(answer.status());
        trouble_ = QString::fromStdString(detail && detail->violations_size() > 0
                                              ? detail->violations(0).description()
                                              : std::string(answer.status().message()));
        Q_EMIT fitChanged();
      });
}

void OvenFit::show(const v1::FitOvenResponse& fit) {
  fit_ = fit;
  answered_ = true;
  trouble_.clear();
  words_.clear();
  const TimeWords times;
  words_ += tr("The curve misses the readings by %1 K on average; the usual oven would miss them by %2 K.")
                .arg(numberText(fit.residual_after_k()), numberText(fit.residual_before_k()));
  const auto left = std::count_if(fit.readings().begin(), fit.readings().end(),
                                  [](const v1::ReadingFit& one) { return one.left_out(); });
  if (left > 0)
    words_ += tr("%n readings are too far from the others and do not count.", "", static_cast<int>(left));
  for (const v1::OvenChange& change : fit.changes()) {
    if (change.from_celsius() != 0) continue;
    const double after = toMinutes(change.after_duration());
    const double before = toMinutes(change.before_duration());
    words_ += std::abs(after - before) < 1
                  ? tr("From cold to %1: %2.")
                        .arg(degreesText(change.to_celsius(), fahrenheit()), times.length(after))
                  : tr("From cold to %1: %2 (a usual oven: %3).")
                        .arg(degreesText(change.to_celsius(), fahrenheit()), times.length(after),
                             times.length(before));
  }
  update();
  Q_EMIT fitChanged();
}

void OvenFit::paint(QPainter* painter) {
  const v1::Oven* one = oven();
  if (!answered_ || one == nullptr || width() < 2 * kMargin || height() < 2 * kMargin) return;
  double minutes = std::max(kLeastMinutes, 2.5 * fit_.after().heat_minutes());
  for (const v1::HeatReading& reading : one->heat_curve().heating())
    minutes = std::max(minutes, 1.1 * toMinutes(reading.after()));
  minutes = std::min(minutes, 180.0);
  const double top = std::max(50.0 * std::ceil(one->max_setpoint_celsius() / 50.0 + 0.5), 100.0);
  const QRectF area(kMargin + 14, 8, width() - kMargin - 22, height() - kMargin);
  const auto at = [&](double minute, double celsius) {
    return QPointF(area.left() + area.width() * minute / minutes,
                   area.bottom() - area.height() * std::clamp(celsius, 0.0, top) / top);
  };
  painter->setRenderHint(QPainter::Antialiasing);
  QFont font = painter->font();
  font.setPixelSize(11);
  painter->setFont(font);
  for (double celsius = 0; celsius <= top; celsius += 100) {
    painter->setPen(QPen(faint_, 1));
    painter->drawLine(at(0, celsius), at(minutes, celsius));
    painter->setPen(ink_);
    const double shown = fahrenheit() ? celsius * 1.8 + 32 : celsius;
    painter->drawText(QRectF(0, at(0, celsius).y() - 8, area.left() - 6, 16),
                      Qt::AlignRight | Qt::AlignVCenter, QString::number(std::lround(shown)));
  }
  const double step = minutes > 90 ? 30 : 10;
  for (double minute = 0; minute <= minutes; minute += step)
    painter->drawText(QRectF(at(minute, 0).x() - 30, area.bottom() + 4, 60, 16), Qt::AlignHCenter,
                      tr("%1 min").arg(minute));
  const auto curve = [&](const v1::OvenCurve& from) {
    QPainterPath path(at(0, heated(from, 0)));
    for (double minute = 1; minute <= minutes; ++minute)
      path.lineTo(at(minute, std::min(heated(from, minute), double(one->max_setpoint_celsius()))));
    return path;
  };
  painter->setPen(QPen(ink_, 1.5, Qt::DashLine));
  painter->drawPath(curve(fit_.before()));
  painter->setPen(QPen(line_, 3));
  painter->drawPath(curve(fit_.after()));
  painter->setBrush(ink_);
  painter->setPen(Qt::NoPen);
  for (const v1::HeatReading& reading : one->heat_curve().heating())
    painter->drawEllipse(at(toMinutes(reading.after()), reading.celsius()), 4, 4);
}

}  // namespace suppertide
