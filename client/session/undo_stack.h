// The way back from what this person did last, one change after the other.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qstring.h>

#include <cstdint>
#include <memory>
#include <vector>

#include "client/link/edit.h"
#include "client/link/replica.h"

namespace suppertide {

class UndoStack {
 public:
  // `before`: the replica the change was made from; `text`: what it was, for people.
  void add(std::int64_t number, const google::protobuf::Message& request, const link::Replica& before,
           const QString& text);
  void taken(std::int64_t number, const google::protobuf::Message& answer);
  void drop(std::int64_t number);
  // Forgets changes that somebody else has changed since; `base` is what the server told.
  void check(const link::Replica& base);

  bool empty() const { return steps_.empty(); }
  QString text() const { return steps_.empty() ? QString() : steps_.back().text; }
  // The request that takes the last change back, aimed at what is shown now; the change is forgotten.
  std::unique_ptr<google::protobuf::Message> take(const link::Replica& shown);

 private:
  struct Step {
    std::int64_t number = 0;
    link::Edit edit;
    std::unique_ptr<google::protobuf::Message> inverse;
    QString text;
    bool taken = false;
    std::string etag{};         // of the version that the change made; once taken
    std::int64_t revision = 0;  // that it was made in
  };
  std::vector<Step> steps_;
};

}  // namespace suppertide
