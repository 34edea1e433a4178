#include "client/terminal/dough_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_replace.h"
#include "client/terminal/step_text.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

constexpr int kFewestColumns = 20;
constexpr int kMostColumns = 56;

std::string timesText(double rise) {
  return absl::StrFormat("%.1f", rise);
}

std::string factsText(const PlanView& view, const v1::DoughForecast& dough) {
  std::string text = absl::StrCat("Dough ", view.units().mass(dough.dough_mass_g()));
  std::vector<std::string> ahead;
  if (dough.levain_mass_g() > 0)
    ahead.push_back(absl::StrCat(view.units().mass(dough.levain_mass_g()), " ripe levain"));
  for (const v1::PrefermentPart& part : dough.preferments())
    ahead.push_back(absl::StrCat(view.units().mass(part.mass_g()), " ", plainLine(part.name())));
  if (!ahead.empty())
    absl::StrAppend(&text, " with ", joinWords(ahead), " in it, which ",
                    ahead.size() > 1 ? "hold " : "holds ", std::lround(dough.prefermented_flour_percent()),
                    " % of the flour");
  absl::StrAppend(&text, "; hydration ", std::lround(dough.hydration_percent()), " %");
  if (dough.has_free_hydration_percent())
    absl::StrAppend(&text, ", ", std::lround(dough.free_hydration_percent()), " % without what soakers hold");
  if (!dough.levain_ratio().empty()) {
    absl::StrAppend(&text, "; levain fed ", plainLine(dough.levain_ratio()), " (starter : flour : water)");
  }
  for (const v1::PlannedStep& step : view.plan().steps()) {
    if (step.dish_id() != dough.dish_id() || !step.has_water_celsius()) continue;
    absl::StrAppend(&text, "; ", mixingLiquid(step), " at ", view.units().degrees(step.water_celsius()));
  }
  if (dough.ice_g() >= 1) absl::StrAppend(&text, ", ", view.units().mass(dough.ice_g()), " of it as ice");
  if (std::abs(dough.water_correction_k()) >= 0.1)
    absl::StrAppend(&text, ", which counts in that doughs of it came out ",
                    absl::StrFormat("%.1f", std::abs(dough.water_correction_k())), " K ",
                    dough.water_correction_k() > 0 ? "warmer" : "cooler", " than worked out");
  return text + ".";
}

// Forecasts are no truer than five minutes. With its day when the stage runs over midnight.
std::string aboutHour(const PlanView& view, const v1::FermentForecast& stage,
                      const google::protobuf::Timestamp& timestamp) {
  constexpr std::int64_t kStep = 5 * 60;
  const absl::Time about = absl::FromUnixSeconds((timestamp.seconds() + kStep / 2) / kStep * kStep);
  const absl::Time end = toTime(stage.end_time());
  if (!view.clock().sameDay(toTime(stage.start_time()), end)) return view.clock().dayHour(about);
  return view.clock().hourSeenFrom(end, about);
}

std::string windowText(const PlanView& view, const v1::FermentForecast& stage) {
  if (!stage.has_ready_from_time()) return "never ready at this place: choose a warmer one";
  std::string text = absl::StrCat("ready from about ", aboutHour(view, stage, stage.ready_from_time()));
  if (stage.has_ready_until_time())
    absl::StrAppend(&text, " to ", aboutHour(view, stage, stage.ready_until_time()));
  if (stage.has_best_time()) absl::StrAppend(&text, ", best at ", aboutHour(view, stage, stage.best_time()));
  if (!stage.has_fast_time() || !stage.has_slow_time()) return text;
  const std::string fast = aboutHour(view, stage, stage.fast_time());
  const std::string slow = aboutHour(view, stage, stage.slow_time());
  if (fast == slow) return text;
  const char* what = stage.stage() == v1::FERMENT_STAGE_LEVAIN       ? "starter"
                     : stage.stage() == v1::FERMENT_STAGE_PREFERMENT ? "yeast"
                                                                     : "dough";
  return absl::StrCat(text, "; best at ", fast, " if the ", what, " is quick, at ", slow, " if it is slow");
}

std::string riseText(const PlanView& view, const v1::FermentForecast& stage) {
  std::string text =
      absl::StrCat("At the end risen to ", timesText(stage.rise_at_end()), " times its volume");
  if (stage.wanted_rise() > 0) absl::StrAppend(&text, ", wanted ", timesText(stage.wanted_rise()));
  if (stage.celsius_at_end() != 0)
    absl::StrAppend(&text, ", and at ", view.units().degrees(stage.celsius_at_end()));
  return text + ".";
}

// Its preferment by name, or the stage's own word.
std::string whatFerments(const v1::DoughForecast& dough, const v1::FermentForecast& stage) {
  for (const v1::PrefermentPart& part : dough.preferments())
    if (!stage.preferment_id().empty() && part.preferment_id() == stage.preferment_id())
      return plainLine(part.name());
  return stageWords(stage.stage());
}

std::string stageText(const PlanView& view, const v1::DoughForecast& dough,
                      const v1::FermentForecast& stage) {
  const absl::Time start = toTime(stage.start_time());
  const absl::Time end = toTime(stage.end_time());
  std::string text = view.item(
      "  ", absl::StrCat(capitalised(whatFerments(dough, stage)), ": ", view.clock().spanWithDay(start, end),
                         " (", durationText(end - start), "), ", view.names().place(stage.place_id())));
  text += view.item("    ", capitalised(windowText(view, stage)) + ".");
  text += view.item("    ", riseText(view, stage));
  return text + riseCurve(stage, view.width() - 8, 4);
}

double riseAt(const v1::FermentForecast& stage, double seconds) {
  const v1::RiseSample* before = &stage.samples(0);
  for (const v1::RiseSample& sample : stage.samples()) {
    const double at = static_cast<double>(sample.time().seconds());
    const double from = static_cast<double>(before->time().seconds());
    if (at >= seconds) {
      return at == from ? sample.rise()
                        : before->rise() + (seconds - from) / (at - from) * (sample.rise() - before->rise());
    }
    before = &sample;
  }
  return before->rise();
}

}  // namespace

std::string riseCurve(const v1::FermentForecast& stage, int columns, int indent) {
  static constexpr std::array<const char*, 8> kBlocks = {"▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
  columns = std::min(columns - 12, kMostColumns);
  if (stage.samples_size() < 3 || columns < kFewestColumns) return "";
  const double first = static_cast<double>(stage.samples(0).time().seconds());
  const double last = static_cast<double>(stage.samples(stage.samples_size() - 1).time().seconds());
  if (last <= first) return "";
  double top = 1.0;
  for (const v1::RiseSample& sample : stage.samples()) top = std::max(top, sample.rise());
  const double bottom = std::min(1.0, stage.samples(0).rise());
  const double step = (last - first) / (columns - 1);
  std::string curve;
  for (int c = 0; c < columns; ++c) {
    const double height = top > bottom ? (riseAt(stage, first + step * c) - bottom) / (top - bottom) : 0;
    curve += kBlocks[static_cast<std::size_t>(std::clamp(std::lround(height * 7), 0L, 7L))];
  }
  const std::string blanks(static_cast<std::size_t>(indent), ' ');
  std::string text = absl::StrCat(blanks, timesText(bottom), " ", curve, " ", timesText(top), "\n");
  if (!stage.has_ready_from_time() || !stage.has_ready_until_time()) return text;
  const auto column = [&](const google::protobuf::Timestamp& t) {
    return static_cast<int>(std::lround((static_cast<double>(t.seconds()) - first) / step));
  };
  const int from = std::clamp(column(stage.ready_from_time()), 0, columns - 1);
  const int until = std::clamp(column(stage.ready_until_time()), from, columns - 1);
  absl::StrAppend(&text, blanks, std::string(static_cast<std::size_t>(4 + from), ' '), "├");
  for (int c = from + 1; c < until; ++c) text += "─";
  return text + (until > from ? "┤" : "") + " ready\n";
}

std::vector<std::string> wrapWords(std::string words, int width) {
  constexpr char kKept[] = "\u00a0";  // as wide as the space that it stands for
  words = absl::StrReplaceAll(words, {{" °", absl::StrCat(kKept, "°")}, {" %", absl::StrCat(kKept, "%")}});
  std::vector<std::string> lines = wrap(words, width);
  for (std::string& line : lines) line = absl::StrReplaceAll(line, {{kKept, " "}});
  return lines;
}

std::string doughsText(const PlanView& view) {
  std::string text;
  for (const v1::DoughForecast& dough : view.plan().doughs()) {
    if (!text.empty()) text += "\n";
    text += view.part(view.names().dish(dough.dish_id())) + view.paragraph(factsText(view, dough));
    for (const v1::FermentForecast& stage : dough.stages()) text += stageText(view, dough, stage);
  }
  return text.empty() ? "" : view.section("Breads") + text;
}

}  // namespace suppertide::terminal
