#include "client/terminal/oven_fit_text.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/time/time.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

std::string partOf(const std::string& path) {
  if (absl::StrContains(path, "coolingAjar")) return "cooling, door ajar";
  if (absl::StrContains(path, "cooling")) return "cooling, door closed";
  if (absl::StrContains(path, "fallsAjar")) return "timed fall, door ajar";
  return absl::StrContains(path, "rises") ? "timed rise" : "heating";
}

std::string minutesText(const google::protobuf::Duration& duration) {
  const double minutes = static_cast<double>(duration.seconds()) / 60;
  return std::abs(minutes - std::round(minutes)) < 0.01 ? absl::StrFormat("%.0f min", minutes)
                                                        : absl::StrFormat("%.1f min", minutes);
}

// A difference of temperatures in the household's own degrees.
class Differences {
 public:
  explicit Differences(const Units& units) : fahrenheit_(absl::StrContains(units.degrees(0), "F")) {}
  std::string text(double kelvin) const {
    return absl::StrFormat("%.1f %s", fahrenheit_ ? kelvin * 1.8 : kelvin, fahrenheit_ ? "°F" : "°C");
  }
  std::string withSign(double kelvin) const {
    const double off = std::round((fahrenheit_ ? kelvin * 1.8 : kelvin) * 10) / 10;
    return off == 0 ? "0.0" : absl::StrFormat("%+.1f", off);
  }

 private:
  bool fahrenheit_;
};

std::string headlineOf(const std::string& name, const v1::FitOvenResponse& fit) {
  const auto out = std::count_if(fit.readings().begin(), fit.readings().end(),
                                 [](const v1::ReadingFit& reading) { return reading.left_out(); });
  std::string text = absl::StrCat(name, ": ", counted(fit.readings_size(), "reading", "readings"));
  if (out > 0) absl::StrAppend(&text, ", ", out, " left out");
  return text;
}

Table curveTable(const v1::FitOvenResponse& fit, const Units& units) {
  const bool day = fit.reports_size() > 0;
  Table table({{.title = "Curve"},
               {.title = day ? "until now" : "usual"},
               {.title = day ? "with the day" : "from your readings"}});
  const auto add = [&](const char* what, const std::string& before, const std::string& after) {
    table.add({{what}, {before}, {after}});
  };
  const auto minutes = [](double value) { return absl::StrFormat("%.1f min", value); };
  const auto& before = fit.before();
  const auto& after = fit.after();
  const Differences differences(units);
  if (fit.residual_before_k() > 0 || fit.residual_after_k() > 0)
    add("misses the readings by", differences.text(fit.residual_before_k()),
        differences.text(fit.residual_after_k()));
  add("would level off at", units.degrees(before.maximum_celsius()), units.degrees(after.maximum_celsius()));
  add("heats with a constant of", minutes(before.heat_minutes()), minutes(after.heat_minutes()));
  add("cools, door closed, with", minutes(before.closed_minutes()), minutes(after.closed_minutes()));
  add("cools, door ajar, with", minutes(before.ajar_minutes()), minutes(after.ajar_minutes()));
  return table;
}

Table readingTable(const v1::FitOvenResponse& fit, const Units& units) {
  Table table({{.title = "Reading"},
               {.title = "after"},
               {.title = "read"},
               {.title = "usual"},
               {.title = "fitted"},
               {.title = "off by"},
               {.title = ""}});
  const Differences differences(units);
  for (const v1::ReadingFit& reading : fit.readings())
    table.add({{partOf(reading.field_path())},
               {minutesText(reading.after())},
               {units.degrees(reading.celsius())},
               {units.degrees(reading.before_celsius())},
               {units.degrees(reading.after_celsius())},
               {differences.withSign(reading.celsius() - reading.after_celsius())},
               {reading.left_out() ? "left out" : ""}});
  return table;
}

Table changeTable(const v1::FitOvenResponse& fit, const Units& units) {
  Table table({{.title = "Plans count on"}, {.title = "usual"}, {.title = "from now on"}});
  for (const v1::OvenChange& change : fit.changes()) {
    const std::string to = units.dial(change.to_celsius());
    const std::string what =
        change.from_celsius() == 0
            ? absl::StrCat("from cold to ", to)
            : absl::StrCat("from ", units.dial(change.from_celsius()), " to ", to,
                           change.to_celsius() < change.from_celsius() ? ", door ajar" : "");
    table.add({{what}, {minutesText(change.before_duration())}, {minutesText(change.after_duration())}});
  }
  return table;
}

const char* fateWords(v1::OvenReportFate fate) {
  switch (fate) {
    case v1::OVEN_REPORT_FATE_USED:
      return "counted";
    case v1::OVEN_REPORT_FATE_HELD:
      return "tells of the dial only";
    case v1::OVEN_REPORT_FATE_IMPOSSIBLE:
      return "refused: no oven can do that";
    case v1::OVEN_REPORT_FATE_LEFT_OUT:
      return "left out: far from the others";
    default:
      return "not counted: off by the plan";
  }
}

Table reportTable(const v1::FitOvenResponse& fit, const Units& units, const absl::TimeZone& zone) {
  Table table({{.title = "Reported"}, {.title = "read"}, {.title = "set to"}, {.title = ""}});
  for (const v1::OvenReportUse& use : fit.reports())
    table.add({{absl::FormatTime("%e %b %H:%M", absl::FromUnixSeconds(use.time().seconds()), zone)},
               {units.degrees(use.celsius())},
               {use.setpoint_celsius() == 0 ? "off" : units.dial(use.setpoint_celsius())},
               {fateWords(use.fate())}});
  return table;
}

// Nothing is stored without being asked for.
std::string dayText(const v1::FitOvenResponse& fit, const Units& units, const absl::TimeZone& zone, int width,
                    const Style& style) {
  std::string text = absl::StrCat("\n", reportTable(fit, units, zone).text(width, style, true));
  if (fit.has_dial_offset_k())
    absl::StrAppend(&text, "\nWhile it held a setting it ran ",
                    Differences(units).text(std::abs(fit.dial_offset_k())),
                    fit.dial_offset_k() < 0 ? " cooler" : " hotter", " than its dial.\n");
  absl::StrAppend(
      &text, "\n",
      fit.has_learned_oven()
          ? "Use these next time? Then add --keep; so far nothing is stored.\n"
          : "Nothing new to learn: two readings of one rise or fall, three minutes apart, would do.\n");
  return text;
}

}  // namespace

std::string ovenFitText(const std::string& ovenName, const v1::FitOvenResponse& fit, const Units& units,
                        const absl::TimeZone& zone, int width, bool colour) {
  const Style style(colour);
  std::string text = absl::StrCat(style.heading(headlineOf(ovenName, fit)), "\n\n");
  absl::StrAppend(&text, curveTable(fit, units).text(width, style, true));
  if (fit.readings_size() > 0)
    absl::StrAppend(&text, "\n", readingTable(fit, units).text(width, style, true));
  if (fit.changes_size() > 0) absl::StrAppend(&text, "\n", changeTable(fit, units).text(width, style, true));
  return fit.reports_size() > 0 ? text + dayText(fit, units, zone, width, style) : text;
}

}  // namespace suppertide::terminal
