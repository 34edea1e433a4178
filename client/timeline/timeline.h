// One event's line of time: what is shown, how closely, and what is chosen.
//
// Knows no clock and no server: it is told both. All of it belongs to the thread
// of the user interface.
#pragma once

#include <QtCore/qtimer.h>

#include <memory>
#include <optional>

#include "client/timeline/axis_models.h"
#include "client/timeline/lane_model.h"
#include "client/timeline/picture.h"
#include "client/timeline/time_scale.h"
#include "client/words/step_words.h"

namespace suppertide {

class Timeline : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::LaneModel* lanes READ lanes CONSTANT FINAL)
  Q_PROPERTY(suppertide::TickModel* ticks READ ticks CONSTANT FINAL)
  Q_PROPERTY(suppertide::CourseModel* courses READ courses CONSTANT FINAL)
  Q_PROPERTY(QString title READ title NOTIFY pictureChanged FINAL)
  Q_PROPERTY(QString subtitle READ subtitle NOTIFY pictureChanged FINAL)
  Q_PROPERTY(int courseRowCount READ courseRowCount NOTIFY pictureChanged FINAL)
  Q_PROPERTY(bool hasPlan READ hasPlan NOTIFY pictureChanged FINAL)
  // Pixels that the line of time is wide; told by the view.
  Q_PROPERTY(double viewWidth READ viewWidth WRITE setViewWidth NOTIFY scaleChanged FINAL)
  Q_PROPERTY(double pixelsPerMinute READ pixelsPerMinute NOTIFY scaleChanged FINAL)
  // The x of minute 0 in the view.
  Q_PROPERTY(double offset READ offset NOTIFY scaleChanged FINAL)
  Q_PROPERTY(QString rangeText READ rangeText NOTIFY scaleChanged FINAL)
  // The day at the left edge, and the pixels until the next one begins.
  Q_PROPERTY(QString firstDayText READ firstDayText NOTIFY scaleChanged FINAL)
  Q_PROPERTY(double firstDayRoom READ firstDayRoom NOTIFY scaleChanged FINAL)
  // The stretch, in minutes, for which rows and curves are made: the view and more at both sides.
  Q_PROPERTY(double windowStart READ windowStart NOTIFY windowChanged FINAL)
  Q_PROPERTY(double windowLength READ windowLength NOTIFY windowChanged FINAL)
  Q_PROPERTY(bool nowKnown READ nowKnown NOTIFY nowChanged FINAL)
  Q_PROPERTY(double nowMinute READ nowMinute NOTIFY nowChanged FINAL)
  Q_PROPERTY(QString nowText READ nowText NOTIFY nowChanged FINAL)
  // The chosen step; its id is empty when none is.
  Q_PROPERTY(suppertide::StepDetails details READ details NOTIFY detailsChanged FINAL)
  Q_PROPERTY(bool detailsOpen READ detailsOpen NOTIFY detailsChanged FINAL)
  // Something else than the plan is shown; and set against it, with where its bars stood.
  Q_PROPERTY(bool previewing READ previewing NOTIFY pictureChanged FINAL)
  Q_PROPERTY(bool comparing READ comparing NOTIFY pictureChanged FINAL)
  // Steps and dishes that the plan leaves out, in a sentence; empty: none.
  Q_PROPERTY(QString leftOutText READ leftOutText NOTIFY pictureChanged FINAL)
  // The step that is being moved, by pointer or key; empty: none. It stands at movingStart of the
  // plan and is held so many minutes later (+) or earlier (-).
  Q_PROPERTY(QString movingId READ movingId NOTIFY movingChanged FINAL)
  Q_PROPERTY(double movingStart READ movingStart NOTIFY movingChanged FINAL)
  Q_PROPERTY(double movingMinutes READ movingMinutes NOTIFY movingChanged FINAL)
  // "Sat 15:20, 15 min later".
  Q_PROPERTY(QString movingText READ movingText NOTIFY movingChanged FINAL)
 public:
  explicit Timeline(QObject* parent = nullptr);
  ~Timeline() override;

  // Shows the event, or nothing when the replica has none of that id. Steps that
  // differ from what was shown are marked for a moment, and `changed` is told.
  // `changedBy`: name of who did it, empty for nobody in particular.
  void show(const std::shared_ptr<const link::Replica>& replica, const std::string& eventId,
            const QString& changedBy = {});
  // Shows another household's plan of the same event in place of the stored one until null is
  // given. `comparing`: moved steps are marked and leave a ghost where they stood.
  void preview(const std::shared_ptr<const link::Replica>& replica, bool comparing);
  void setNow(Instant now);

  LaneModel* lanes() const { return lanes_; }
  TickModel* ticks() const { return ticks_; }
  CourseModel* courses() const { return courses_; }
  QString title() const { return picture_.title; }
  QString subtitle() const { return picture_.subtitle; }
  int courseRowCount() const { return picture_.courses.size() > 1 ? 2 : 1; }
  bool hasPlan() const { return picture_.hasPlan; }
  double viewWidth() const { return viewWidth_; }
  void setViewWidth(double width);
  double pixelsPerMinute() const { return scale_.pixelsPerMinute(); }
  double offset() const { return scale_.toX(0); }
  QString rangeText() const;
  QString firstDayText() const;
  double firstDayRoom() const;
  double windowStart() const { return windowStart_; }
  double windowLength() const { return windowLimit_ - windowStart_; }
  bool nowKnown() const { return now_.has_value(); }
  double nowMinute() const;
  QString nowText() const;
  StepDetails details() const { return details_; }
  bool detailsOpen() const { return !details_.id.isEmpty(); }
  bool previewing() const { return previewed_ != nullptr; }
  bool comparing() const { return previewing() && comparing_; }
  QString leftOutText() const { return picture_.leftOut; }
  QString movingId() const { return movingId_; }
  double movingStart() const { return movingStart_; }
  double movingMinutes() const { return movingMinutes_; }
  QString movingText() const;
  const std::vector<DaySpan>& nights() const { return nights_; }
  const std::vector<TickMark>& marks() const { return marks_; }
  const TimeScale& scale() const { return scale_; }

  // About x in the view.
  Q_INVOKABLE void zoomBy(double factor, double anchorX);
  Q_INVOKABLE void zoomIn();  // about the middle
  Q_INVOKABLE void zoomOut();
  Q_INVOKABLE void panBy(double pixels);    // positive: later
  Q_INVOKABLE void panByPart(double part);  // of the view
  Q_INVOKABLE void fitAll();
  Q_INVOKABLE void showNow();      // at a kitchen's closeness; the plan's start when it is not near now
  Q_INVOKABLE void showServing();  // the hours before the first serving
  Q_INVOKABLE void reveal(double start, double length);
  Q_INVOKABLE void choose(const QString& stepId);
  Q_INVOKABLE void closeDetails();

  // A pointer takes hold of a step, drags it by pixels from where it was taken, and lets go.
  Q_INVOKABLE void grab(const QString& stepId);
  Q_INVOKABLE void dragBy(double pixels);
  Q_INVOKABLE void drop();
  // The keyboard's twin: moves the chosen step on. Nothing happens when none is chosen.
  Q_INVOKABLE void moveChosen(double minutes);
  // Asks what the move would mean; tells moveWanted.
  Q_INVOKABLE void askMove();
  // Lets the step stand where it stands; tells moveLeft.
  Q_INVOKABLE void leaveMove();
  // The move is over, whatever came of it; tells nothing.
  Q_INVOKABLE void endMove();

 public Q_SLOTS:
  // Before its time: the marks of the last change go.
  void endHighlight();

 Q_SIGNALS:
  void pictureChanged();
  void scaleChanged();
  void windowChanged();
  void nowChanged();
  void detailsChanged();
  // The plan shown has become another one; a sentence for people.
  void changed(const QString& notice);
  void movingChanged();
  // What if the step began so much later (+) or earlier (-) than in the plan?
  void moveWanted(const QString& stepId, double minutesLater);
  void moveLeft();
  // The move is to be made as it was answered.
  void moveAccepted();

 private:
  void display(Picture picture);
  Picture previewPicture();
  void showGhosts();
  void mark(Picture& picture, const QSet<QString>& moved) const;
  QString noticeFor(const QSet<QString>& moved, const Picture& next, const QString& changedBy) const;
  void setMoving(const QString& stepId, double minutes);
  void setScale(const TimeScale& scale);
  void updateWindow();
  BarView barView() const;
  void follow();
  void makeMore();
  void layOut();
  void keepBars();
  void showFirst();
  double longestSpan() const;
  double closeSpan() const;
  void refreshDetails();
  TimeScale revealingChosen(const TimeScale& scale) const;

  LaneModel* lanes_;
  TickModel* ticks_;
  CourseModel* courses_;
  QTimer highlight_;
  QTimer rest_;    // a drag that pauses asks
  QTimer settle_;  // the view has stood still
  QTimer more_;    // bars that are still to be made

  std::shared_ptr<const PlanView> view_;    // of what is shown; null: nothing to show
  std::shared_ptr<const PlanView> stored_;  // of the household's own plan
  std::shared_ptr<const link::Replica> previewed_;
  bool comparing_ = false;
  QSet<QString> moved_;  // by the last change, for a moment
  std::string eventId_;
  std::optional<Instant> base_;
  Picture picture_;        // shown
  Picture storedPicture_;  // of the household's own plan
  TimeScale scale_;
  double viewWidth_ = 0;
  bool placed_ = false;  // the view has been put somewhere for this event
  double windowStart_ = 0;
  double windowLimit_ = 0;
  double marksEvery_ = 0;  // minutes; 0: they are to be made
  std::vector<TickMark> marks_;
  std::vector<DaySpan> nights_;
  std::optional<Instant> now_;
  StepDetails details_;
  QString movingId_;
  double movingStart_ = 0;
  double movingMinutes_ = 0;
  double grabbedAt_ = 0;  // movingMinutes_ when the pointer took hold
};

}  // namespace suppertide
