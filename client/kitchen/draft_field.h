// One field of a draft, for a control that shows and changes it: `DraftField { draft; path }`.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/kitchen/draft.h"
#include "client/kitchen/field_path.h"

namespace suppertide {

class DraftField : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::Draft* draft READ draft WRITE setDraft NOTIFY draftChanged REQUIRED FINAL)
  // As the server names fields: "ovens[0].displayName".
  Q_PROPERTY(QString path READ path WRITE setPath NOTIFY pathChanged REQUIRED FINAL)
  // What the field holds, by its type; see FieldPath. Setting changes the draft.
  Q_PROPERTY(bool present READ present NOTIFY valueChanged FINAL)
  Q_PROPERTY(double number READ number WRITE setNumber NOTIFY valueChanged FINAL)
  Q_PROPERTY(QString text READ text WRITE setText NOTIFY valueChanged FINAL)
  Q_PROPERTY(bool flag READ flag WRITE setFlag NOTIFY valueChanged FINAL)
  Q_PROPERTY(int choice READ choice WRITE setChoice NOTIFY valueChanged FINAL)
  Q_PROPERTY(QList<int> marks READ marks NOTIFY valueChanged FINAL)
  Q_PROPERTY(int count READ count NOTIFY valueChanged FINAL)
  // What is wrong with it, and how much is wrong with it and what is in it.
  Q_PROPERTY(QString problem READ problem NOTIFY problemChanged FINAL)
  Q_PROPERTY(int problemsBelow READ problemsBelow NOTIFY problemChanged FINAL)
 public:
  using QObject::QObject;

  Draft* draft() const { return draft_; }
  void setDraft(Draft* draft);
  QString path() const { return path_; }
  void setPath(const QString& path);

  bool present() const { return read().present(); }
  double number() const { return read().number(); }
  void setNumber(double value);
  QString text() const { return read().text(); }
  void setText(const QString& value);
  bool flag() const { return read().flag(); }
  void setFlag(bool value);
  int choice() const { return read().choice(); }
  void setChoice(int value);
  QList<int> marks() const { return read().marks(); }
  int count() const { return read().count(); }
  QString problem() const;
  int problemsBelow() const;

  Q_INVOKABLE void toggleMark(int value);
  // Leaves it out.
  Q_INVOKABLE void clear();

 Q_SIGNALS:
  void draftChanged();
  void pathChanged();
  void valueChanged();
  void problemChanged();

 private:
  FieldPath read() const;

  QPointer<Draft> draft_;
  QString path_;
};

}  // namespace suppertide
