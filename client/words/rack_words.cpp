#include "client/words/rack_words.h"

namespace suppertide {

QString RackWords::mayFit() {
  return tr("May fit: try it with the cold pans first.");
}

QString RackWords::doubts(const PlanView& view, const std::string& ovenId) {
  QStringList lines;
  for (const v1::RackDoubt& doubt : view.plan()->rack_doubts()) {
    if (doubt.oven_id() != ovenId) continue;
    QStringList steps;
    for (const std::string& id : doubt.step_ids()) steps << view.quoted(id, std::string());
    lines << (steps.size() > 1
                  //: Steps that may stand in one oven at once.
                  ? tr("%1 together may fit: try it with the cold pans first. The plan does not count on it.")
                        .arg(steps.join(tr(", ")))
                  : tr("All pans of %1 at once may fit: try it with the cold pans first. The plan does not "
                       "count on it.")
                        .arg(steps.join(QString())));
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace suppertide
