// The members of one list of a draft: `DraftRows { draft; path: "steps" }`.
#pragma once

#include <QtCore/qpointer.h>

#include <vector>

#include "client/kitchen/draft.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class DraftRows : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY draftChanged REQUIRED FINAL)
  Q_PROPERTY(QString path READ path WRITE setPath NOTIFY pathChanged REQUIRED FINAL)
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  // `rowPath`: the member's own, "steps[2]". `title` and `detail`: what it is in short. `problems`: how many
  // in it.
  enum Role { RowPathRole = Qt::UserRole, TitleRole, DetailRole, SymbolRole, ProblemsRole };

  explicit DraftRows(QObject* parent = nullptr) : DifferenceModel(parent) {}

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  QString path() const { return path_; }
  void setPath(const QString& path);
  int count() const { return rowCount(); }

  // A usual one at the end; returns its row, -1 when there is no such list.
  Q_INVOKABLE int add();
  Q_INVOKABLE void remove(int row);
  Q_INVOKABLE void moveBy(int row, int places);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void draftChanged();
  void pathChanged();
  void countChanged();

 private:
  struct Row {
    QString id, path, title, detail;
    int symbol = 0;
    int problems = 0;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  void refresh();

  QPointer<Draft> draft_;
  QString path_;
  std::vector<Row> rows_;
};

}  // namespace suppertide
