#include "client/terminal/fetch_text.h"

#include "absl/strings/str_cat.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

constexpr int kTimeWidth = 16;

std::string fetchText(const v1::Fetch& fetch, const Names& names) {
  const bool frozen = fetch.from() == v1::PLACE_KIND_FREEZER;
  std::string text = plainLine(fetch.name());
  if (const std::string amount = amountText(fetch.amount()); !amount.empty())
    text = absl::StrCat(amount, " ", text);
  absl::StrAppend(&text, " for ", names.dish(fetch.dish_id()), ": ",
                  frozen ? "from the freezer into the fridge" : "out of the fridge");
  if (!fetch.cook_member_id().empty()) absl::StrAppend(&text, ", ", names.cook(fetch.cook_member_id()));
  if (fetch.own_step()) return absl::StrCat(text, " (a step of the recipe)");
  if (!fetch.has_take_out_time())
    return absl::StrCat(text, ", ", durationText(fetch.lead_duration()), " before use");
  const std::size_t slash = fetch.for_step_id().find('/');
  if (slash == std::string::npos) return text;
  return absl::StrCat(text, ", ", durationText(fetch.lead_duration()), " or more before “",
                      names.step(fetch.for_step_id().substr(0, slash), fetch.for_step_id().substr(slash + 1)),
                      "”");
}

}  // namespace

std::string fetchLines(const google::protobuf::RepeatedPtrField<v1::Fetch>& fetches, const Names& names,
                       const Clock& clock, const std::string& cookId, int width) {
  std::string text;
  for (const v1::Fetch& fetch : fetches) {
    if (!cookId.empty() && fetch.cook_member_id() != cookId) continue;
    const std::string time =
        fetch.has_take_out_time() ? clock.dayHour(toTime(fetch.take_out_time())) : "in time";
    std::string first = absl::StrCat("  ", padRight(time, kTimeWidth - 4), "  ");
    for (const std::string& line : wrap(fetchText(fetch, names), width - displayWidth(first))) {
      absl::StrAppend(&text, first, line, "\n");
      first = std::string(static_cast<std::size_t>(displayWidth(first)), ' ');
    }
  }
  return text;
}

}  // namespace suppertide::terminal
