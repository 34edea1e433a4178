// How good a plan is, in plain words: so far, what is proven, and against another one.
#pragma once

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>

#include "client/words/time_words.h"
#include "suppertide/v1/plan.pb.h"

namespace suppertide {

class QualityWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::QualityWords)
 public:
  static constexpr int kTiers = 7;

  // "Every dish is served on time.", "2 dishes are not fitted in yet.".
  static QString soFar(const v1::Quality& quality, const TimeWords& words);
  // Of a finished plan: "2 dishes do not fit.".
  static QString result(const v1::Plan& plan, const TimeWords& words);
  // "Proven: no more can be served, none can be less late. Now: freshness."; as planning goes on.
  static QString proven(const v1::Quality& quality);
  // "Proven best." or what a longer search might still gain.
  static QString proof(const v1::Quality& quality, const TimeWords& words);
  // What is worse in `after` than in `before`, and what is better; a sentence each.
  static QStringList worse(const v1::TierCosts& before, const v1::TierCosts& after, const TimeWords& words);
  static QStringList better(const v1::TierCosts& before, const v1::TierCosts& after, const TimeWords& words);
};

}  // namespace suppertide
