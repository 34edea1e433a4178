#include "client/timeline/time_scale.h"

#include <algorithm>

namespace suppertide {
namespace {
constexpr double kMarginBefore = 0.04;  // of the view, beside what is fitted
constexpr double kRoomAfter = 110;      // pixels, more: the last bars have their words beside them
constexpr double kRevealMargin = 24;    // pixels
}  // namespace

TimeScale TimeScale::fitting(double start, double limit, double width) {
  const double length = std::max(limit - start, kShortestSpan);
  const double after = std::clamp(kRoomAfter / width, 0.1, 0.25);
  const double span = length / (1 - kMarginBefore - after);
  return {start - span * kMarginBefore, width / span};
}

TimeScale TimeScale::zoomed(double factor, double anchorX) const {
  const double anchor = toMinute(anchorX);
  const double scale = pixelsPerMinute_ * factor;
  return {anchor - anchorX / scale, scale};
}

TimeScale TimeScale::zoomedWithin(double factor, double anchorX, double width, double longestSpan) const {
  const double wanted = span(width) / factor;
  const double allowed = std::clamp(wanted, kShortestSpan, std::max(longestSpan, kShortestSpan));
  return zoomed(span(width) / allowed, anchorX);
}

TimeScale TimeScale::panned(double pixels) const {
  return {left_ + pixels / pixelsPerMinute_, pixelsPerMinute_};
}

TimeScale TimeScale::keptNear(double start, double limit, double width) const {
  const double half = span(width) / 2;
  return {std::clamp(left_ + half, start, std::max(start, limit)) - half, pixelsPerMinute_};
}

TimeScale TimeScale::revealing(double start, double limit, double width) const {
  const double margin = kRevealMargin / pixelsPerMinute_;
  const double right = left_ + span(width);
  if (start - margin < left_ || limit - start + 2 * margin > span(width)) {
    const bool startSeen = start >= left_ && start + margin < right;
    return startSeen && limit > right ? *this : TimeScale{start - margin, pixelsPerMinute_};
  }
  if (limit + margin > right) return {limit + margin - span(width), pixelsPerMinute_};
  return *this;
}

}  // namespace suppertide
