#include "client/household/qr_code.h"

#include <qrencode.h>

#include <QtGui/qpainter.h>

#include <cmath>
#include <memory>

namespace suppertide {
namespace {

constexpr int kMargin = 4;  // modules of white around, as the standard asks

}  // namespace

QrCode::QrCode(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setImplicitSize(220, 220);
}

void QrCode::setText(const QString& text) {
  if (text == text_) return;
  text_ = text;
  side_ = 0;
  dark_.clear();
  const QByteArray bytes = text.toUtf8();
  const std::unique_ptr<QRcode, void (*)(QRcode*)> code(
      bytes.isEmpty() ? nullptr : QRcode_encodeString8bit(bytes.constData(), /*version=*/0, QR_ECLEVEL_M),
      &QRcode_free);
  if (code != nullptr) {
    side_ = code->width;
    // The lowest bit tells the colour.
    for (int i = 0; i < side_ * side_; ++i) dark_.push_back((code->data[i] & 1) != 0);
  }
  update();
  Q_EMIT textChanged();
}

void QrCode::paint(QPainter* painter) {
  painter->fillRect(QRectF(0, 0, width(), height()), Qt::white);
  if (side_ == 0) return;
  // Whole pixels a module: blurred edges are hard to read.
  const double cell = std::floor(std::min(width(), height()) / (side_ + 2 * kMargin));
  if (cell < 1) return;
  const double left = std::floor((width() - cell * side_) / 2);
  const double top = std::floor((height() - cell * side_) / 2);
  painter->setRenderHint(QPainter::Antialiasing, false);
  for (int y = 0; y < side_; ++y) {
    for (int x = 0; x < side_; ++x) {
      if (isDark(x, y)) painter->fillRect(QRectF(left + x * cell, top + y * cell, cell, cell), Qt::black);
    }
  }
}

}  // namespace suppertide
