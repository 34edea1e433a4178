#include "client/timeline/timeline_keys.h"

namespace suppertide {
namespace {
constexpr double kShortPan = 0.1;  // of the view
constexpr double kLongPan = 0.5;
constexpr double kPage = 0.9;
}  // namespace

bool TimelineKeys::press(int key, int modifiers) {
  if (timeline_ == nullptr) return false;
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
