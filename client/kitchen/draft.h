// One document as somebody here is changing it, beside the version it was begun from.
//
// A draft lives until it is saved or thrown away, whatever is shown meanwhile. The server
// is asked after each change what is wrong with it; what it says is kept by field path.
// Saving hands it to the session, which keeps it on disk until the server has it; what the
// server refuses comes back as a draft.
// When somebody else writes the same document, fields that only they changed are taken
// over; a field that both changed is in clash until somebody says which version holds.
#pragma once

#include <QtCore/qhash.h>
#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>
#include <QtQml/qqmlregistration.h>

#include <functional>
#include <vector>

#include "absl/status/status.h"
#include "client/kitchen/document_kind.h"
#include "client/session/household_session.h"

namespace suppertide {

class Draft : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("opened by a KitchenDesk")
  Q_PROPERTY(suppertide::Document::Kind kind READ kind CONSTANT FINAL)
  Q_PROPERTY(QString documentId READ documentId CONSTANT FINAL)
  Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
  // Not yet stored by the server.
  Q_PROPERTY(bool fresh READ fresh NOTIFY changed FINAL)
  Q_PROPERTY(bool dirty READ dirty NOTIFY changed FINAL)
  // Only hosts change documents; others read them here.
  Q_PROPERTY(bool editable READ editable NOTIFY editableChanged FINAL)
  Q_PROPERTY(bool undoable READ undoable NOTIFY changed FINAL)
  // Saved here, and not yet taken by the server.
  Q_PROPERTY(bool waiting READ waiting NOTIFY stateChanged FINAL)
  // What the server found when it last looked.
  Q_PROPERTY(int problemCount READ problemCount NOTIFY problemsChanged FINAL)
  // Of the document as a whole: refused, not reached, deleted by somebody.
  Q_PROPERTY(QString trouble READ trouble NOTIFY stateChanged FINAL)
  // The fields in clash, and whose the other version is.
  Q_PROPERTY(QList<QString> clashes READ clashes NOTIFY changed FINAL)
  Q_PROPERTY(QString otherWriter READ otherWriter NOTIFY changed FINAL)
 public:
  // `base` null: a new document. `mine` null: nothing changed yet.
  Draft(HouseholdSession* session, Document::Kind kind, DocumentPtr base, DocumentPtr mine,
        QObject* parent = nullptr);

  Document::Kind kind() const { return kind_; }
  QString documentId() const { return QString::fromStdString(idOf(*mine_)); }
  QString name() const { return QString::fromStdString(nameOf(*mine_)); }
  bool fresh() const { return base_ == nullptr; }
  bool dirty() const { return fresh() || !changedFields_.isEmpty(); }
  bool editable() const { return session_ != nullptr && session_->mayHost(); }
  bool undoable() const { return !past_.empty(); }
  bool waiting() const { return session_ != nullptr && session_->waits(documentId()); }
  int problemCount() const { return static_cast<int>(problems_.size()); }
  QString trouble() const { return trouble_; }
  QStringList clashes() const { return clashes_.keys(); }
  QString otherWriter() const { return otherWriter_; }

  const google::protobuf::Message& document() const { return *mine_; }
  // Null: new.
  const google::protobuf::Message* base() const { return base_.get(); }
  HouseholdSession* session() const { return session_; }

  // What is wrong at exactly this path, or below it as well.
  QString problem(const QString& path) const { return problems_.value(path); }
  Q_INVOKABLE int problemsBelow(const QString& path) const;
  // Those at paths that no field on the page shows are told together, the worst first.
  Q_INVOKABLE QString firstProblem() const;

  // Changes to the same `place` one after the other are undone together; an empty one always by itself.
  void edit(const QString& place, const std::function<void(google::protobuf::Message&)>& change);
  Q_INVOKABLE void undo();
  // Back to what is stored.
  Q_INVOKABLE void revert();
  Q_INVOKABLE void save();
  // Of a field in clash: which version holds.
  Q_INVOKABLE void keepMine(const QString& field);
  Q_INVOKABLE void takeTheirs(const QString& field);
  // A field in clash in words, a line for each part: as it is here, and as somebody else wrote it.
  Q_INVOKABLE QString mineText(const QString& field) const;
  Q_INVOKABLE QString theirText(const QString& field) const;
  // What is stored now; null: somebody deleted it.
  void follow(const google::protobuf::Message* stored);
  // The server refused this request to create or update it: what it was to be is as if it had not been
  // saved; fields that were changed again since stay as they are.
  void takeBack(const google::protobuf::Message& request, const absl::Status& why);

  // How long after the last change the server is asked.
  static constexpr int kCheckAfterMs = 250;

 Q_SIGNALS:
  void changed();
  void problemsChanged();
  void stateChanged();
  void editableChanged();
  void saved();

 private:
  void becameDifferent();
  void check();
  void checked(const absl::Status& status, int asked);
  void tellProblems(const absl::Status& status);
  void setTrouble(const QString& text);
  bool worthChecking() const;
  bool online() const;

  QPointer<HouseholdSession> session_;
  Document::Kind kind_;
  DocumentPtr base_;
  DocumentPtr mine_;
  QStringList changedFields_;
  QHash<QString, bool> clashes_;
  QString otherWriter_;
  QHash<QString, QString> problems_;
  QString trouble_;
  std::vector<std::string> past_;  // serialised, oldest first
  QString lastPlace_;
  QTimer checkTimer_;
  int edits_ = 0;
  int checkedEdits_ = -1;  // those that problems_ is about
};

}  // namespace suppertide
