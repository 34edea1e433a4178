#include "client/terminal/oven_readings.h"

#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "absl/strings/ascii.h"
#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"

namespace suppertide::terminal {
namespace {

class ReadingsReader {
 public:
  explicit ReadingsReader(const std::string& text) : text_(text) {}

  OvenReadings run() {
    for (const absl::string_view raw : absl::StrSplit(text_, '\n')) {
      ++line_;
      const absl::string_view line = absl::StripAsciiWhitespace(raw);
      if (line.empty() || line.front() == '#') continue;
      std::vector<std::string> cells = absl::StrSplit(line, absl::ByAnyChar(",;\t"));
      for (std::string& cell : cells) cell = std::string(absl::StripAsciiWhitespace(cell));
      if (std::exchange(first_, false) && absl::AsciiStrToLower(cells[0]) == "part")
        readTitles(cells);
      else
        readLine(cells);
    }
    if (first_) wrong("", "must have a line for each reading: heating,5,96");
    if (withoutPart_ > 1 && withoutPart_ == static_cast<int>(out_.mistakes.size()) && out_.lines.empty())
      missColumn();
    return std::move(out_);
  }

 private:
  void wrong(const std::string& value, const std::string& allowed) {
    v1::FieldViolation& mistake = out_.mistakes.emplace_back();
    mistake.set_field_path(absl::StrCat("line ", line_));
    mistake.set_value(value);
    mistake.set_description(allowed);
  }

  // One column is missing everywhere: said once, not on every line.
  void missColumn() {
    out_.mistakes.erase(out_.mistakes.begin() + 1, out_.mistakes.end());
    out_.mistakes.front().set_description(
        "every line must begin with what was read: heating, cooling, ajar or rise, as in heating,5,96");
  }

  void readTitles(const std::vector<std::string>& cells) {
    const std::string unit = cells.size() > 2 ? absl::AsciiStrToLower(cells[2]) : "";
    out_.fahrenheit = unit == "fahrenheit";
    if (unit != "celsius" && !out_.fahrenheit) wrong(unit, "must be celsius or fahrenheit");
  }

  std::optional<double> number(const std::string& cell, const char* what) {
    double value = 0;
    if (absl::SimpleAtod(cell, &value) && std::isfinite(value)) return value;
    wrong(cell, absl::StrCat("must be a number: ", what));
    return std::nullopt;
  }

  double celsius(double degrees) const { return out_.fahrenheit ? (degrees - 32) / 1.8 : degrees; }

  void readLine(const std::vector<std::string>& cells) {
    const std::string part = absl::AsciiStrToLower(cells[0]);
    const bool rise = part == "rise";
    auto* list = listOf(part);
    if (list == nullptr && !rise) {
      ++withoutPart_;
      return wrong(cells[0], "must be heating, cooling, ajar or rise");
    }
    const std::size_t wanted = rise ? 4 : 3;
    if (cells.size() != wanted)
      return wrong(absl::StrCat(cells.size(), " columns"),
                   rise ? "must be rise,MINUTES,TO,FROM" : "must be PART,MINUTES,DEGREES");
    const auto minutes = number(cells[1], "minutes");
    const auto degrees = number(cells[2], "degrees");
    const auto from = rise ? number(cells[3], "degrees at the start") : std::optional<double>(0);
    if (!minutes || !degrees || !from) return;
    if (rise)
      addRise(*minutes, *degrees, *from);
    else
      addReading(part, *list, *minutes, *degrees);
  }

  google::protobuf::RepeatedPtrField<v1::HeatReading>* listOf(const std::string& part) {
    if (part == "heating") return out_.curve.mutable_heating();
    if (part == "cooling") return out_.curve.mutable_cooling();
    if (part == "ajar") return out_.curve.mutable_cooling_ajar();
    return nullptr;
  }

  void addReading(const std::string& part, google::protobuf::RepeatedPtrField<v1::HeatReading>& list,
                  double minutes, double degrees) {
    note(part == "ajar" ? "coolingAjar" : part, list.size());
    v1::HeatReading& reading = *list.Add();
    reading.mutable_after()->set_seconds(std::lround(minutes * 60));
    reading.set_celsius(celsius(degrees));
  }

  void addRise(double minutes, double to, double from) {
    note("rises", out_.curve.rises_size());
    v1::HeatRise& rise = *out_.curve.add_rises();
    rise.mutable_duration()->set_seconds(std::lround(minutes * 60));
    rise.set_from_celsius(celsius(from));
    rise.set_to_celsius(celsius(to));
  }

  void note(const std::string& list, int index) {
    out_.lines[absl::StrCat("heatCurve.", list, "[", index, "]")] = absl::StrCat("line ", line_);
  }

  const std::string& text_;
  OvenReadings out_;
  int line_ = 0;
  int withoutPart_ = 0;
  bool first_ = true;
};

}  // namespace

OvenReadings readReadings(const std::string& text) {
  return ReadingsReader(text).run();
}

}  // namespace suppertide::terminal
