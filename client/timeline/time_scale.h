// The line of time as a value: minutes against pixels.
//
// A minute here is a number of minutes after the base that a Timeline keeps for
// its event, with fractions; x is pixels from the left edge of the view. Pure;
// every change gives a new scale.
#pragma once

namespace suppertide {

class TimeScale {
 public:
  static constexpr double kShortestSpan = 20;               // what the view shows when zoomed in fully
  static constexpr double kUsualLongestSpan = 4 * 24 * 60;  // and out, unless the plan is longer

  TimeScale() = default;
  // `pixelsPerMinute` above 0.
  TimeScale(double left, double pixelsPerMinute) : left_(left), pixelsPerMinute_(pixelsPerMinute) {}
  // Shows [start, limit) in a view `width` pixels wide, with room for what sticks out at both sides.
  static TimeScale fitting(double start, double limit, double width);

  double left() const { return left_; }  // the minute at x = 0
  double pixelsPerMinute() const { return pixelsPerMinute_; }
  double toX(double minute) const { return (minute - left_) * pixelsPerMinute_; }
  double toMinute(double x) const { return left_ + x / pixelsPerMinute_; }
  double span(double width) const { return width / pixelsPerMinute_; }

  // `factor` above 1 zooms in; the minute under `anchorX` stays there.
  TimeScale zoomed(double factor, double anchorX) const;
  // As zoomed, but stops at the shortest span and at `longestSpan`.
  TimeScale zoomedWithin(double factor, double anchorX, double width, double longestSpan) const;
  // Positive: towards later times.
  TimeScale panned(double pixels) const;
  // Moved just so far that the middle of the view lies in [start, limit].
  TimeScale keptNear(double start, double limit, double width) const;
  // Moved just so far that [start, limit) is in view, its start when it is too long.
  TimeScale revealing(double start, double limit, double width) const;

  friend bool operator==(const TimeScale&, const TimeScale&) = default;

 private:
  double left_ = 0;
  double pixelsPerMinute_ = 1;
};

}  // namespace suppertide
