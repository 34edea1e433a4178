// The bread model beside its sources.
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/terminal/connection.h"
#include "client/terminal/dough_commands.h"
#include "client/terminal/report.h"
#include "client/terminal/table.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {

int runBreadCheck(const BreadCheckCommand& command, Environment& environment) {
  auto connection = openLocal(environment, {});
  if (!connection.ok()) return reportFailure(environment, connection.status(), command.json);
  const auto answer = connection->session->checkModel({});
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  const auto number = [](double value) { return absl::StrFormat("%.4g", value); };
  Table table({{"Claim and source", false, 3}, {"Basis"}, {"Source says"}, {"Model"}, {""}});
  int misses = 0;
  for (const v1::ModelCheck& row : answer->checks()) {
    const std::string unit = row.unit().empty() ? "" : " " + row.unit();
    const std::string said =
        row.low() == row.high() ? number(row.low()) : number(row.low()) + "–" + number(row.high());
    Cell claim = {row.claim(), absl::StrCat("– ", row.source(), " (", row.reading(), ")")};
    if (!row.known_miss().empty()) claim.push_back("– missed: " + row.known_miss());
    misses += row.passes() ? 0 : 1;
    table.add({claim,
               {row.basis()},
               {said + unit},
               {row.has_model() ? number(row.model()) : "never"},
               {row.passes() ? "✓" : "✗"}});
  }
  environment.out << table.text(environment.width, Style(environment.colour), true) << "\n";
  for (const std::string& line :
       wrap(absl::StrCat(
                counted(answer->checks_size(), "row", "rows"), ", ", misses,
                " missed. Only independent rows speak for the model; fitted and taken-over ones agree "
                "by construction."),
            environment.width))
    environment.out << line << "\n";
  return kOk;
}

}  // namespace suppertide::terminal
