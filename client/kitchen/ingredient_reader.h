// Free text lines read into ingredients: typed or pasted, read by the server as one types,
// shown with everything that is unsure, and added only when a person says so.
#pragma once

#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>
#include <QtQml/qqmlregistration.h>

#include <vector>

#include "client/kitchen/draft.h"
#include "client/link/session.h"
#include "client/ui/difference_model.h"

namespace suppertide {

// What is unsure about a line, a sentence for people.
QString doubtSentence(v1::LineDoubt doubt);
// The ingredient that a line says. Without a mass the volume or count stays; without both: to taste.
v1::Ingredient ingredientOf(const v1::ParsedIngredient& parsed);

class IngredientReader : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft MEMBER draft_ NOTIFY draftChanged REQUIRED FINAL)
  Q_PROPERTY(QString text READ text WRITE setText NOTIFY textChanged FINAL)
  Q_PROPERTY(int count READ count NOTIFY readChanged FINAL)
  // Lines with something unsure.
  Q_PROPERTY(int doubtfulCount READ doubtfulCount NOTIFY readChanged FINAL)
  // What is shown answers what is typed.
  Q_PROPERTY(bool upToDate READ upToDate NOTIFY readChanged FINAL)
  Q_PROPERTY(QString trouble READ trouble NOTIFY readChanged FINAL)
 public:
  enum Role { LineRole = Qt::UserRole, AmountRole, NameRole, DoubtsRole, ContentsRole };

  explicit IngredientReader(QObject* parent = nullptr);

  QString text() const { return text_; }
  void setText(const QString& text);
  int count() const { return rowCount(); }
  int doubtfulCount() const;
  bool upToDate() const { return shownText_ == text_; }
  QString trouble() const { return trouble_; }

  // Adds what is shown to the draft's ingredients and empties the text.
  Q_INVOKABLE void addAll();
  // As the server answers; for tests.
  void show(const QString& text, std::vector<v1::ParsedIngredient> parsed);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void draftChanged();
  void textChanged();
  void readChanged();

 private:
  struct Row {
    QString id, line, amount, name, doubts, contents;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  void ask();

  QPointer<Draft> draft_;
  QString text_, shownText_, trouble_;
  std::vector<v1::ParsedIngredient> parsed_;
  std::vector<Row> rows_;
  QTimer askTimer_;
};

}  // namespace suppertide
