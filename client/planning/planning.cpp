#include "client/planning/planning.h"

#include <QtCore/qpointer.h>

#include "client/words/joined.h"
#include "client/words/quality_words.h"

namespace suppertide {

Planning::Planning(HouseholdSession& session, QObject* parent)
    : QObject(parent),
      session_(session),
      run_(new PlanRun(session, this)),
      remedies_(new RemedySearch(session, this)),
      whatIf_(new WhatIf(session, this)) {
  connect(run_, &PlanRun::bestChanged, this, &Planning::previewChanged);
  connect(remedies_, &RemedySearch::previewChanged, this, &Planning::previewChanged);
  connect(whatIf_, &WhatIf::previewChanged, this, &Planning::previewChanged);
  connect(remedies_, &RemedySearch::applied, this, &Planning::remember);
  connect(whatIf_, &WhatIf::applied, this, &Planning::remember);
  connect(&session, &HouseholdSession::householdChanged, this, &Planning::stateChanged);
  connect(&session, &HouseholdSession::memberChanged, this, &Planning::stateChanged);
  connect(&session, &HouseholdSession::eventIdChanged, this, &Planning::stateChanged);
}

Household Planning::preview() const {
  if (whatIf_->preview() != nullptr) return whatIf_->preview();
  if (remedies_->preview() != nullptr) return remedies_->preview();
  return run_->best();
}

bool Planning::hasPlan() const {
  const auto& view = session_.view();
  return view != nullptr && view->plan() != nullptr;
}

QString Planning::shortfall() const {
  if (!hasPlan()) return {};
  const v1::Plan& plan = *session_.view()->plan();
  const bool late = plan.quality().costs().lateness() > 0;
  return plan.unserved_size() > 0 || late ? QualityWords::result(plan, session_.view()->words()) : QString();
}

QString Planning::outOfDate() const {
  if (!hasPlan()) return {};
  QStringList names;
  for (const std::string& name : changedSincePlanned(*session_.replica(), session_.view()->event().id()))
    names << QString::fromStdString(name);
  return names.isEmpty() ? QString() : tr("Changed since it was planned: %1.").arg(Joined::words(names));
}

QString Planning::proof() const {
  if (!hasPlan()) return {};
  return QualityWords::proof(session_.view()->plan()->quality(), session_.view()->words());
}

void Planning::remember(const Household& before, const Household& after, const QString& what,
                        std::int64_t revision) {
  const std::string eventId = session_.eventId().toStdString();
  session_.remember(what, revision, differing(*before, *after, eventId),
                    [this, self = QPointer<Planning>(this), before, after, eventId] {
                      if (self != nullptr) takeBack(before, after, eventId);
                    });
}

void Planning::takeBack(const Household& before, const Household& after, const std::string& eventId) {
  const Household wanted = takenBack(*session_.replica(), *before, *after, eventId);
  session_.ask<std::int64_t>(
      this, [wanted, eventId](link::Session& server) { return store(*wanted, eventId, server); },
      [this](const absl::StatusOr<std::int64_t>& answer) {
        if (answer.ok()) return;
        Q_EMIT session_.failed(tr("It can't be taken back any more: %1")
                                   .arg(QString::fromStdString(std::string(answer.status().message()))));
      });
}

}  // namespace suppertide
