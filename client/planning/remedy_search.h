// What would help when not all wishes can be had: looked for, previewed, applied.
//
// Nothing is changed before apply(). Choosing a remedy makes it a preview, which the timeline shows.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include <atomic>
#include <memory>

#include "client/planning/clash_model.h"
#include "client/planning/documents.h"
#include "client/planning/move_model.h"
#include "client/planning/remedy_model.h"
#include "client/session/household_session.h"

namespace suppertide {

class RemedySearch : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by Planning")
  Q_PROPERTY(suppertide::ClashModel* clashes READ clashes CONSTANT FINAL)
  Q_PROPERTY(suppertide::RemedyModel* remedies READ remedies CONSTANT FINAL)
  // What the chosen remedy moves.
  Q_PROPERTY(suppertide::MoveModel* moves READ moves CONSTANT FINAL)
  // The clash panel is wanted.
  Q_PROPERTY(bool open READ isOpen NOTIFY changed FINAL)
  Q_PROPERTY(bool running READ running NOTIFY changed FINAL)
  // How far the search is, or how it ended.
  Q_PROPERTY(QString progress READ progress NOTIFY changed FINAL)
  // Its number; 0: none.
  Q_PROPERTY(int chosen READ chosen NOTIFY changed FINAL)
  Q_PROPERTY(bool applying READ applying NOTIFY changed FINAL)
  // Why the chosen one cannot be applied here; empty: it can.
  Q_PROPERTY(QString obstacle READ obstacle NOTIFY changed FINAL)
 public:
  explicit RemedySearch(HouseholdSession& session, QObject* parent = nullptr);
  ~RemedySearch() override;

  // Opens the panel on the plan's own clashes and looks for remedies.
  Q_INVOKABLE void begin();
  Q_INVOKABLE void choose(int number);  // 0: none
  Q_INVOKABLE void apply();
  // Ends the search and drops what was chosen.
  Q_INVOKABLE void close();
  // As told by the server; also for tests without one.
  void take(const v1::FindRemediesResponse& message);

  ClashModel* clashes() const { return clashes_; }
  RemedyModel* remedies() const { return remedies_; }
  MoveModel* moves() const { return moves_; }
  bool isOpen() const { return open_; }
  bool running() const { return running_; }
  QString progress() const { return progress_; }
  int chosen() const { return chosen_; }
  bool applying() const { return applying_; }
  QString obstacle() const;
  // The household with the chosen remedy; null: none is chosen.
  const Household& preview() const { return preview_; }

 Q_SIGNALS:
  void changed();
  void previewChanged();
  // To be taken back: what was before apply() and what it made, in which revision of the household.
  void applied(const suppertide::Household& before, const suppertide::Household& after, const QString& what,
               qint64 revision);

 private:
  void finish(const absl::Status& status);
  void setPreview(Household preview);
  void householdCame();

  HouseholdSession& session_;
  ClashModel* clashes_;
  RemedyModel* remedies_;
  MoveModel* moves_;
  std::shared_ptr<std::atomic<bool>> leave_;  // shared with the thread that follows the search
  Household asked_;                           // the household that the search is about
  std::shared_ptr<const PlanView> view_;      // of asked_
  google::protobuf::RepeatedPtrField<v1::Clash> told_;
  bool open_ = false;
  bool running_ = false;
  bool applying_ = false;
  int chosen_ = 0;
  QString progress_;
  Household preview_;
};

}  // namespace suppertide
