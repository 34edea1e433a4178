#include "client/timeline/timeline_keys.h"

namespace suppertide {
namespace {
constexpr double kShortPan = 0.1;  // of the view
constexpr double kLongPan = 0.5;
constexpr double kPage = 0.9;
constexpr double kShortMove = 5;  // minutes
constexpr double kLongMove = 30;
}  // namespace

bool TimelineKeys::pressMove(int key, int modifiers) {
  const bool control = (modifiers & Qt::ControlModifier) != 0;
  const double minutes = (modifiers & Qt::ShiftModifier) != 0 ? kLongMove : kShortMove;
  const bool moving = !timeline_->movingId().isEmpty();
  switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
      if (!control || !timeline_->detailsOpen()) return false;
      timeline_->moveChosen(key == Qt::Key_Left ? -minutes : minutes);
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (!moving && !(control && timeline_->comparing())) return false;
      if (control) {
        Q_EMIT timeline_->moveAccepted();
      } else {
        timeline_->askMove();
      }
      return true;
    case Qt::Key_Escape:
      if (moving) {
        timeline_->leaveMove();
      } else if (timeline_->comparing()) {
        Q_EMIT timeline_->moveLeft();
      } else {
        return false;
      }
      return true;
    default:
      return false;
  }
}

bool TimelineKeys::press(int key, int modifiers) {
  if (timeline_ == nullptr) return false;
  if (pressMove(key, modifiers)) return true;
  const double pan = (modifiers & Qt::ShiftModifier) != 0 ? kLongPan : kShortPan;
  switch (key) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:  // plus without Shift on many keyboards
      timeline_->zoomIn();
      return true;
    case Qt::Key_Minus:
      timeline_->zoomOut();
      return true;
    case Qt::Key_0:
      timeline_->fitAll();
      return true;
    case Qt::Key_Left:
      timeline_->panByPart(-pan);
      return true;
    case Qt::Key_Right:
      timeline_->panByPart(pan);
      return true;
    case Qt::Key_PageUp:
      timeline_->panByPart(-kPage);
      return true;
    case Qt::Key_PageDown:
      timeline_->panByPart(kPage);
      return true;
    case Qt::Key_Home:
      timeline_->showNow();
      return true;
    case Qt::Key_End:
      timeline_->showServing();
      return true;
    case Qt::Key_Escape:
      if (!timeline_->detailsOpen()) return false;
      timeline_->closeDetails();
      return true;
    default:
      return false;
  }
}

}  // namespace suppertide
