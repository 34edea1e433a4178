// A recipe as it is here, in another size: asked of the server whenever the size or the recipe changes.
#pragma once

#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>
#include <QtQml/qqmlregistration.h>

#include <vector>

#include "client/kitchen/draft.h"
#include "client/link/session.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class ScaledLines : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY draftChanged REQUIRED FINAL)
  // Adult portions wanted; 0: nothing is asked.
  Q_PROPERTY(double servings READ servings WRITE setServings NOTIFY servingsChanged FINAL)
  // "1.5 times the recipe, 3 pieces of 880 g".
  Q_PROPERTY(QString headline READ headline NOTIFY answered FINAL)
  Q_PROPERTY(QList<QString> bakes READ bakes NOTIFY answered FINAL)
  Q_PROPERTY(QString trouble READ trouble NOTIFY answered FINAL)
  Q_PROPERTY(int count READ count NOTIFY answered FINAL)
 public:
  enum Role { NameRole = Qt::UserRole, ShownRole, NoteRole };

  explicit ScaledLines(QObject* parent = nullptr);

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  double servings() const { return servings_; }
  void setServings(double servings);
  QString headline() const { return headline_; }
  QStringList bakes() const { return bakes_; }
  QString trouble() const { return trouble_; }
  int count() const { return rowCount(); }
  void show(const v1::ScaledRecipe& scaled);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void draftChanged();
  void servingsChanged();
  void answered();

 private:
  struct Row {
    QString id, name, shown, note;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  void ask();
  QString bakeText(const v1::ScaledBake& bake) const;

  QPointer<Draft> draft_;
  double servings_ = 0;
  QString headline_, trouble_;
  QStringList bakes_;
  std::vector<Row> rows_;
  QTimer timer_;
};

}  // namespace suppertide
