// The curve that an oven's readings give, drawn: dashed the usual one, solid the one after the
// readings, the readings as points. Asked of the server whenever the readings change.
#pragma once

#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>
#include <QtQuick/qquickpainteditem.h>

#include "client/kitchen/draft.h"
#include "client/link/session.h"

namespace suppertide {

class OvenFit : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY sourceChanged REQUIRED FINAL)
  // "ovens[1]".
  Q_PROPERTY(QString path READ path WRITE setPath NOTIFY sourceChanged REQUIRED FINAL)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY coloursChanged FINAL)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY coloursChanged FINAL)
  Q_PROPERTY(QColor faint MEMBER faint_ NOTIFY coloursChanged FINAL)
  Q_PROPERTY(bool answered READ answered NOTIFY fitChanged FINAL)
  // How well the curve follows the readings, and how long heating takes: sentences.
  Q_PROPERTY(QList<QString> words READ words NOTIFY fitChanged FINAL)
  Q_PROPERTY(QString spoken READ spoken NOTIFY fitChanged FINAL)
  Q_PROPERTY(QString trouble READ trouble NOTIFY fitChanged FINAL)
 public:
  explicit OvenFit(QQuickItem* parent = nullptr);

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  QString path() const { return path_; }
  void setPath(const QString& path);
  bool answered() const { return answered_; }
  QStringList words() const { return words_; }
  QString spoken() const { return words_.join(QLatin1Char(' ')); }
  QString trouble() const { return trouble_; }
  void show(const v1::FitOvenResponse& fit);

  void paint(QPainter* painter) override;

 Q_SIGNALS:
  void sourceChanged();
  void coloursChanged();
  void fitChanged();

 private:
  const v1::Oven* oven() const;
  void ask();
  bool fahrenheit() const;

  QPointer<Draft> draft_;
  QString path_, trouble_;
  QColor ink_, line_, faint_;
  bool answered_ = false;
  v1::FitOvenResponse fit_;
  std::string askedFor_;
  QStringList words_;
  QTimer timer_;
};

}  // namespace suppertide
