// What is said about documents and what is in them: names of fields and kinds, a member of a list in short.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qcoreapplication.h>
#include <QtCore/qstringlist.h>

#include "client/session/household_session.h"
#include "client/words/time_words.h"

namespace suppertide {

struct MemberText {
  QString title, detail;
  int symbol = 0;  // Symbol::Shape
};

// Members of lists: a step, an oven, an ingredient.
class MemberWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::MemberWords)
 public:
  // `session` null: no names of others, degrees Celsius.
  explicit MemberWords(const HouseholdSession* session);

  // `document`: the one that it is in.
  MemberText of(const google::protobuf::Message& member, const google::protobuf::Message& document) const;
  // The top-level field (proto name) of a document, whole, a line each: to compare two versions.
  QString wholeField(const google::protobuf::Message& document, const QString& field) const;

 private:
  MemberText ofIngredient(const v1::Ingredient& one) const;
  MemberText ofStep(const v1::Step& step) const;
  MemberText ofOven(const v1::Oven& oven) const;
  MemberText ofPlace(const v1::Place& place) const;
  MemberText ofReading(const v1::HeatReading& reading) const;
  MemberText ofObservation(const v1::StarterObservation& seen) const;
  QString degrees(double celsius) const;
  QString length(const google::protobuf::Duration& length) const;

  bool fahrenheit_ = false;
  v1::MeasureSystem measures_ = v1::MEASURE_SYSTEM_METRIC;
  TimeWords times_;
};

// "1.3 times as fast as stated, and still unsure": what observations taught.
class LearnedWords {
  Q_DECLARE_TR_FUNCTIONS(suppertide::LearnedWords)
 public:
  static QString sentence(const v1::LearnedEffect& effect);
};

}  // namespace suppertide
