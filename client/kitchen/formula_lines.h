// A bread's formula as it is typed: grams and baker's percentages of each line side by side.
//
// What one change makes of all other figures is worked out by the server (WorkOutDough): while
// an answer is on its way, further changes wait and are then asked together, so no figure here is
// ever of another formula than its neighbours. Figures of a formula that the server refuses are
// the last good ones, and `trouble` says why.
#pragma once

#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include <vector>

#include "client/kitchen/draft.h"
#include "client/link/session.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class FormulaLines : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY draftChanged REQUIRED FINAL)
  Q_PROPERTY(int count READ count NOTIFY figuresChanged FINAL)
  // The draft is a bread.
  Q_PROPERTY(bool bread READ bread NOTIFY figuresChanged FINAL)
  // Of the whole making; all 0 before the first answer.
  Q_PROPERTY(double flourGrams READ flourGrams NOTIFY figuresChanged FINAL)
  Q_PROPERTY(double doughGrams READ doughGrams NOTIFY figuresChanged FINAL)
  Q_PROPERTY(double hydration READ hydration NOTIFY figuresChanged FINAL)
  Q_PROPERTY(double prefermented READ prefermented NOTIFY figuresChanged FINAL)
  Q_PROPERTY(double prefermentedGrams READ prefermentedGrams NOTIFY figuresChanged FINAL)
  Q_PROPERTY(double salt READ salt NOTIFY figuresChanged FINAL)
  Q_PROPERTY(double wholeGrain READ wholeGrain NOTIFY figuresChanged FINAL)
  // What is weighed and mixed by itself, a line each: "levain: starter 26 g, flour 130 g, water 130 g".
  Q_PROPERTY(QString parts READ parts NOTIFY figuresChanged FINAL)
  Q_PROPERTY(QString trouble READ trouble NOTIFY figuresChanged FINAL)
  Q_PROPERTY(bool waiting READ waiting NOTIFY figuresChanged FINAL)
 public:
  enum Role { NameRole = Qt::UserRole, RolePlaceRole, PercentRole, GramsRole, RowPathRole };

  explicit FormulaLines(QObject* parent = nullptr) : DifferenceModel(parent) {}

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  int count() const { return rowCount(); }
  bool bread() const;
  double flourGrams() const { return answer_.flour_mass_g(); }
  double doughGrams() const { return answer_.dough_mass_g(); }
  double hydration() const { return answer_.hydration_percent(); }
  double prefermented() const { return answer_.prefermented_flour_percent(); }
  double prefermentedGrams() const;
  double salt() const { return answer_.salt_percent(); }
  double wholeGrain() const { return answer_.whole_grain_percent(); }
  QString parts() const;
  QString trouble() const { return trouble_; }
  bool waiting() const { return asking_; }

  Q_INVOKABLE void setPercent(int row, double percent);
  Q_INVOKABLE void setGrams(int row, double grams);
  Q_INVOKABLE void setFlour(double grams);
  Q_INVOKABLE void setDough(double grams);
  Q_INVOKABLE void setPieces(int count, double grams);
  Q_INVOKABLE void addLine(const QString& name, int role, double percent);
  Q_INVOKABLE void removeLine(int row);
  // Makes the recipe a bread, with a plain yeasted dough to begin from; or no bread any more.
  Q_INVOKABLE void beginBread();
  Q_INVOKABLE void endBread();

  // As the server answers; for tests.
  void show(const v1::WorkOutDoughResponse& answer);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void draftChanged();
  void figuresChanged();
  // Percent and grams of what was just typed are in, too.
  void workedOut();

 private:
  struct Row {
    QString name, path;
    int role = 0;
    double percent = 0;
    double grams = 0;
    QString id;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  const v1::Recipe* recipe() const;
  void followDraft();
  void add(v1::FormulaEdit edit);
  void ask();
  void answered(const absl::StatusOr<v1::WorkOutDoughResponse>& answer, const std::string& askedOf);
  void refresh();
  std::string lineName(int row) const;

  QPointer<Draft> draft_;
  std::vector<Row> rows_;
  v1::WorkOutDoughResponse answer_;
  std::string shownFor_;                // the formula that answer_ is of, serialised
  v1::WorkOutDoughRequest asked_;       // on its way
  std::vector<v1::FormulaEdit> edits_;  // not yet asked
  v1::DoughAmount amount_;              // not yet asked
  bool asking_ = false;
  QString trouble_;
};

}  // namespace suppertide
