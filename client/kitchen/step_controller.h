// One step of a recipe beyond its plain fields: its kind and what goes with it, the things it
// needs, and the other steps it comes after.
#pragma once

#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include <vector>

#include "client/kitchen/draft.h"
#include "client/ui/difference_model.h"

namespace suppertide {

// The other steps of the recipe, and which this one comes after.
class StepController : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY sourceChanged REQUIRED FINAL)
  Q_PROPERTY(QString path READ path WRITE setPath NOTIFY sourceChanged REQUIRED FINAL)
  // v1::StepKind.
  Q_PROPERTY(int kind READ kind NOTIFY stepChanged FINAL)
  Q_PROPERTY(bool bread READ bread NOTIFY stepChanged FINAL)
  // What the household's kitchens have few of, and which of it the step takes.
  Q_PROPERTY(QList<QString> equipment READ equipment NOTIFY stepChanged FINAL)
  Q_PROPERTY(QList<int> usedEquipment READ usedEquipment NOTIFY stepChanged FINAL)
  // It says itself what comes before it; otherwise the step listed before does.
  Q_PROPERTY(bool ordered READ ordered NOTIFY stepChanged FINAL)
 public:
  // Gaps in minutes; -1: none is said.
  enum Role { TitleRole = Qt::UserRole, MarkedRole, FromStartRole, LeastRole, MostRole };

  explicit StepController(QObject* parent = nullptr) : DifferenceModel(parent) {}

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  QString path() const { return path_; }
  void setPath(const QString& path);
  int kind() const;
  bool bread() const;
  QStringList equipment() const;
  QList<int> usedEquipment() const;
  bool ordered() const;

  // Adds and takes away what goes with a kind: a bake's temperature, a ferment's stage.
  Q_INVOKABLE void setKind(int kind);
  Q_INVOKABLE void toggleEquipment(int index);
  Q_INVOKABLE void toggleAfter(int row);
  Q_INVOKABLE void setFromStart(int row, bool fromStart);
  // -1: not said.
  Q_INVOKABLE void setGaps(int row, double least, double most);
  // A new step at the end of the recipe; returns its row, -1 when the draft is no recipe.
  Q_INVOKABLE static int addStep(suppertide::Draft* draft, const QString& title, int kind, double minutes);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void sourceChanged();
  void stepChanged();

 private:
  struct Row {
    QString id, title;
    bool marked = false;
    bool fromStart = false;
    double least = -1;
    double most = -1;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  const v1::Step* step() const;
  std::vector<std::pair<std::string, QString>> things() const;
  void editStep(const QString& place, const std::function<void(v1::Step&)>& change);
  void editAfter(int row, const QString& place, const std::function<void(v1::After&)>& change);
  void refresh();

  QPointer<Draft> draft_;
  QString path_;
  std::vector<Row> rows_;
};

}  // namespace suppertide
