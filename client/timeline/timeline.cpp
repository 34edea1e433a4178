#include "client/timeline/timeline.h"

#include <algorithm>
#include <cmath>

#include "client/timeline/picture_builder.h"
#include "client/timeline/picture_difference.h"

namespace suppertide {
namespace {

constexpr double kLabelStart = 8;  // pixels: a day that begins before them is the one at the edge
constexpr double kZoomStep = 1.5;
constexpr double kTickPixels = 76;      // room for "12:30 AM"
constexpr double kPixelsPerHour = 96;   // when shown for work: a quarter of an hour is a finger wide
constexpr double kWindowGrowth = 1.5;   // a window serves until the view is so much longer or shorter
constexpr double kPanMargin = 12 * 60;  // minutes the middle of the view may leave the plan
constexpr int kHighlightMs = 8000;
constexpr int kSettleMs = 90;
constexpr int kFrameMs = 16;
constexpr int kBarsAFrame = 1;   // made in about a millisecond
constexpr int kRestMs = 250;     // of a drag, before it asks
constexpr double kMoveStep = 5;  // minutes

}  // namespace

Timeline::Timeline(QObject* parent)
    : QObject(parent),
      lanes_(new LaneModel(this)),
      ticks_(new TickModel(this)),
      courses_(new CourseModel(this)) {
  highlight_.setSingleShot(true);
  highlight_.setInterval(kHighlightMs);
  connect(&highlight_, &QTimer::timeout, this, &Timeline::endHighlight);
  rest_.setSingleShot(true);
  rest_.setInterval(kRestMs);
  connect(&rest_, &QTimer::timeout, this, &Timeline::askMove);
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMs);
  connect(&settle_, &QTimer::timeout, this, &Timeline::layOut);
  more_.setSingleShot(true);
  more_.setInterval(kFrameMs);
  connect(&more_, &QTimer::timeout, this, &Timeline::makeMore);
}

Timeline::~Timeline() = default;

void Timeline::show(const std::shared_ptr<const link::Replica>& replica, const std::string& eventId,
                    const QString& changedBy) {
  const bool sameEvent = eventId == eventId_ && stored_ != nullptr;
  eventId_ = eventId;
  if (replica == nullptr || replica->events.count(eventId) == 0) {
    stored_ = view_ = nullptr;
    previewed_ = nullptr;
    base_.reset();
    storedPicture_ = Picture();
    placed_ = false;
    endMove();
    display(Picture());
    return;
  }
  stored_ = std::make_shared<const PlanView>(replica, eventId);
  if (!sameEvent || !base_) base_ = baseFor(*stored_);
  if (!sameEvent) {
    placed_ = false;
    previewed_ = nullptr;
    endMove();
  }
  Picture picture = PictureBuilder(*stored_, *base_).build();
  QString notice;
  if (sameEvent && storedPicture_.hasPlan && picture.hasPlan) {
    const QSet<QString> moved = movedSteps(storedPicture_, picture);
    notice = noticeFor(moved, picture, changedBy);
    if (!notice.isEmpty()) {
      moved_ = moved;
      highlight_.start();
    }
  }
  storedPicture_ = std::move(picture);
  preview(previewed_, comparing_);
  if (!notice.isEmpty()) Q_EMIT changed(notice);
}

void Timeline::preview(const std::shared_ptr<const link::Replica>& replica, bool comparing) {
  if (stored_ == nullptr) return;
  previewed_ = replica;
  comparing_ = comparing;
  if (replica == nullptr || replica->events.count(eventId_) == 0) {
    previewed_ = nullptr;
    view_ = stored_;
    Picture picture = storedPicture_;
    mark(picture, moved_);
    display(std::move(picture));
  } else {
    view_ = std::make_shared<const PlanView>(replica, eventId_);
    display(previewPicture());
  }
}

Picture Timeline::previewPicture() {
  Picture picture = PictureBuilder(*view_, *base_).build();
  if (comparing_ && storedPicture_.hasPlan) {
    const QSet<QString> moved = movedSteps(storedPicture_, picture);
    mark(picture, moved);
    addGhosts(storedPicture_, moved, picture);
  }
  return picture;
}

void Timeline::display(Picture picture) {
  if (!picture_.hasPlan) placed_ = false;
  picture_ = std::move(picture);
  lanes_->setLanes(picture_.lanes);
  courses_->setCourses(picture_.courses);
  refreshDetails();
  marksEvery_ = 0;
  if (!placed_) showFirst();
  updateWindow();
  lanes_->setView(barView());
  layOut();
  if (!movingId_.isEmpty()) setMoving(movingId_, movingMinutes_);
  Q_EMIT pictureChanged();
  Q_EMIT scaleChanged();
  Q_EMIT nowChanged();
}

void Timeline::mark(Picture& picture, const QSet<QString>& moved) const {
  for (Lane& lane : picture.lanes) {
    for (StepRow& step : lane.steps) step.moved = moved.contains(step.id);
  }
}

QString Timeline::noticeFor(const QSet<QString>& moved, const Picture& next, const QString& changedBy) const {
  const int gone = goneSteps(storedPicture_, next);
  if (moved.isEmpty() && gone == 0) return {};
  QString what;
  if (moved.size() == 1) {
    const v1::PlannedStep* step = stored_->step(moved.begin()->toStdString());
    what = tr("“%1” moved").arg(step == nullptr ? *moved.begin() : StepWords::title(*step));
  } else if (!moved.isEmpty()) {
    what = tr("%1 steps moved").arg(moved.size());
  } else {
    what = gone == 1 ? tr("1 step gone") : tr("%1 steps gone").arg(gone);
  }
  return changedBy.isEmpty() ? tr("New plan: %1").arg(what)
                             : tr("%1 changed the plan: %2").arg(changedBy, what);
}

void Timeline::endHighlight() {
  highlight_.stop();
  moved_.clear();
  if (comparing()) return;
  mark(picture_, {});
  lanes_->setLanes(picture_.lanes);
}

void Timeline::setNow(Instant now) {
  if (now_ == now) return;
  now_ = now;
  Q_EMIT nowChanged();
}

double Timeline::nowMinute() const {
  return now_ ? minutesBetween(picture_.base, *now_) : 0;
}

QString Timeline::nowText() const {
  return now_ ? picture_.words.clock(*now_) : QString();
}

void Timeline::setViewWidth(double width) {
  if (width == viewWidth_ || width <= 0) return;
  const double middle = scale_.toMinute(viewWidth_ / 2);
  viewWidth_ = width;
  if (!placed_) {
    showFirst();
  } else {
    const TimeScale kept(middle - scale_.span(width) / 2, scale_.pixelsPerMinute());
    scale_ = revealingChosen(kept.zoomedWithin(1, width / 2, width, longestSpan()));
  }
  updateWindow();
  lanes_->setView(barView());
  layOut();
  Q_EMIT scaleChanged();
}

// The panel that tells of a step takes room from the view; the step stays in sight.
TimeScale Timeline::revealingChosen(const TimeScale& scale) const {
  const v1::PlannedStep* step = detailsOpen() ? view_->step(details_.id.toStdString()) : nullptr;
  if (step == nullptr) return scale;
  return scale.revealing(minutesBetween(picture_.base, toInstant(step->start_time())),
                         minutesBetween(picture_.base, toInstant(step->end_time())), viewWidth_);
}

QString Timeline::rangeText() const {
  const Instant start = instantAt(picture_.base, scale_.left());
  const Instant limit = instantAt(picture_.base, scale_.toMinute(viewWidth_));
  const QString from = picture_.words.day(start);
  const QString to = picture_.words.day(limit);
  return from == to ? from : tr("%1 – %2").arg(from, to);
}

QString Timeline::firstDayText() const {
  return picture_.words.day(instantAt(picture_.base, scale_.toMinute(kLabelStart)));
}

double Timeline::firstDayRoom() const {
  for (const TickMark& mark : marks_) {
    if (mark.midnight && scale_.toX(mark.minute) > kLabelStart) return scale_.toX(mark.minute);
  }
  return viewWidth_;
}

double Timeline::longestSpan() const {
  return std::max(TimeScale::kUsualLongestSpan, (picture_.limit - picture_.start) * 1.2);
}

double Timeline::closeSpan() const {
  return viewWidth_ / kPixelsPerHour * 60;
}

void Timeline::setScale(const TimeScale& scale) {
  const TimeScale kept = scale.keptNear(picture_.start - kPanMargin, picture_.limit + kPanMargin, viewWidth_);
  if (kept == scale_) return;
  scale_ = kept;
  placed_ = placed_ || picture_.hasPlan;
  updateWindow();
  follow();
  Q_EMIT scaleChanged();
}

BarView Timeline::barView() const {
  return {scale_.left(), scale_.toMinute(viewWidth_), scale_.pixelsPerMinute()};
}

// While the view moves, a frame makes few bars and lays out few lanes anew.
void Timeline::follow() {
  makeMore();
  if (lanes_->laySome()) settle_.start();
}

void Timeline::makeMore() {
  if (!lanes_->setView(barView(), kBarsAFrame)) more_.start();
}

void Timeline::layOut() {
  settle_.stop();
  lanes_->layAll();
}

void Timeline::keepBars() {
  QSet<QString> ids;
  for (const QString& id : {details_.id, movingId_})
    if (!id.isEmpty()) ids.insert(id);
  lanes_->setKept(ids);
}

// The window is moved on by halves and grows by steps, so that most frames make no mark at all.
void Timeline::updateWindow() {
  if (viewWidth_ <= 0) return;
  const double span = scale_.span(viewWidth_);
  const double unit = std::pow(kWindowGrowth, std::ceil(std::log(span) / std::log(kWindowGrowth)));
  const double start = (std::floor(scale_.left() / unit * 2) - 1) * unit / 2;
  const double limit = start + 2.5 * unit;
  const double marksEvery = tickStep(scale_.pixelsPerMinute(), kTickPixels);
  if (start == windowStart_ && limit == windowLimit_ && marksEvery == marksEvery_) return;
  windowStart_ = start;
  windowLimit_ = limit;
  marksEvery_ = marksEvery;
  marks_ = tickMarks(picture_.base, picture_.words, start, limit, marksEvery);
  nights_ = nightsBetween(picture_.base, picture_.words, start, limit);
  ticks_->setMarks(marks_, picture_.base, picture_.words);
  Q_EMIT windowChanged();
}

void Timeline::showFirst() {
  if (viewWidth_ <= 0 || !picture_.hasPlan) return;
  const bool near = now_ && nowMinute() > picture_.start - kPanMargin && nowMinute() < picture_.limit;
  if (near) {
    showNow();
  } else {
    fitAll();
  }
  placed_ = true;
}

void Timeline::zoomBy(double factor, double anchorX) {
  setScale(scale_.zoomedWithin(factor, anchorX, viewWidth_, longestSpan()));
}

void Timeline::zoomIn() {
  zoomBy(kZoomStep, viewWidth_ / 2);
}

void Timeline::zoomOut() {
  zoomBy(1 / kZoomStep, viewWidth_ / 2);
}

void Timeline::panBy(double pixels) {
  setScale(scale_.panned(pixels));
}

void Timeline::panByPart(double part) {
  panBy(part * viewWidth_);
}

void Timeline::fitAll() {
  if (viewWidth_ <= 0) return;
  setScale(TimeScale::fitting(picture_.start, picture_.limit, viewWidth_));
}

void Timeline::showNow() {
  if (viewWidth_ <= 0) return;
  const double span = closeSpan();
  const bool inPlan =
      now_ && nowMinute() > picture_.start - kPanMargin && nowMinute() < picture_.limit + kPanMargin;
  const double at = inPlan ? nowMinute() : picture_.start;
  setScale(TimeScale(at - span / 5, viewWidth_ / span));
}

void Timeline::showServing() {
  if (viewWidth_ <= 0) return;
  const double span = closeSpan();
  const double at = picture_.courses.empty() ? picture_.limit : picture_.courses.front().minute;
  setScale(TimeScale(at - span * 4 / 5, viewWidth_ / span));
}

void Timeline::reveal(double start, double length) {
  setScale(scale_.revealing(start, start + length, viewWidth_));
}

void Timeline::choose(const QString& stepId) {
  const v1::PlannedStep* step = view_ == nullptr ? nullptr : view_->step(stepId.toStdString());
  const StepDetails next = step == nullptr ? StepDetails() : StepWords(*view_).details(*step);
  if (next == details_) return;
  details_ = next;
  keepBars();
  Q_EMIT detailsChanged();
  if (step == nullptr || viewWidth_ <= 0) return;
  // Chosen from elsewhere it may be out of sight.
  const double start = minutesBetween(picture_.base, toInstant(step->start_time()));
  const double limit = minutesBetween(picture_.base, toInstant(step->end_time()));
  if (limit < scale_.left() || start > scale_.toMinute(viewWidth_)) reveal(start, limit - start);
}

void Timeline::closeDetails() {
  choose({});
}

void Timeline::grab(const QString& stepId) {
  setMoving(stepId, stepId == movingId_ ? movingMinutes_ : 0);
  grabbedAt_ = movingMinutes_;
}

void Timeline::dragBy(double pixels) {
  if (movingId_.isEmpty()) return;
  const double minutes = grabbedAt_ + pixels / pixelsPerMinute();
  const double snapped = std::round(minutes / kMoveStep) * kMoveStep;
  if (snapped == movingMinutes_) return;
  setMoving(movingId_, snapped);
  rest_.start();
}

void Timeline::drop() {
  if (movingId_.isEmpty()) return;
  if (movingMinutes_ == 0) {
    leaveMove();
  } else {
    askMove();
  }
}

void Timeline::moveChosen(double minutes) {
  if (!detailsOpen()) return;
  setMoving(details_.id, (details_.id == movingId_ ? movingMinutes_ : 0) + minutes);
  if (!movingId_.isEmpty()) reveal(movingStart_ + movingMinutes_, kMoveStep);
}

void Timeline::askMove() {
  rest_.stop();
  if (!movingId_.isEmpty()) Q_EMIT moveWanted(movingId_, movingMinutes_);
}

void Timeline::leaveMove() {
  if (movingId_.isEmpty()) return;
  endMove();
  Q_EMIT moveLeft();
}

void Timeline::endMove() {
  rest_.stop();
  if (movingId_.isEmpty()) return;
  movingId_.clear();
  movingMinutes_ = 0;
  keepBars();
  showGhosts();
  Q_EMIT movingChanged();
}

// What has happened cannot be moved.
void Timeline::setMoving(const QString& stepId, double minutes) {
  const v1::PlannedStep* step = stored_ == nullptr ? nullptr : stored_->step(stepId.toStdString());
  if (step == nullptr || stored_->isDone(*step)) return endMove();
  const bool taken = movingId_ != stepId;
  movingId_ = stepId;
  movingStart_ = minutesBetween(storedPicture_.base, toInstant(step->start_time()));
  movingMinutes_ = minutes;
  if (taken) {
    keepBars();
    showGhosts();
  }
  Q_EMIT movingChanged();
}

// A step that is held leaves a ghost before anything was answered.
void Timeline::showGhosts() {
  if (comparing()) return;
  addGhosts(storedPicture_, movingId_.isEmpty() ? QSet<QString>() : QSet<QString>{movingId_}, picture_);
  lanes_->setLanes(picture_.lanes);
}

QString Timeline::movingText() const {
  if (movingId_.isEmpty()) return {};
  const QString when = picture_.words.dayClock(instantAt(picture_.base, movingStart_ + movingMinutes_));
  const QString length = picture_.words.length(movingMinutes_);
  if (movingMinutes_ == 0) return when;
  return movingMinutes_ > 0 ? tr("%1, %2 later").arg(when, length) : tr("%1, %2 earlier").arg(when, length);
}

void Timeline::refreshDetails() {
  if (detailsOpen()) choose(details_.id);
}

}  // namespace suppertide
