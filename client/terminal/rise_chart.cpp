#include "client/terminal/rise_chart.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

constexpr int kRows = 12;
constexpr int kLabelColumns = 6;
constexpr int kMostColumns = 72;
constexpr int kFewestWidth = 40;
constexpr int kHourWidth = 5;
constexpr int kFewestTickColumns = 9;
const std::array<absl::Duration, 8> kPitches = {absl::Minutes(10), absl::Minutes(30), absl::Hours(1),
                                                absl::Hours(2),    absl::Hours(3),    absl::Hours(4),
                                                absl::Hours(6),    absl::Hours(12)};

struct Point {
  double likely = 1, slow = 1, fast = 1;
  double celsius = 0;
};

class Chart {
 public:
  Chart(const v1::FermentForecast& forecast, const Clock& clock, const Units& units, int width)
      : forecast_(forecast),
        clock_(clock),
        units_(units),
        columns_(std::min(width - kLabelColumns - 2, kMostColumns)) {
    first_ = static_cast<double>(forecast.samples(0).time().seconds());
    last_ = static_cast<double>(forecast.samples(forecast.samples_size() - 1).time().seconds());
    for (int c = 0; c < columns_; ++c) points_.push_back(at(secondsOf(c)));
    for (const Point& point : points_) {
      bottom_ = std::min({bottom_, point.likely, point.slow, point.fast});
      top_ = std::max({top_, point.likely, point.slow, point.fast});
    }
    top_ = std::max(top_, bottom_ + 0.1);
  }

  std::string text() const {
    std::string text;
    for (int row = kRows - 1; row >= 0; --row) text += line(row);
    return text + axis() + hours() + degrees() + window();
  }

 private:
  double secondsOf(int column) const { return first_ + (last_ - first_) * column / (columns_ - 1); }
  int columnOf(const google::protobuf::Timestamp& time) const {
    const double share = (static_cast<double>(time.seconds()) - first_) / (last_ - first_);
    return static_cast<int>(std::lround(std::clamp(share, 0.0, 1.0) * (columns_ - 1)));
  }
  int rowOf(double rise) const {
    return static_cast<int>(std::lround((rise - bottom_) / (top_ - bottom_) * (kRows - 1)));
  }

  Point at(double seconds) const {
    const auto& all = forecast_.samples();
    int after = 1;
    while (after + 1 < all.size() && static_cast<double>(all[after].time().seconds()) < seconds) ++after;
    const v1::RiseSample& a = all[after - 1];
    const v1::RiseSample& b = all[after];
    const double start = static_cast<double>(a.time().seconds());
    const double step = std::max(1.0, static_cast<double>(b.time().seconds()) - start);
    const double share = std::clamp((seconds - start) / step, 0.0, 1.0);
    const auto mean = [share](double x, double y) { return x + (y - x) * share; };
    return {mean(a.rise(), b.rise()), mean(a.slow_rise(), b.slow_rise()), mean(a.fast_rise(), b.fast_rise()),
            mean(a.celsius(), b.celsius())};
  }

  std::string line(int row) const {
    const double rise = bottom_ + (top_ - bottom_) * row / (kRows - 1);
    std::string cells;
    int before = rowOf(points_.front().likely);
    for (const Point& point : points_) {
      const int here = rowOf(point.likely);
      // Upright where it climbs more than a row.
      const int from = here > before ? before + 1 : here < before ? before - 1 : here;
      const int low = std::min(here, from), high = std::max(here, from);
      const int slow = rowOf(point.slow), fast = rowOf(point.fast);
      const int least = std::min(slow, fast), most = std::max(slow, fast);
      cells += row >= low && row <= high ? "█" : row >= least && row <= most ? "░" : " ";
      before = here;
    }
    const bool labelled = row % 3 == 0 || row == kRows - 1;
    const std::string label = labelled ? absl::StrFormat("%.2f", rise) : "";
    std::string whole = absl::StrCat(padLeft(label, kLabelColumns - 1), labelled ? " ┤" : " │", cells);
    while (!whole.empty() && whole.back() == ' ') whole.pop_back();
    return whole + "\n";
  }

  // Full hours, at a pitch that leaves room for their names.
  std::vector<std::pair<int, absl::Time>> ticks() const {
    const double columnsAnHour = columns_ / std::max(1.0, last_ - first_) * 3600;
    absl::Duration pitch = kPitches.back();
    for (auto one = kPitches.rbegin(); one != kPitches.rend(); ++one)
      if (absl::ToDoubleHours(*one) * columnsAnHour >= kFewestTickColumns) pitch = *one;
    std::vector<std::pair<int, absl::Time>> found;
    const absl::Time first = absl::FromUnixSeconds(static_cast<std::int64_t>(first_));
    const absl::Time last = absl::FromUnixSeconds(static_cast<std::int64_t>(last_));
    for (absl::Time tick = clock_.midnightBefore(first); tick <= last; tick += pitch) {
      if (tick < first) continue;
      google::protobuf::Timestamp at;
      at.set_seconds(absl::ToUnixSeconds(tick));
      found.emplace_back(columnOf(at), tick);
    }
    return found;
  }

  std::string axis() const {
    const auto marked = ticks();
    std::string line = std::string(kLabelColumns, ' ') + "└";
    for (int c = 0; c < columns_; ++c) {
      const bool isTick =
          std::any_of(marked.begin(), marked.end(), [&](const auto& tick) { return tick.first == c; });
      line += isTick ? "┬" : "─";
    }
    return line + "\n";
  }

  std::string hours() const {
    std::string line(kLabelColumns + 1, ' ');
    for (const auto& [column, time] : ticks()) {
      if (column + kHourWidth > columns_) break;
      line = padRight(line, kLabelColumns + 1 + column) + clock_.hour(time);
    }
    return line + "\n";
  }

  // How warm the dough is at the hours above.
  std::string degrees() const {
    std::string line = padRight("dough", kLabelColumns + 1);
    for (const auto& [column, time] : ticks()) {
      const std::string text = units_.degrees(points_[static_cast<std::size_t>(column)].celsius);
      if (column + displayWidth(text) > columns_) break;
      line = padRight(line, kLabelColumns + 1 + column) + text;
    }
    return line + "\n";
  }

  std::string window() const {
    if (!forecast_.has_ready_from_time() || !forecast_.has_ready_until_time()) return "";
    const int from = columnOf(forecast_.ready_from_time());
    const int until = columnOf(forecast_.ready_until_time());
    std::string line =
        padRight("ready", kLabelColumns + 1) + std::string(static_cast<std::size_t>(from), ' ');
    line += "├";
    for (int c = from + 1; c < until; ++c) line += c == columnOf(forecast_.best_time()) ? "◆" : "─";
    return line + (until > from ? "┤" : "") + "\n";
  }

  const v1::FermentForecast& forecast_;
  const Clock& clock_;
  const Units& units_;
  int columns_;
  double first_ = 0;
  double last_ = 0;
  double bottom_ = 1;
  double top_ = 1;
  std::vector<Point> points_;
};

}  // namespace

std::string riseChart(const v1::FermentForecast& forecast, const Clock& clock, const Units& units,
                      int width) {
  if (forecast.samples_size() < 3 || width < kFewestWidth) return "";
  return Chart(forecast, clock, units, width).text();
}

}  // namespace suppertide::terminal
