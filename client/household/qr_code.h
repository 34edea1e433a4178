// A text as a QR code (ISO/IEC 18004), always dark on white: cameras read nothing else well.
#pragma once

#include <QtQuick/qquickpainteditem.h>

#include <vector>

namespace suppertide {

class QrCode : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QString text READ text WRITE setText NOTIFY textChanged FINAL)
  // Modules on a side, without the margin; 0: nothing to show, or too much for one code.
  Q_PROPERTY(int modules READ modules NOTIFY textChanged FINAL)
 public:
  explicit QrCode(QQuickItem* parent = nullptr);

  QString text() const { return text_; }
  void setText(const QString& text);
  int modules() const { return side_; }
  bool isDark(int x, int y) const { return dark_[static_cast<std::size_t>(y * side_ + x)]; }

  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void textChanged();

 private:
  QString text_;
  int side_ = 0;
  std::vector<bool> dark_;
};

}  // namespace suppertide
